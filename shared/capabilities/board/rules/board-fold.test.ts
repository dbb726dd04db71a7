/**
 * How a ward's log becomes a board: which stays are kept, whose earlier entries are asked for, and what
 * an entry that comes twice, late or in another order changes. Source: design, rules 3 and 7.
 */
import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import type { StayId } from '../../../kernel/ids.ts';
import { addRecord, emptyBoard, foldBoard, viewBoard, type BoardState } from './board.ts';
import { begun, hours, session, setUpWard, trigger, WARD, WardLog, type Told } from './history.testkit.ts';

const A = 'stay-1' as StayId;
const B = 'stay-2' as StayId;
const NOW = 2;

/** A log in which each line says one thing, so that a test can hand it over piece by piece. */
class Telling {
  readonly log = new WardLog();
  constructor() {
    setUpWard(this.log);
  }
  arrive = (stay: string, bed: string): LoggedEvent => this.tell(stay, begun(stay, bed));
  leave = (stay: string, bed: string): LoggedEvent =>
    this.tell(stay, { type: 'stay-ended', at: 1, payload: { bed, to: 'home' } });
  tell = (stay: string, told: Told): LoggedEvent => this.log.add(`stay/${stay}`, told);
  take = (stay: string, bed: string): LoggedEvent => this.bed('bed-taken', stay, bed);
  free = (stay: string, bed: string): LoggedEvent => this.bed('bed-freed', stay, bed);
  private bed = (type: string, stay: string, bed: string): LoggedEvent =>
    this.log.add(`bed/${bed}`, { type, payload: { bed, stay } });
}
/** Somebody in bed 1, with what is told of them after the arrival. */
function inBed1(...told: readonly Told[]): { said: Telling; state: BoardState } {
  const said = new Telling();
  said.arrive(A, 'bed-1');
  said.take(A, 'bed-1');
  for (const one of told) said.tell(A, one);
  const state = emptyBoard(WARD);
  foldBoard(state, said.log.events);
  return { said, state };
}
const bedsOf = (state: BoardState) => viewBoard(state, hours(NOW)).board.beds;
const whoIsIn = (state: BoardState) =>
  Object.fromEntries(bedsOf(state).flatMap(({ bed, stay }) => (stay ? [[bed, stay.stay]] : [])));
const rowOf = (state: BoardState) => bedsOf(state)[0]!.stay!;
const walked = (at: number, metres: number): Told => session(at, { metres });

describe('an entry of the log', () => {
  it('counts once, however often the same page comes', () => {
    const { said, state } = inBed1(walked(0.5, 10), walked(1, 5));
    for (const again of [said.log.events, said.log.events.slice(-1)]) {
      const { touched, missing } = foldBoard(state, again);
      expect([...touched, ...missing]).toEqual([]);
    }
    expect(rowOf(state).today).toMatchObject({ timesUp: 2, metres: 15 });
    expect(state.position).toBe(said.log.events.length);
  });

  it('of a stay counts for that stay alone, and every entry after the first needs nothing loaded', () => {
    const { said, state } = inBed1();
    said.arrive(B, 'bed-2');
    said.take(B, 'bed-2');
    said.tell(A, walked(0.5, 10));
    const { touched, missing } = foldBoard(state, said.log.events);
    expect([...touched].toSorted()).toEqual([A, B]);
    expect([...missing]).toEqual([]);
    expect(bedsOf(state).map(({ stay }) => stay?.today.metres)).toEqual([10, null, undefined, undefined]);
  });

  it('of the ward that changes none of its settings leaves every row the object it was', () => {
    const { said, state } = inBed1();
    const before = rowOf(state);
    const payload = { staff: 'nobody-known', active: false };
    said.log.add(`ward/${WARD}`, { type: 'staff-member-changed', at: 1, payload });
    foldBoard(state, said.log.events);
    expect(rowOf(state)).toBe(before);
    said.log.add(`ward/${WARD}`, { type: 'ward-changed', at: 1, payload: { nightFrom: '20:00' } });
    foldBoard(state, said.log.events);
    expect(rowOf(state)).not.toBe(before);
    expect(viewBoard(state, hours(NOW))).toMatchObject({ board: { night: true, nightFrom: '20:00' } });
  });

  it.each([
    ['on a ward without a day plan', true],
    ['before the ward is set up', false],
  ])('of a piece of equipment is taken %s', (_when, setUp) => {
    const log = new WardLog();
    if (setUp) setUpWard(log);
    const state = emptyBoard(WARD);
    foldBoard(state, log.events);
    const payload = { item: 'i1', defect: 'other' };
    const { touched } = foldBoard(state, [log.add('item/i1', { type: 'item-out-of-service', payload })]);
    expect([...touched]).toEqual([]);
    expect(state.items.size).toBe(1);
  });
});

