/** The accepted day plan on the board: each person's visits, what stands against them, and the day in numbers. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { bedView, boardView } from '../view.ts';
import { addRecord, emptyBoard, foldBoard, viewBoard, type BoardState } from './board.ts';
import { rowFor, rowsFor } from './for-wall.ts';
import {
  begun,
  check,
  hold,
  hours,
  notDone,
  session,
  setUpWard,
  trigger,
  WARD,
  WardLog,
  type Told,
} from './history.testkit.ts';

const DAY = '2026-10-24';
const visit = (end: string, start: number, more: object = {}) => ({
  visit: `stay-1-${end}`,
  stay: 'stay-1',
  kind: end === 'c' ? 'check' : 'goal',
  start: toIso(hours(start)),
  minutes: 30,
  crew: ['staff-aide'],
  items: [],
  ...more,
});
const accepted = (at: number, placements: object[], more: object = {}): Told => ({
  type: 'day-plan-accepted',
  at,
  role: 'charge-nurse',
  payload: {
    day: DAY,
    placements,
    hash: 'a'.repeat(64),
    weightsVersion: 1,
    how: 'solver',
    gap: null,
    edited: false,
    ...more,
  },
});

const LIFT: Told = {
  type: 'item-added',
  payload: {
    item: 'i1',
    is: {
      label: 'Lift 1',
      kind: 'floor-lift',
      model: 'Model A',
      powered: true,
      safeLoadKg: 200,
      barLoadKg: 180,
      attachment: 'loops',
      covers: [],
      style: null,
      fitsFromKg: null,
      fitsToKg: null,
      worksWithModels: [],
      worksWithItems: [],
      inspectionDue: null,
      home: 'Store room',
    },
  },
};

type Entered = Told & { readonly on?: 'ward' | 'item' };

/** One person in bed 1, checked as far as walking half an hour after arrival; then what is told. */
function given(...told: readonly Entered[]): BoardState {
  const log = new WardLog();
  setUpWard(log);
  for (const [staff, role] of [
    ['staff-aide', 'aide'],
    ['staff-nurse', 'nurse'],
  ]) {
    const payload = { staff, role, name: { ref: `name-${staff}` } };
    log.add(`ward/${WARD}`, { type: 'staff-member-added', payload });
  }
  log.add('stay/stay-1', begun());
  log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
  const all: readonly Entered[] = [check('walk', 0.5), ...told];
  for (const { on, ...one } of all) {
    const ofWard = on === 'ward' || one.type === 'day-plan-accepted';
    log.add(on === 'item' ? 'item/i1' : ofWard ? `ward/${WARD}` : 'stay/stay-1', one);
  }
  const state = emptyBoard(WARD);
  const { missing } = foldBoard(state, log.events);
  for (const stay of missing) addRecord(state, log.record(stay));
  return state;
}
const stayAt = (state: BoardState, t: number) => viewBoard(state, hours(t)).board.beds[0]!.stay!;
const plannedAt = (state: BoardState, t: number) =>
  (stayAt(state, t).planned ?? []).map(({ visit: id, stopped }) => [id, stopped?.words ?? null]);
const dayAt = (state: BoardState, t: number) => viewBoard(state, hours(t)).board.dayPlan;

