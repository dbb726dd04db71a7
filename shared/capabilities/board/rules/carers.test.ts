/** Who looks after which bed, as the ward names them. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { emptyBoard, foldBoard, viewBoard } from './board.ts';
import { begun, hours, setUpWard, WARD, WardLog } from './history.testkit.ts';

const STREAM = `ward/${WARD}` as const;
type Named = readonly [bed: string, nurse: string | null, aide: string | null];
function wardWith(...told: readonly { until: number; beds: readonly Named[] }[]): WardLog {
  const log = new WardLog();
  setUpWard(log);
  for (const [staff, role] of [
    ['nan', 'nurse'],
    ['ned', 'nurse'],
    ['ada', 'aide'],
  ]) {
    log.add(STREAM, { type: 'staff-member-added', payload: { staff, role, name: { ref: `name-${staff}` } } });
  }
  log.add('stay/stay-1', begun('stay-1', 'bed-1'));
  log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
  for (const { until, beds } of told) {
    log.add(STREAM, {
      type: 'carers-named',
      payload: {
        until: toIso(hours(until)),
        beds: beds.map(([bed, nurse, aide]) => ({ bed, nurse, aide })),
      },
    });
  }
  return log;
}
function seen(log: WardLog, t: number) {
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  const { board, nextChange } = viewBoard(state, hours(t));
  return {
    on: board.peopleOn,
    carers: Object.fromEntries(board.beds.map(({ bed, carers }) => [bed, carers])),
    nextChange,
  };
}
const nobody = { 'bed-1': null, 'bed-2': null, 'bed-3': null, 'bed-4': null };

describe('who looks after which bed', () => {
  it('given nobody named, is nobody, and how many are on is not known', () => {
    expect(seen(wardWith(), 1)).toMatchObject({ on: null, carers: nobody });
  });
  it('is named for a bed with a person in it or without, each person counted once', () => {
    const log = wardWith({
      until: 8,
      beds: [
        ['bed-1', 'nan', 'ada'],
        ['bed-2', 'nan', null],
      ],
    });
    expect(seen(log, 1)).toMatchObject({
      on: 2,
      carers: { ...nobody, 'bed-1': { nurse: 'nan', aide: 'ada' }, 'bed-2': { nurse: 'nan', aide: null } },
    });
  });
  it('holds until the time given and not at it, and the board names that instant as its next change', () => {
    const log = wardWith({ until: 3, beds: [['bed-2', 'nan', null]] });
    expect(seen(log, 2.9)).toMatchObject({ on: 1, nextChange: hours(3) });
    expect(seen(log, 3)).toMatchObject({ on: null, carers: nobody });
  });
  it('a bed that is not named keeps who it had, and its own time', () => {
    const log = wardWith(
      { until: 3, beds: [['bed-1', 'nan', null]] },
      { until: 8, beds: [['bed-2', 'ned', null]] },
    );
    expect(seen(log, 2).carers).toMatchObject({ 'bed-1': { nurse: 'nan' }, 'bed-2': { nurse: 'ned' } });
    expect(seen(log, 4).carers).toMatchObject({ 'bed-1': null, 'bed-2': { nurse: 'ned' } });
  });
  it('a name is taken back by nobody, by a closed bed, and by leaving the staff list', () => {
    const named = {
      until: 8,
      beds: [
        ['bed-1', 'nan', 'ada'],
        ['bed-2', 'ned', null],
      ] as const,
    };
    expect(seen(wardWith(named, { until: 8, beds: [['bed-1', null, null]] }), 1)).toMatchObject({
      on: 1,
      carers: { 'bed-1': null },
    });
    const closed = wardWith(named);
    closed.add(STREAM, { type: 'bed-closed', payload: { bed: 'bed-2' } });
    expect(seen(closed, 1)).toMatchObject({ on: 2 });
    const gone = wardWith(named);
    gone.add(STREAM, { type: 'staff-member-changed', payload: { staff: 'nan', active: false } });
    expect(seen(gone, 1)).toMatchObject({ on: 2, carers: { 'bed-1': { nurse: null, aide: 'ada' } } });
  });
});
