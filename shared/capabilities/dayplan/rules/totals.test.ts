import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import {
  calendar,
  canonical,
  correct,
  hours,
  notDone,
  recordOf,
  retract,
  session,
  stayOf,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { histories } from '../../board/rules/random-history.testkit.ts';
import { totalsOf } from './totals.ts';

const totals = (until: number, ...told: readonly Told[]) => totalsOf(stayOf(...told), calendar, hours(until));
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
  it('ends with the stay', () => {
    const left: Told = { type: 'stay-ended', at: 5, payload: { bed: 'bed-1', to: 'home' } };
    expect(totals(400, left)).toHaveLength(1);
  });
  it('judges each day by the goal that stood at its end', () => {
    const up = [session(1), session(2), session(15)];
    expect(totals(20, goal(0.5, 3), ...up, goal(10, 2), goal(15, 2))).toMatchObject([
      { goal: { timesUp: 2 }, goalMet: true },
      { goal: { timesUp: 2 }, goalMet: false },
    ]);
  });
  it('follows a late, a corrected and a withdrawn entry to the day it belongs to', () => {
    const late = { ...session(1, { metres: 10 }), id: 's', recorded: 30 };
    expect(totals(30, late)[0]).toMatchObject({ metres: 10 });
    expect(totals(30, late, correct(31, 's', session(1, { metres: 25 })))[0]).toMatchObject({ metres: 25 });
    expect(totals(30, late, retract(31, 's'))[0]).toMatchObject({ recorded: false, metres: null });
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