describe('PLANNED-6 a visit of the accepted plan on the row of its person', () => {
  it('stands with its time, people and equipment, the earliest first, until its time is over', () => {
    const state = given(
      { on: 'ward', ...LIFT },
      accepted(1, [visit('g2', 4), visit('g1', 2, { crew: ['staff-aide', 'staff-nurse'], items: ['i1'] })]),
    );
    expect(stayAt(state, 1.5).planned).toMatchObject([
      {
        visit: 'stay-1-g1',
        kind: 'goal',
        from: hours(2),
        until: hours(2.5),
        crew: ['staff-aide', 'staff-nurse'],
        with: ['Lift 1'],
        stopped: null,
      },
      { visit: 'stay-1-g2', from: hours(4) },
    ]);
    expect(plannedAt(state, 2.4)).toHaveLength(2);
    expect(plannedAt(state, 2.5)).toEqual([['stay-1-g2', null]]);
    expect(bedView.safeParse(viewBoard(state, hours(2)).board.beds[0]).error).toBeUndefined();
  });
  it('changes by time alone only at an instant that the board names', () => {
    const state = given(accepted(1, [visit('g1', 2)]));
    const { board, nextChange } = viewBoard(state, hours(2));
    expect(board.beds[0]!.stay!.planned).toHaveLength(1);
    expect(nextChange).toBeLessThanOrEqual(hours(2.5));
  });
  it('is not there before it was accepted, nor on the next ward day', () => {
    const state = given(accepted(1, [visit('g1', 12)]));
    expect(plannedAt(state, 1)).toHaveLength(1);
    expect(plannedAt(state, 0.9)).toEqual([]);
    // 07:00 on the morning after the clocks went back.
    expect(plannedAt(state, 14.01)).toEqual([]);
    expect(dayAt(state, 14.01)).toBeNull();
  });
  it('another plan of the day replaces it; one of a day gone by does not', () => {
    const first = accepted(1, [visit('g1', 2)]);
    expect(plannedAt(given(first, accepted(1.2, [visit('g1', 3)])), 2.8)).toEqual([['stay-1-g1', null]]);
    expect(plannedAt(given(first, accepted(1.2, [], { day: '2026-10-23' })), 1.5)).toHaveLength(1);
  });
  it.each<[string, Told, number]>([
    ['today counts as many times up', session(1.5), 1],
    ['somebody was there for it and it was not done', notDone(2, 'said-no'), 1],
  ])('is gone once %s', (_why, told, left) => {
    const goal: Told = { type: 'goal-set', payload: { goal: { activity: 'walk', timesUp: 9 } }, at: 0.6 };
    const state = given(goal, accepted(1, [visit('g1', 2), visit('g2', 5)]), told);
    expect(plannedAt(state, 2.2)).toHaveLength(left);
    expect(dayAt(state, 3)).toMatchObject({ passed: 0, ahead: 1 });
  });
  it('a check is gone once one was recorded since; one from before leaves it', () => {
    const planned = accepted(1, [visit('c', 2)]);
    expect(plannedAt(given(planned), 1.5)).toEqual([['stay-1-c', null]]);
    expect(plannedAt(given(planned, check('walk', 1.4)), 1.5)).toEqual([]);
  });
});

