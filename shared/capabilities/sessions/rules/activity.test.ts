/** What the sessions of a stay add up to: design, goals row; amounts are what was written down, never more. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { hours, notDone, session, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import type { Goal } from '../values.ts';
import {
  amountsOf,
  goalMet,
  lastEventOf,
  lastGoalSet,
  lastUpOf,
  longestWalkOf,
  sessionsOf,
  type DayAmounts,
} from './activity.ts';

const factsOf = (...told: readonly Told[]) => effectiveFacts(stayOf(...told)).facts;
const all = (...told: readonly Told[]) => sessionsOf(factsOf(...told), hours(100));
const named = (id: string, told: Told): Told => ({ ...told, id });
const until = (h: number) => ({ endedAt: toIso(hours(h)) });
const day = { from: hours(0), to: hours(10) };

describe('the sessions begun by an instant', () => {
  const told = [named('a', session(1, until(3))), named('b', session(5))];
  it('are those, with their end once it has come', () => {
    const at = (h: number) => sessionsOf(factsOf(...told), hours(h)).map((s) => [s.fact.id, s.from, s.to]);
    expect(at(0.9)).toEqual([]);
    expect(at(1)).toEqual([['a', hours(1), hours(1)]]);
    expect(at(2.9)).toEqual([['a', hours(1), hours(1)]]);
    expect(at(3)).toEqual([['a', hours(1), hours(3)]]);
    expect(at(5)).toEqual([
      ['a', hours(1), hours(3)],
      ['b', hours(5), hours(5)],
    ]);
  });
  it('say when each begins and ends, begun or not', () => {
    const noted: number[] = [];
    sessionsOf(factsOf(...told), hours(0), (at) => noted.push(at));
    expect(noted).toEqual([1, 3, 5, 5].map(hours));
  });
});

describe('the last time up', () => {
  it('is the one that ended last, by its end and its most demanding activity', () => {
    const long = named('a', session(1, { ...until(6), activities: ['edge-sit', 'chair'] }));
    const short = named('b', session(4, { activities: ['stand'] }));
    expect(lastUpOf(all(long, short))).toEqual({ event: 'a', at: hours(6), activity: 'chair' });
    expect(lastUpOf(all(short, named('c', session(5))))).toMatchObject({ event: 'c', activity: 'walk' });
  });
  it('of two that ended together is the later entry; in bed or not done is not up', () => {
    const pair = [named('a', session(1, until(2))), named('b', session(2))];
    expect(lastUpOf(all(...pair))).toMatchObject({ event: 'b' });
    const inBed = session(3, { activities: ['back-raised'] });
    expect(lastUpOf(all(...pair, inBed, notDone(4, 'said-no')))).toMatchObject({ event: 'b' });
    expect(lastUpOf(all(inBed))).toBeNull();
  });
});

describe('the last thing that went wrong', () => {
  it('is the first that the latest such session says', () => {
    const dizzy = session(2, { events: ['dizzy', 'pain'] });
    const pain = session(1, { events: ['pain'] });
    expect(lastEventOf(all(pain, dizzy, session(3)))).toEqual({ kind: 'dizzy', at: hours(2) });
    expect(lastEventOf(all(session(3)))).toBeNull();
  });
  it('goes by when the session began, of one instant by the later entry', () => {
    const early = named('z', { ...session(1, { events: ['pain'] }), at: 4 });
    const late = named('a', session(2, { events: ['dizzy'] }));
    expect(lastEventOf(all(early, late))).toMatchObject({ kind: 'dizzy' });
    const same = named('b', session(2, { events: ['distress'] }));
    expect(lastEventOf(all(late, same))).toMatchObject({ kind: 'distress' });
  });
});

describe('the longest walk', () => {
  it('is the longest that was done with nothing going wrong', () => {
    const of = (...told: readonly Told[]) => longestWalkOf(all(...told), new Map());
    expect(of(named('a', session(1, { metres: 20 })), named('b', session(2, { metres: 30 })))).toEqual({
      metres: 30,
      fact: 'b',
    });
    expect(of(named('a', session(1, { metres: 30 })), named('b', session(2, { metres: 20 })))).toEqual({
      metres: 30,
      fact: 'a',
    });
    // As long once more: the first of them stands.
    expect(of(named('a', session(1, { metres: 30 })), named('b', session(2, { metres: 30 })))).toEqual({
      metres: 30,
      fact: 'a',
    });
    const ordinary = named('a', session(1, { metres: 5 }));
    for (const told of [
      session(2, { metres: 50, events: ['pain'] }),
      session(2, { metres: 50, outcome: 'part' }),
      session(2, { metres: 50, activities: ['march'] }),
      session(2),
    ]) {
      expect(of(ordinary, told)).toEqual({ metres: 5, fact: 'a' });
    }
    expect(of(session(1, { metres: 0 }))).toBeNull();
  });
});

describe('the goal that was set', () => {
  it('is the last of somebody qualified', () => {
    const goal = (at: number, role: NonNullable<Told['role']>, id: string): Told => ({
      type: 'goal-set',
      at,
      role,
      id,
      payload: { goal: { activity: 'walk', timesUp: 1 } },
    });
    const last = (...told: readonly Told[]) => lastGoalSet(factsOf(...told))?.id ?? null;
    expect(last(goal(1, 'nurse', 'a'), goal(2, 'therapist', 'b'), goal(3, 'aide', 'c'))).toBe('b');
    expect(last(goal(3, 'aide', 'c'), session(4))).toBeNull();
  });
});

describe('the amounts of a ward day', () => {
  const amounts = (goal: Goal | null, ...told: readonly Told[]) => amountsOf(all(...told), day, goal);
  it('are nothing recorded where no session began in it', () => {
    const nothing = {
      recorded: false,
      timesUp: 0,
      done: 0,
      part: 0,
      stopped: 0,
      ofItsKind: 0,
      minutesOutOfBed: null,
      metres: null,
      notDone: {},
      gaps: { minutes: false, metres: false },
    };
    expect(amounts(null)).toEqual(nothing);
    expect(amounts(null, session(10))).toEqual(nothing);
    expect(amountsOf(all(session(1)), { from: hours(1.1), to: hours(9) }, null)).toEqual(nothing);
    expect(amounts(null, session(0)).timesUp).toBe(1);
    expect(amounts(null, session(9.99)).timesUp).toBe(1);
  });
  it('add up by outcome, what was not done by its group', () => {
    expect(
      amounts(
        null,
        session(1, { metres: 10, minutesOutOfBed: 15 }),
        session(2, { metres: 5.5, minutesOutOfBed: 20 }),
        session(3, { outcome: 'part', metres: 2, minutesOutOfBed: 1 }),
        session(4, { outcome: 'stopped', metres: 0, minutesOutOfBed: 0 }),
        notDone(5, 'said-no'),
        notDone(6, 'said-no'),
        notDone(7, 'no-kit'),
      ),
    ).toEqual({
      recorded: true,
      timesUp: 4,
      done: 2,
      part: 1,
      stopped: 1,
      ofItsKind: 0,
      minutesOutOfBed: 36,
      metres: 17.5,
      notDone: { 'said-no': 2, 'no-kit': 1 },
      gaps: { minutes: false, metres: false },
    });
    expect(amounts(null, notDone(5, 'said-no'))).toMatchObject({ recorded: true, timesUp: 0 });
  });
  it('have a gap where a session up has no minutes, or a walk no metres', () => {
    const gaps = (extra: Record<string, unknown>) => amounts(null, session(1, extra)).gaps;
    expect(gaps({})).toEqual({ minutes: true, metres: true });
    expect(gaps({ minutesOutOfBed: 5 })).toEqual({ minutes: false, metres: true });
    expect(gaps({ metres: 5 })).toEqual({ minutes: true, metres: false });
    expect(gaps({ activities: ['stand'] })).toEqual({ minutes: true, metres: false });
    expect(gaps({ activities: ['back-raised'] })).toEqual({ minutes: false, metres: false });
  });
  it('count a spell in bed as a time up only where the goal asks for that very thing', () => {
    const raised = session(1, { activities: ['back-raised'] });
    const times = (activity: Goal['activity']) => amounts({ activity, timesUp: 2 }, raised).timesUp;
    expect(times('back-raised')).toBe(1);
    expect(times('bed-exercise')).toBe(0);
    expect(times('edge-sit')).toBe(0);
    expect(amounts(null, raised).timesUp).toBe(0);
    expect(amounts({ activity: 'back-raised', timesUp: 2 }, session(2)).timesUp).toBe(1);
    const offered = amounts({ activity: 'back-raised', timesUp: 2 }, notDone(2, 'said-no'));
    expect(offered.timesUp).toBe(0);
  });
});

describe('whether the goal is met', () => {
  const met = (goal: Partial<Goal>, more: Partial<DayAmounts> = {}) =>
    goalMet(
      { activity: 'walk', timesUp: 2, ...goal },
      { ...amountsOf([], day, null), recorded: true, timesUp: 2, ofItsKind: 1, ...more },
    );
  it('cannot be said without a goal, nor with nothing recorded', () => {
    expect(goalMet(null, { ...amountsOf([], day, null), recorded: true, timesUp: 2 })).toBeNull();
    expect(met({}, { recorded: false })).toBeNull();
  });
  it('goes by the times up where nothing else is asked', () => {
    expect(met({})).toBe(true);
    expect(met({}, { timesUp: 3 })).toBe(true);
    expect(met({}, { timesUp: 1 })).toBe(false);
    expect(met({}, { ofItsKind: 0 })).toBe(false);
  });
  it.each([
    ['enough', 30, false, true],
    ['enough, with a gap', 30, true, true],
    ['too little', 29, false, false],
    ['too little, with a gap that may hold the rest', 29, true, null],
    ['none written down', null, false, null],
  ] as const)('goes by minutes and by metres as written down: %s', (_what, amount, gap, expected) => {
    expect(
      met({ minutesOutOfBed: 30 }, { minutesOutOfBed: amount, gaps: { minutes: gap, metres: false } }),
    ).toBe(expected);
    expect(met({ metres: 30 }, { metres: amount, gaps: { minutes: false, metres: gap } })).toBe(expected);
  });
  it('is not met where any part is known not to be, whatever cannot be said', () => {
    expect(met({ minutesOutOfBed: 30 }, { timesUp: 1 })).toBe(false);
    expect(met({ minutesOutOfBed: 30, metres: 10 }, { metres: 5 })).toBe(false);
  });
});

describe('a session of the kind that the goal asks for', () => {
  const ofItsKind = (activity: Goal['activity'], ...told: readonly Told[]) =>
    amountsOf(all(...told), day, { activity, timesUp: 3 }).ofItsKind;
  const lifted = session(1, { activities: ['lifted-to-chair'] });
  const byLift = session(2, { activities: ['toilet'], help: { people: 2, aid: 'sling-lift' } });
  const edge = session(3, { activities: ['edge-sit'], outcome: 'stopped' });
  it('given a goal on the feet, then lifts and the edge of the bed are none, a way to the toilet is one', () => {
    expect(ofItsKind('walk', lifted, byLift, edge)).toBe(0);
    expect(ofItsKind('stand', lifted, byLift, edge)).toBe(0);
    expect(ofItsKind('walk', lifted, session(4, { activities: ['toilet'] }))).toBe(1);
  });
  it('given a goal of less, then whatever got that far is one', () => {
    expect(ofItsKind('lifted-to-chair', lifted, byLift, edge)).toBe(3);
    expect(ofItsKind('edge-sit', lifted, edge)).toBe(1);
  });
});
