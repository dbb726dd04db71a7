import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import {
  begun,
  calendar,
  canonical,
  correct,
  hours,
  notDone,
  recordOf,
  retract,
  session,
  stayOf,
  trigger,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { histories } from '../../board/rules/random-history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { totalsOf } from './totals.ts';

const totals = (until: number, ...told: readonly Told[]) => totalsOf(stayOf(...told), calendar, hours(until));
const usual = { usual: { moves: 'walks', transfers: 'alone', stairs: 'yes' } };
const goal = (at: number, timesUp: number): Told => ({
  type: 'goal-set',
  at,
  payload: { goal: { activity: 'walk', timesUp } },
});

describe('ward day totals', { timeout: 60_000 }, () => {
  it('has a row for each ward day of the stay; a day with nothing recorded is a gap', () => {
    // START is 18:00 on 24 October; that ward day ends 14 h later, the next one 24 h after that.
    const days = totals(
      40,
      session(1, { metres: 20, minutesOutOfBed: 15 }),
      session(2),
      notDone(3, 'said-no'),
    );
    expect(days).toMatchObject([
      {
        day: '2026-10-24',
        recorded: true,
        timesUp: 2,
        metres: 20,
        minutesOutOfBed: 15,
        sessions: { done: 2, part: 0, stopped: 0, notDone: { 'said-no': 1 } },
      },
      { day: '2026-10-25', recorded: false, timesUp: 0, metres: null, minutesOutOfBed: null, goalMet: null },
      { day: '2026-10-26', recorded: false },
    ]);
    expect(days[0]!.to - days[0]!.from).toBe(25 * HOUR);
    expect(days[1]!.from).toBe(days[0]!.to);
  });
  it('asks each day for the goal that stood when that day ended, not for a later one', () => {
    // The first ward day ends 14 h after the start; the last goal of it is set in its last minute.
    const days = totals(40, goal(1, 3), goal(14 - 1 / 60, 4), goal(15, 1));
    const [arrival] = totals(40, goal(1, 4));
    expect(days[0]!.goal).toEqual(arrival!.goal);
    expect(days[1]!.goal).toMatchObject({ timesUp: 1 });
    // A goal set at the very moment that is looked at counts.
    expect(totals(20, goal(20, 2)).at(-1)!.goal).not.toBeNull();
  });
  it('begins with the arrival, whatever is told of before it', () => {
    expect(totals(-0.5)).toEqual([]);
    expect(totals(0)).toHaveLength(1);
    const before: Told = { type: 'usual-way-recorded', at: -30, payload: usual };
    expect(totals(5, before).map((d) => d.day)).toEqual(['2026-10-24']);
    expect(totalsOf({ ...stayOf(), events: [] }, calendar, hours(5))).toEqual([]);
  });
  it('begins a row with the very instant in which the ward day turns', () => {
    expect(totals(14 - 1 / HOUR)).toHaveLength(1);
    expect(totals(14).map((d) => d.from)).toEqual([expect.any(Number), hours(14)]);
  });
  it('knows at an instant what had occurred by then', () => {
    expect(totals(1, session(1))).toMatchObject([{ recorded: true, timesUp: 1 }]);
    // Begun before, told of as something that occurred after.
    expect(totals(3, { ...session(1), at: 5 })).toMatchObject([{ recorded: false, timesUp: 0 }]);
  });
  it('ends with the stay', () => {
    const left: Told = { type: 'stay-ended', at: 5, payload: { bed: 'bed-1', to: 'home' } };
    expect(totals(400, left)).toHaveLength(1);
  });
  it('judges each day by the goal that stood at its end', () => {
    const up = [session(15), session(16), session(39)];
    expect(totals(41, goal(0.5, 3), ...up, goal(30, 2), goal(39, 2)).slice(1)).toMatchObject([
      { goal: { timesUp: 2 }, goalMet: true },
      { goal: { timesUp: 2 }, goalMet: false },
    ]);
  });
  it('asks on the day of arrival and of leaving for the part of the waking hours there', () => {
    // 3 of 14 waking hours are left on arrival; the person leaves after 7 of them.
    const left: Told = { type: 'stay-ended', at: 21, payload: { bed: 'bed-1', to: 'home' } };
    const days = totals(60, goal(0.5, 4), session(1), session(15), session(16), left);
    expect(days).toMatchObject([
      { goal: { timesUp: 1 }, goalMet: true },
      { goal: { timesUp: 2 }, goalMet: true },
    ]);
    const oneLess = totals(60, goal(0.5, 4), session(15), left);
    expect(oneLess).toMatchObject([{ goalMet: null }, { goal: { timesUp: 2 }, goalMet: false }]);
    expect(totals(60, goal(0.5, 4), session(15))[1]).toMatchObject({ goal: { timesUp: 4 } });
    const byNight: Told = { type: 'stay-ended', at: 13.5, payload: { bed: 'bed-1', to: 'died' } };
    const begunByNight = [{ ...begun(), at: 13 }, { ...goal(13.2, 3), at: 13.2 }, byNight];
    expect(totalsOf(recordOf(begunByNight), calendar, hours(60))).toMatchObject([
      { goal: null, goalMet: null },
    ]);
  });
  it("counts the part by the ward's own waking hours", () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.activity.wakingHours.value = 6;
    const told = stayOf(goal(0.5, 4));
    expect(totalsOf(told, calendar, hours(5), rules)).toMatchObject([{ goal: { timesUp: 2 } }]);
    expect(totalsOf(told, calendar, hours(5))).toMatchObject([{ goal: { timesUp: 1 } }]);
  });
  it('follows a late, a corrected and a withdrawn entry to the day it belongs to', () => {
    const late = { ...session(1, { metres: 10 }), id: 's', recorded: 30 };
    expect(totals(30, late)[0]).toMatchObject({ metres: 10 });
    expect(totals(30, late, correct(31, 's', session(1, { metres: 25 })))[0]).toMatchObject({ metres: 25 });
    expect(totals(30, late, retract(31, 's'))[0]).toMatchObject({ recorded: false, metres: null });
  });
  it('count how often somebody said that the board is wrong, on the day it was said, and not what was withdrawn', () => {
    const wrong = [
      trigger('board-wrong', 1),
      trigger('board-wrong', 2),
      { ...trigger('board-wrong', 20), id: 'w' },
    ];
    const counts = (until: number, ...more: readonly Told[]) =>
      totals(until, ...wrong, trigger('fall', 3), ...more).map((d) => d.boardWrong);
    expect(counts(30)).toEqual([2, 1]);
    expect(counts(1.5)).toEqual([1]);
    expect(counts(30, retract(21, 'w'))).toEqual([2, 0]);
  });
  it('do not depend on the order in which entries arrived, and no session is counted twice', () => {
    fc.assert(
      fc.property(histories, (told) => {
        const forward = totalsOf(recordOf(told), calendar, hours(90));
        const [first, ...rest] = told;
        expect(canonical(totalsOf(recordOf([...rest.toReversed(), first!]), calendar, hours(90)))).toBe(
          canonical(forward),
        );
        const counted = forward.reduce(
          (n, d) => n + d.sessions.done + d.sessions.part + d.sessions.stopped,
          0,
        );
        const ever = told.filter((x) => x.type === 'session-recorded').length;
        expect(counted).toBeLessThanOrEqual(ever);
      }),
      { numRuns: 100 },
    );
  });
});