describe('PLANNED-7 a visit that is no longer allowed is held, never to be done', () => {
  const plan = accepted(1, [visit('g1', 3)]);
  it('a hold that came since', () => {
    const state = given(plan, hold(1.5, 'out-of-bed', 20));
    expect(plannedAt(state, 1.4)).toEqual([['stay-1-g1', null]]);
    expect(plannedAt(state, 2)).toEqual([['stay-1-g1', expect.stringMatching(/^Hold on out of bed since/)]]);
    expect(dayAt(state, 2)).toMatchObject({ ahead: 1, held: 1 });
  });
  describe('by its equipment, with since when', () => {
    const planned = accepted(1, [visit('g1', 3, { items: ['i1'] })]);
    const said = (type: string, payload: object = {}): Entered => ({
      on: 'item',
      type,
      at: 1.5,
      payload: { item: 'i1', ...payload },
    });
    const one = { on: 'ward' as const, ...LIFT };
    const why = (...told: readonly Entered[]) => plannedAt(given(one, planned, ...told), 2)[0]![1];
    // 17:30 in Universal Time, on the evening before the clocks go back in Berlin.
    it.each<[string, string, object, string]>([
      ['broken', 'item-out-of-service', { defect: 'brake-or-wheel' }, 'out of service since 19:30'],
      ['not there', 'item-not-there', {}, 'looked for 19:30 and is not there'],
      ['dirty', 'item-cleaning', { clean: false }, 'Lift 1 is dirty since 19:30'],
      ['flat', 'battery-read', { band: 'flat' }, 'the battery of Lift 1 is flat since 19:30'],
      ['kept for another', 'item-bound', { keptFor: 'stay-9' }, 'kept for another person since 19:30'],
    ])('%s', (_what, type, payload, words) => {
      expect(why(said(type, payload))).toContain(words);
    });
    it('taken off the list, or past its examination', () => {
      const off: Told = { type: 'item-withdrawn', payload: { item: 'i1' }, at: 1.5 };
      expect(why({ on: 'ward', ...off })).toBe('Equipment of this visit is not on the ward’s list any more');
      const is = { ...(LIFT.payload as { is: object }).is, inspectionDue: '2026-10-23' };
      const changed: Told = { type: 'item-changed', payload: { item: 'i1', is }, at: 1.5 };
      expect(why({ on: 'ward', ...changed })).toBe('Lift 1 was due for its examination 2026-10-23');
    });
    it('not by what may be settled by then: somebody has it, it is kept for them, nobody has spoken of it', () => {
      expect(why()).toBeNull();
      expect(why(said('item-taken', { isolation: false }))).toBeNull();
      expect(why(said('item-bound', { keptFor: 'stay-1' }))).toBeNull();
      expect(why(said('battery-read', { band: 'low' }))).toBeNull();
    });
    it('not before it broke, nor once the coordinator has returned it', () => {
      const broken = said('item-out-of-service', { defect: 'other' });
      const state = given(one, planned, broken);
      expect(plannedAt(state, 1.4)).toEqual([['stay-1-g1', null]]);
      expect(viewBoard(state, hours(1.4)).nextChange).toBeLessThanOrEqual(hours(1.5));
      expect(dayAt(state, 2)).toMatchObject({ held: 1 });
      expect(why(broken, { ...said('item-in-service'), at: 1.8 })).toBeNull();
    });
    it('a row that was shown before is worked out anew, and no other', () => {
      const log = new WardLog();
      const state = given(one, planned, said('battery-read', { band: 'full' }));
      const before = stayAt(state, 2);
      expect(before.planned![0]!.stopped).toBeNull();
      const last = log.add('item/i1', said('item-out-of-service', { defect: 'other' }));
      foldBoard(state, [{ ...last, position: state.position + 1, version: 2 }]);
      expect(stayAt(state, 2).planned![0]!.stopped?.rule).toBe('planned/item');
      const other = log.add('item/i2', said('item-not-there'));
      const shown = stayAt(state, 2);
      foldBoard(state, [{ ...other, position: state.position + 1, version: 1 }]);
      expect(stayAt(state, 2)).toBe(shown);
    });
  });
  it('a hold whose review is past still holds it', () => {
    const state = given(plan, hold(1.5, 'out-of-bed', 2));
    expect(plannedAt(state, 2.9)[0]![1]).toMatch(/^Hold on/);
  });
  it('a trigger: a nurse checks first', () => {
    expect(plannedAt(given(plan, trigger('fall', 1.5)), 2)[0]![1]).toMatch(/nurse/);
  });
  it('off the ward', () => {
    const left: Told = { type: 'went-off-ward', at: 1.5, payload: { reason: 'test' } };
    expect(plannedAt(given(plan, left), 2)[0]![1]).toMatch(/^Off the ward since/);
  });
  it.each<[string, string, Told[]]>([
    ['a time up', 'g1', [trigger('return-from-surgery', 1.2, 'nurse'), check('walk', 1.4)]],
    ['a check', 'c', [trigger('return-from-surgery', 1.2, 'nurse')]],
  ])('%s by one where the first time up asks for two by now; by two it stands', (_what, end, told) => {
    const words = 'Two people are asked for by now, and one is planned';
    const two = { crew: ['staff-aide', 'staff-nurse'] };
    expect(plannedAt(given(...told, accepted(1.5, [visit(end, 3)])), 2)).toEqual([[`stay-1-${end}`, words]]);
    expect(plannedAt(given(...told, accepted(1.5, [visit(end, 3, two)])), 2)).toEqual([
      [`stay-1-${end}`, null],
    ]);
  });
});

