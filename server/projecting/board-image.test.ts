import { describe, expect, it } from 'vitest';
import type { BedView, BoardView } from '@footboard/shared/capabilities/board/view';
import type { BedId, WardId } from '@footboard/shared/kernel/ids';
import { applyPatch } from '@footboard/shared/wire/apply';
import { bedsGone, changesBetween, imageFromStored, imageOf, storedBoard } from './board-image.ts';

const bed = (id: string, label = id): BedView => ({
  bed: id as BedId,
  label,
  bay: 'Bay 1',
  ceilingTrack: false,
  state: 'empty',
  carers: null,
  stay: null,
});
const board = (beds: BedView[], change: Partial<BoardView> = {}): BoardView => ({
  ward: 'w1',
  name: 'North',
  zone: 'Europe/Lisbon',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
  night: false,
  panel: { inches: 55, metres: 5 },
  units: { weight: 'kg', length: 'm' },
  language: 'en',
  peopleOn: null,
  lifts: null,
  beds,
  ...change,
});

describe('the board as bytes', () => {
  it('finds no change between two evaluations that say the same', () => {
    expect(changesBetween(imageOf(board([bed('b1')])), imageOf(board([bed('b1')])))).toBeNull();
  });
  it('names the rows that differ, the ward facts and the order only when they do', () => {
    const before = imageOf(board([bed('b1'), bed('b2')]));
    expect(changesBetween(before, imageOf(board([bed('b1'), bed('b2', 'window')])))).toEqual({
      beds: [bed('b2', 'window')],
    });
    expect(changesBetween(before, imageOf(board([bed('b1'), bed('b2')], { night: true })))).toMatchObject({
      board: { night: true },
      beds: [],
    });
    const moved = imageOf(board([bed('b3'), bed('b1')]));
    expect(changesBetween(before, moved)).toEqual({ beds: [bed('b3')], order: ['b3', 'b1'] });
    expect(bedsGone(before, moved)).toEqual(['b2']);
  });
  it('brings a screen from one board to the other', () => {
    const from = board([bed('b1'), bed('b2'), bed('b3')]);
    const to = board([bed('b4'), bed('b3', 'door'), bed('b1')], { name: 'South', night: true });
    const changes = changesBetween(imageOf(from), imageOf(to))!;
    const ward = 'w1' as WardId;
    const painted = applyPatch(
      { ward, feed: 1, p: 1, t: 1, board: from },
      { ward, from: 1, to: 2, p: 2, t: 2, ...changes },
    );
    expect(painted).toMatchObject({ result: 'applied', state: { board: to } });
  });
  it('comes back from what is stored byte for byte, and not at all when a row is missing', () => {
    const image = imageOf(board([bed('b2'), bed('b1')]));
    const rows = new Map([...image.rows].map(([id, row]) => [id as string, row.text]));
    const back = imageFromStored(storedBoard(image), rows)!;
    expect(changesBetween(image, back)).toBeNull();
    expect(back.facts).toBe(image.facts);
    rows.delete('b1');
    expect(imageFromStored(storedBoard(image), rows)).toBeNull();
  });
});