describe('a bed', () => {
  it('is empty again once it is freed, and both acts speak of the stay', () => {
    const { said, state } = inBed1();
    expect(whoIsIn(state)).toEqual({ 'bed-1': A });
    expect(bedsOf(state).map((bed) => bed.state)).toEqual(['occupied', 'empty', 'empty', 'empty']);
    const { touched } = foldBoard(state, [said.free(A, 'bed-1')]);
    expect([...touched]).toEqual([A]);
    expect(whoIsIn(state)).toEqual({});
    expect(bedsOf(state).map((bed) => bed.state)).toEqual(['empty', 'empty', 'empty', 'empty']);
  });

  it('that somebody else has taken is not emptied by the one before, who is freed from it later', () => {
    const { said, state } = inBed1();
    said.arrive(B, 'bed-1');
    said.take(B, 'bed-1');
    said.free(A, 'bed-1');
    foldBoard(state, said.log.events);
    expect(whoIsIn(state)).toEqual({ 'bed-1': B });
  });

  it('stays somebody’s while they are off the ward, and says so', () => {
    const { state } = inBed1({ type: 'went-off-ward', at: 1, payload: { reason: 'test' } });
    expect(bedsOf(state)[0]).toMatchObject({ state: 'away', stay: { stay: A } });
  });
});

describe('what is kept of a stay', () => {
  it('is kept while the person has left one bed and not taken the next, so that nothing is read again', () => {
    const { said, state } = inBed1(walked(0.5, 10));
    foldBoard(state, [said.free(A, 'bed-1')]);
    expect([...state.records.keys()]).toEqual([A]);
    const { missing } = foldBoard(state, [said.take(A, 'bed-2')]);
    expect([...missing]).toEqual([]);
    expect(bedsOf(state)[1]!.stay).toMatchObject({ stay: A, today: { metres: 10 } });
  });

  it('is kept from the arrival on, before a bed is taken', () => {
    const said = new Telling();
    const state = emptyBoard(WARD);
    foldBoard(state, [...said.log.events, said.arrive(A, 'bed-1')]);
    expect([...foldBoard(state, [said.take(A, 'bed-1')]).missing]).toEqual([]);
    expect(whoIsIn(state)).toEqual({ 'bed-1': A });
  });

  it('is kept after the leaving for as long as the bed is held, and dropped with it', () => {
    const { said, state } = inBed1(walked(0.5, 10));
    foldBoard(state, [said.leave(A, 'bed-1')]);
    expect(rowOf(state)).toMatchObject({ stay: A, today: { metres: 10 } });
    // An entry that comes after the leaving does not undo it.
    foldBoard(state, [said.tell(A, walked(0.9, 3))]);
    foldBoard(state, [said.free(A, 'bed-1')]);
    expect(state.records.size).toBe(0);
  });

  it('is dropped at once where only a later entry of somebody without a bed is here', () => {
    const { said, state } = inBed1();
    said.arrive(B, 'bed-2');
    const late = said.tell(B, walked(0.5, 10));
    const { touched, missing } = foldBoard(state, [late]);
    expect([[...touched], [...missing]]).toEqual([[B], []]);
    expect([...state.records.keys()]).toEqual([A]);
  });
});

describe('a stay whose earlier entries are not here', () => {
  it('is asked for when it takes a bed, and shown as not known until it is read', () => {
    const said = new Telling();
    said.arrive(A, 'bed-1');
    const state = emptyBoard(WARD);
    const { touched, missing } = foldBoard(state, [
      ...said.log.events.filter((e) => !e.stream.startsWith('stay/')),
      said.take(A, 'bed-1'),
    ]);
    expect([[...touched], [...missing]]).toEqual([[A], [A]]);
    expect(bedsOf(state)[0]).toMatchObject({
      state: 'occupied',
      stay: { stay: A, version: 0, trust: { state: 'not-known' }, checkBeforeMoving: true },
    });
  });

  it('is asked for again when one of its entries was missed, and goes on from what is read then', () => {
    const { said, state } = inBed1();
    said.tell(A, walked(0.5, 10));
    const last = said.tell(A, trigger('fall', 1));
    expect([...foldBoard(state, [last]).missing]).toEqual([A]);
    // Not all of it: nothing is known of the person, not even what is here.
    expect(rowOf(state)).toMatchObject({ version: 0, today: { recorded: false } });
    addRecord(state, said.log.record(A));
    expect([...foldBoard(state, []).missing]).toEqual([]);
    expect(rowOf(state)).toMatchObject({ version: 3, today: { metres: 10 } });
    expect(rowOf(state).trust.openTriggers.map((o) => o.kind)).toContain('fall');
  });
});