describe('the day plan in numbers', () => {
  it('counts what is ahead, taken, passed and without a place', () => {
    const unplaced = [{ visit: 'stay-1-g4', stay: 'stay-1', kind: 'goal', why: 'people-with-others' }];
    const state = given(accepted(1, [visit('g1', 1.5), visit('g2', 3), visit('g3', 5)], { unplaced }), {
      type: 'visit-taken',
      at: 2.2,
      payload: { visit: 'v1', by: 'staff-aide', from: toIso(hours(2.9)), until: toIso(hours(3.4)) },
    });
    expect(plannedAt(state, 2.5).map(([id]) => id)).toEqual(['stay-1-g3']);
    expect(dayAt(state, 2.5)).toEqual({
      at: hours(1),
      by: 'staff-charge-nurse',
      ahead: 2,
      held: 0,
      passed: 1,
      unplaced: 1,
    });
    expect(boardView.safeParse(viewBoard(state, hours(2.5)).board).error).toBeUndefined();
  });
  describe('PLANNED-10 of somebody who is expected', () => {
    const arrival = visit('a', 3, { visit: 'exp-1-a', stay: 'exp-1', kind: 'check' });
    const closed = (at: number, stay?: string): Entered => ({
      on: 'ward',
      type: 'expected-arrival-closed',
      at,
      payload: { expected: 'exp-1', outcome: stay ? 'arrived' : 'not-coming', ...(stay ? { stay } : {}) },
    });
    it('says nothing of places where nothing was said, and has the visit until its time is over', () => {
      const state = given(accepted(1, [arrival]));
      expect(dayAt(state, 2)).toMatchObject({
        ahead: 1,
        unplaced: null,
        arrivals: [
          { visit: 'exp-1-a', expected: 'exp-1', from: hours(3), until: hours(3.5), crew: ['staff-aide'] },
        ],
      });
      expect(dayAt(state, 3.4)).toMatchObject({ ahead: 1 });
      expect(viewBoard(state, hours(3.4)).nextChange).toBeLessThanOrEqual(hours(3.5));
      expect(dayAt(state, 3.5)).toMatchObject({ ahead: 0, passed: 0 });
      expect('arrivals' in dayAt(state, 3.5)!).toBe(false);
      expect(boardView.safeParse(viewBoard(state, hours(2)).board).error).toBeUndefined();
    });
    it('goes on with the stay that began, in the row of the bed', () => {
      const state = given(accepted(1, [arrival]), closed(1.5, 'stay-1'));
      expect(plannedAt(state, 2)).toEqual([['exp-1-a', null]]);
      expect(dayAt(state, 2)).toMatchObject({ ahead: 1 });
      expect('arrivals' in dayAt(state, 2)!).toBe(false);
      const done = given(accepted(1, [arrival]), closed(1.5, 'stay-1'), check('walk', 1.8));
      expect(dayAt(done, 2)).toMatchObject({ ahead: 0, passed: 0 });
    });
    it('is held once its equipment breaks after they arrived, on the board that shows it already', () => {
      const log = new WardLog();
      setUpWard(log);
      for (const one of [LIFT, accepted(1, [{ ...arrival, items: ['i1'] }]), closed(1.5, 'stay-1')]) {
        log.add(`ward/${WARD}`, {
          type: one.type,
          payload: one.payload,
          at: one.at ?? 0,
          role: 'charge-nurse',
        });
      }
      log.add('stay/stay-1', begun());
      log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
      const state = emptyBoard(WARD);
      foldBoard(state, log.events);
      expect(plannedAt(state, 2)).toEqual([['exp-1-a', null]]);
      const payload = { item: 'i1', defect: 'other' };
      foldBoard(state, [log.add('item/i1', { type: 'item-out-of-service', at: 1.8, payload })]);
      expect(plannedAt(state, 2)).toEqual([['exp-1-a', expect.stringContaining('Lift 1 is out of service')]]);
    });
    it('is not there any more once they do not come, nor for a plan of which they are no part', () => {
      const state = given(accepted(1, [arrival]), closed(1.5));
      expect(dayAt(state, 2)).toMatchObject({ ahead: 0 });
      expect(plannedAt(state, 2)).toEqual([]);
      // Closed before it was accepted: whatever was planned afterwards counts.
      expect(dayAt(given(closed(0.8), accepted(1, [arrival])), 2)).toMatchObject({ ahead: 1 });
    });
  });
  it('a ward that never accepted one has the board it had', () => {
    expect('dayPlan' in viewBoard(given(), hours(2)).board).toBe(false);
  });
});

describe('WALL-2 the plan on walls', () => {
  const state = given(accepted(1, [visit('g1', 3), visit('g2', 5)]), hold(1.5, 'out-of-bed', 20));
  const { board } = viewBoard(state, hours(2));
  it('within the ward the next visit has its time and that it is held, and nothing else', () => {
    expect(rowFor(board.beds[0]!, 'bed-only').stay!.planned).toEqual([
      {
        visit: 'not-shown',
        kind: 'care',
        from: hours(3),
        until: hours(3.5),
        crew: [],
        with: [],
        stopped: { rule: '', facts: [], words: '' },
      },
    ]);
  });
  it('where visitors pass there is none', () => {
    expect(rowFor(board.beds[0]!, 'visitors').stay!.planned).toBeUndefined();
  });
  it('who accepted it is on no wall, neither whole nor in a change', () => {
    expect(rowsFor(board, 'bed-only').dayPlan).toBeNull();
    const { beds, ...facts } = board;
    const patch = rowsFor({ ward: 'w', beds, board: facts }, 'visitors');
    expect(patch.board!.dayPlan).toBeNull();
    expect(rowsFor(board, 'whole').dayPlan).toMatchObject({ by: 'staff-charge-nurse' });
  });
});
