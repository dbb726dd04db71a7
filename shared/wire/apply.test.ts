import { describe, expect, it } from 'vitest';
import type { BedView } from '../capabilities/board/view.ts';
import type { BedId, WardId } from '../kernel/ids.ts';
import { applyPatch } from './apply.ts';
import type { Patch, Snapshot } from './messages.ts';

const ward = 'w1' as WardId;
const bed = (id: string, label = id): BedView => ({
  bed: id as BedId,
  label,
  bay: 'Bay 1',
  ceilingTrack: false,
  state: 'empty',
  carers: null,
  stay: null,
});
const held = (feed: number): Snapshot => ({
  ward,
  feed,
  p: 10,
  t: 100,
  board: {
    ward,
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
    beds: [bed('b1'), bed('b2')],
  },
});
const patch = (change: Partial<Patch>): Patch => ({
  ward,
  from: 4,
  to: 5,
  p: 11,
  t: 200,
  beds: [],
  ...change,
});

describe('a screen never applies a change out of order', () => {
  it('PUSH-2 replaces whole rows when it stands where the patch begins, and touches nothing else', () => {
    const before = held(4);
    const applied = applyPatch(before, patch({ beds: [bed('b2', 'window')] }));
    if (applied.result !== 'applied') throw new Error(applied.result);
    expect(applied.state).toMatchObject({ feed: 5, p: 11, t: 200 });
    expect(applied.state.board.beds.map((row) => row.label)).toEqual(['b1', 'window']);
    expect(applied.state.board.beds[0]).toBe(before.board.beds[0]);
    expect(before.board.beds[1]!.label).toBe('b2');
  });
  it('ignores what it has painted and what is meant for another ward', () => {
    expect(applyPatch(held(5), patch({}))).toEqual({ result: 'ignored' });
    expect(applyPatch(held(9), patch({}))).toEqual({ result: 'ignored' });
    expect(applyPatch(held(4), patch({ ward: 'w2' as WardId }))).toEqual({ result: 'ignored' });
  });
  it('calls anything else a gap', () => {
    expect(applyPatch(held(3), patch({}))).toEqual({ result: 'gap' });
    // A patch that begins before and ends after what is painted cannot be half applied.
    expect(applyPatch(held(4), patch({ from: 3, to: 6 }))).toEqual({ result: 'gap' });
  });
  it('changes the ward facts and leaves the beds', () => {
    const { beds: _beds, ...facts } = held(4).board;
    const applied = applyPatch(held(4), patch({ board: { ...facts, night: true } }));
    if (applied.result !== 'applied') throw new Error(applied.result);
    expect(applied.state.board.night).toBe(true);
    expect(applied.state.board.beds).toHaveLength(2);
  });
  it('adds, closes and reorders beds by the order given', () => {
    const applied = applyPatch(
      held(4),
      patch({ beds: [bed('b3')], order: ['b3', 'b1'] as unknown as BedId[] }),
    );
    if (applied.result !== 'applied') throw new Error(applied.result);
    expect(applied.state.board.beds.map((row) => row.bed)).toEqual(['b3', 'b1']);
  });
  it('does not guess where an unknown bed belongs, or what a missing row says', () => {
    expect(applyPatch(held(4), patch({ beds: [bed('b9')] }))).toEqual({ result: 'gap' });
    expect(applyPatch(held(4), patch({ order: ['b1', 'b9'] as unknown as BedId[] }))).toEqual({
      result: 'gap',
    });
  });
});
