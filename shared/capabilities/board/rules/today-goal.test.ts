/** Today's activity on the row, with the entries that its goal stands on. Source: design, rule 4 (a gap is not a zero) and rule 10. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  hold,
  hours,
  notDone,
  recordOf,
  session,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';

const named = (told: Told, id: string): Told => ({ ...told, id });
const arrived = named(begun(), 'arrival');
const checked = named(check('walk', 1), 'check');
/** Dated before the arrival. */
const weighed: Told = {
  type: 'weight-recorded',
  id: 'weight',
  at: -1,
  payload: { weight: { kg: 70, how: 'measured' } },
};
const usual = (id: string, at: number, wish?: string): Told => ({
  type: 'usual-way-recorded',
  id,
  at,
  payload: {
    usual: { moves: 'wheelchair', transfers: 'alone', stairs: 'no' },
    ...(wish === undefined ? {} : { wish: { ref: wish } }),
  },
});
/** An aide's goal does not count, but the wish that came with it was told. */
const goal = (id: string, at: number, wish?: string): Told => ({
  type: 'goal-set',
  id,
  at,
  role: 'aide',
  payload: {
    goal: { activity: 'walk', timesUp: 2 },
    ...(wish === undefined ? {} : { wish: { ref: wish } }),
  },
});
/** START is 18:00: the ward day that began at 07:00 ends 14 h later, and the first whole one is looked at 16 h later. */
const todayAt = (t: number, told: readonly Told[]) =>
  evaluateStay(recordOf(told), ward, calendar, hours(t)).view.today;
const today = (...told: readonly Told[]) => todayAt(16, told);
const factsOf = (of: { because: readonly { rule: string; facts: readonly string[] }[] }, rule: string) =>
  of.because.find((b) => b.rule === rule)?.facts ?? null;

describe('today on the row', () => {
  it('has the goal, what was done towards it, what was not, and where the board was said to be wrong', () => {
    const now = today(
      arrived,
      checked,
      session(14.5, { metres: 40, minutesOutOfBed: 15 }),
      session(15, { metres: 20, minutesOutOfBed: 10 }),
      notDone(15.3, 'said-no'),
      trigger('board-wrong', 15.5),
      // Of the ward day before: none of it counts today.
      session(2, { metres: 9 }),
      trigger('board-wrong', 3),
    );
    expect(now).toMatchObject({
      wardDayFrom: hours(14),
      goal: { activity: 'walk', timesUp: 3 },
      goalProposed: true,
      recorded: true,
      timesUp: 2,
      minutesOutOfBed: 25,
      metres: 60,
      notDone: { 'said-no': 1 },
      met: false,
      boardWrong: 1,
    });
    expect(factsOf(now, 'today/not-recorded')).toBeNull();
  });
  it('says that nothing was recorded rather than nothing done, beside the reasons of the goal', () => {
    const now = today(arrived, checked);
    expect(now).toMatchObject({
      recorded: false,
      timesUp: 0,
      minutesOutOfBed: null,
      metres: null,
      met: null,
    });
    expect(now.because.at(-1)).toEqual({
      rule: 'today/not-recorded',
      facts: ['arrival'],
      words: 'No session recorded since the ward day began',
    });
    expect(factsOf(now, 'goal/proposed')).toEqual(['check']);
  });
});

describe('the goal names', () => {
  it('the arrival where nobody has checked yet, whatever was entered before it', () => {
    expect(factsOf(today(weighed, arrived), 'goal/not-known')).toEqual(['arrival']);
    expect(factsOf(today(weighed), 'goal/not-known')).toEqual([]);
  });
  it('the arrival where only part of the ward day is left', () => {
    expect(factsOf(todayAt(2, [weighed, arrived, checked]), 'goal/part-of-day')).toEqual(['arrival']);
  });
  it('no part of a day where no arrival is recorded: the day counts whole', () => {
    const now = todayAt(2, [checked]);
    expect(now.goal).toEqual({ activity: 'walk', timesUp: 3 });
    expect(factsOf(now, 'goal/part-of-day')).toBeNull();
  });
  it('the usual way of moving that caps it, or the arrival where it was not asked', () => {
    const asked = today(arrived, usual('usual', 0.5), checked);
    expect(asked.goal?.activity).toBe('chair');
    expect(factsOf(asked, 'goal/usual-way')).toEqual(['usual']);
    expect(factsOf(today(arrived, checked), 'goal/usual-way-not-known')).toEqual(['arrival']);
  });
});

describe('given another plan than the staged check', () => {
  it.each([
    [{ scope: 'comfort' }, 'No daily goal: a comfort plan applies'],
    [
      { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } },
      "No daily goal: the clinician's own plan applies",
    ],
  ])('then no goal is asked, and the row says which plan that is', (payload, words) => {
    const other: Told = { type: 'scope-set', at: 2, id: 'scope', payload };
    const now = today(arrived, checked, other);
    expect(now.goal).toBeNull();
    expect(now.because[0]).toEqual({ rule: 'goal/own-plan', facts: ['scope'], words });
  });
});

describe('the wish that the goal names', () => {
  it.each([
    ['the one told with the usual way', [usual('u', 0.5, 'w')], 'u'],
    ['the one told with a goal', [goal('g', 0.5, 'w')], 'g'],
    ['the last of two', [usual('u', 0.5, 'w'), goal('g', 0.6, 'w')], 'g'],
    ['the last of two, whichever it came with', [goal('g', 0.5, 'w'), usual('u', 0.6, 'w')], 'u'],
    ['the earlier, where a later goal tells of none', [usual('u', 0.5, 'w'), goal('g', 0.6)], 'u'],
    ['the earlier, where the usual way is told again without', [goal('g', 0.5, 'w'), usual('u', 0.6)], 'g'],
    ['none, where neither tells of one', [usual('u', 0.5), goal('g', 0.6), hold(0.7, 'walking', 30)], null],
  ] as const)('is %s', (_what, told, wished) => {
    const now = today(arrived, ...told, checked);
    expect(factsOf(now, 'goal/proposed')).toEqual(['check']);
    expect(factsOf(now, 'goal/wish')).toEqual(wished === null ? null : [wished]);
  });
});
