/** The board at an instant: before there is a ward, when it changes next, who looks after whom, which rows are the same. */
import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import { toIso } from '../../../kernel/times.ts';
import { boardView } from '../view.ts';
import { emptyBoard, foldBoard, viewBoard, type BoardState } from './board.ts';
import { begun, hold, hours, setUpWard, WARD, WardLog, type Told } from './history.testkit.ts';

const OF_WARD = `ward/${WARD}` as const;
type Named = readonly [bed: string, nurse: string | null, aide: string | null];
const named = (until: number, ...beds: readonly Named[]): Told => ({
  type: 'carers-named',
  payload: { until: toIso(hours(until)), beds: beds.map(([bed, nurse, aide]) => ({ bed, nurse, aide })) },
});
const offTheList = (staff: string): Told => ({
  type: 'staff-member-changed',
  payload: { staff, active: false },
});
/** One nurse and one aide on the list, the beds named taken; then what is told of the ward. */
function given(beds: readonly string[], ...told: readonly Told[]): BoardState {
  const log = new WardLog();
  setUpWard(log);
  for (const [staff, role] of [
    ['nan', 'nurse'],
    ['ada', 'aide'],
  ]) {
    log.add(OF_WARD, {
      type: 'staff-member-added',
      payload: { staff, role, name: { ref: `name-${staff}` } },
    });
  }
  for (const bed of beds) {
    const stay = `of-${bed}`;
    log.add(`stay/${stay}`, begun(stay, bed));
    log.add(`bed/${bed}`, { type: 'bed-taken', payload: { bed, stay } });
  }
  for (const one of told) log.add(OF_WARD, one);
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  return state;
}

describe('a ward that is not set up', () => {
  it('has no name, no bed and nobody on; its clock reads as a new ward’s does, and nothing changes by time', () => {
    const { board, nextChange } = viewBoard(emptyBoard(WARD), hours(0));
    expect(nextChange).toBeNull();
    expect(boardView.parse(board)).toEqual(board);
    expect(board).toMatchObject({ ward: WARD, name: '', zone: 'UTC', language: 'en' });
    expect(board).toMatchObject({ wardDayFrom: '07:00', nightFrom: '21:00', nightTo: '07:00', night: false });
    expect([board.beds, board.peopleOn, board.lifts]).toEqual([[], null, null]);
  });
});

/** START is 18:00 on the ward's clock: the night begins 3 h later, the next ward day 14 h later. */
describe('the next instant at which an empty ward’s board changes', () => {
  it('is the beginning of the night, by night its end with the ward day, by day that of the next night', () => {
    const state = given([]);
    expect([0, 3, 14].map((t) => viewBoard(state, hours(t)).nextChange)).toEqual([3, 14, 28].map(hours));
  });
  it('is when a named carer’s time is over, if that comes first', () => {
    const state = given([], named(1, ['bed-1', 'nan', null]), named(2, ['bed-2', 'nan', 'ada']));
    expect([0, 1, 2].map((t) => viewBoard(state, hours(t)).nextChange)).toEqual([1, 2, 3].map(hours));
  });
  it('is not held back by a carer named until later', () => {
    expect(viewBoard(given([], named(8, ['bed-1', 'nan', null])), hours(0)).nextChange).toBe(hours(3));
  });
});

describe('a carer who is not on the staff list (any more)', () => {
  it.each([
    ['the aide is off it', ['nan', 'ada'], [offTheList('ada')], { nurse: 'nan', aide: null }, 1],
    ['the nurse is off it', ['nan', 'ada'], [offTheList('nan')], { nurse: null, aide: 'ada' }, 1],
    ['both are off it', ['nan', 'ada'], [offTheList('nan'), offTheList('ada')], null, null],
    ['the only one named is off it', ['nan', null], [offTheList('nan')], null, null],
    ['somebody was never on it', ['nobody-known', 'ada'], [], { nurse: null, aide: 'ada' }, 1],
  ] as const)('looks after nobody: %s', (_words, [nurse, aide], gone, carers, on) => {
    const { board } = viewBoard(given([], named(8, ['bed-1', nurse, aide]), ...gone), hours(1));
    expect(board.beds[0]!.carers).toEqual(carers);
    expect(board.peopleOn).toBe(on);
  });
});

describe('a row that holds', () => {
  const rows = (state: BoardState, t: number, only?: readonly string[]) =>
    viewBoard(state, hours(t), only && new Set(only as StayId[])).board.beds.map(({ stay }) => stay);
  it('is the same object at the next look, except of the stays that are asked for anew', () => {
    const state = given(['bed-1', 'bed-2']);
    const [one, two] = rows(state, 1);
    expect(
      rows(state, 1.5)
        .slice(0, 2)
        .every((row, i) => row === [one, two][i]),
    ).toBe(true);
    const [again, kept] = rows(state, 1.5, ['of-bed-1']);
    expect(again).not.toBe(one);
    expect(again).toEqual(one);
    expect(kept).toBe(two);
    expect(rows(state, 1.6)[0]).toBe(again);
  });
  it('is worked out anew for an instant before it, and from the instant on until which it holds', () => {
    const state = given(['bed-1']);
    const placed = hold(1, 'walking', 1.5);
    foldBoard(state, [
      { ...new WardLog().add('stay/of-bed-1', placed), position: state.position + 1, version: 2 },
    ]);
    const due = (t: number) => rows(state, t)[0]!.holds.map(({ reviewDue }) => reviewDue);
    expect([1.4, 1.5, 1.4, 0.5].map(due)).toEqual([[false], [true], [false], []]);
  });
});

describe('a piece of equipment that the day plan takes to somebody who has no stay yet', () => {
  it('may be spoken of: there is no row to change', () => {
    const visit = {
      visit: 'expected-1-a',
      stay: 'expected-1',
      kind: 'check',
      start: toIso(hours(2)),
      minutes: 30,
      crew: ['ada'],
      items: ['i1'],
    };
    const state = given(['bed-1'], {
      type: 'day-plan-accepted',
      role: 'charge-nurse',
      payload: {
        day: '2026-10-24',
        placements: [visit],
        hash: 'a'.repeat(64),
        weightsVersion: 1,
        how: 'solver',
        gap: null,
        edited: false,
      },
    });
    const [before] = viewBoard(state, hours(1)).board.beds;
    const event = new WardLog().add('item/i1', {
      type: 'item-out-of-service',
      payload: { item: 'i1', defect: 'other' },
    });
    foldBoard(state, [{ ...event, position: state.position + 1 }]);
    expect(state.items.size).toBe(1);
    expect(viewBoard(state, hours(1)).board.beds[0]!.stay).toBe(before!.stay);
  });
});
