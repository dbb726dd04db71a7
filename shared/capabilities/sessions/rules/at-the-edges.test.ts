/** Debt, waking time and steps of the goal at their edges. Ours, practice (design, debt and progression rows). */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  notDone,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Activity, Session } from '../values.ts';
import { showsMost } from './activities.ts';
import { amountsOf } from './activity.ts';
import { movementDebt, type DebtInput } from './debt.ts';
import { NO_GOAL } from './goals.ts';
import { shareOfDay, wakingMs } from './waking.ts';

/** START is 18:00; the night is from 3 h to 14 h after it (the clocks go back), then from 28 h to 38 h. */
describe('movement debt', () => {
  const debtAt = (t: number, over: Partial<DebtInput> = {}) => {
    const noted: number[] = [];
    const debt = movementDebt({
      t: hours(t),
      began: hours(0),
      arrival: null,
      scope: 'staged',
      lastUp: null,
      holds: [],
      activityOrder: null,
      calendar,
      rules: DEFAULT_RULES,
      today: NO_GOAL,
      amounts: amountsOf([], calendar.wardDay(hours(t)), null),
      note: (at) => noted.push((at - hours(0)) / HOUR),
      ...over,
    });
    return { debt, noted };
  };
  it('names the end of the day and when it will be owed, the nights left out; by night only its end', () => {
    expect(debtAt(2).noted).toEqual([3, 4]);
    expect(debtAt(10).noted).toEqual([14]);
    // 3 waking hours before the night of 11 h, the fourth after it.
    expect(debtAt(14).noted).toEqual([28, 15]);
  });
  it('stands on no entry where the arrival is not known', () => {
    expect(debtAt(2).debt.because[0]!.facts).toEqual([]);
    expect(debtAt(2, { arrival: 'a' as EventId }).debt.because[0]!.facts).toEqual(['a']);
  });
});

describe('the waking time', () => {
  it('between an instant and itself is none, by day and by night', () => {
    for (const h of [1, 5]) expect(wakingMs(calendar, hours(h), hours(h))).toBe(0);
  });
  it('of a ward day in which nobody arrives or leaves is whole, however many hours the ward counts', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.activity.wakingHours.value = 20;
    const day = calendar.wardDay(hours(20));
    expect(shareOfDay(day, day, calendar, rules)).toBe(1);
    expect(shareOfDay(day, { from: hours(0), to: Infinity }, calendar, rules)).toBe(1);
    expect(shareOfDay(day, { ...day, to: day.to - 1 }, calendar, rules)).toBeLessThan(1);
    expect(shareOfDay(day, { ...day, from: day.from + 1 }, calendar, rules)).toBeLessThan(1);
  });
});

describe('what a session shows most', () => {
  it('of two activities that show as much is the one told first', () => {
    const of = (...activities: Activity[]) => {
      const told: Session = {
        outcome: 'done',
        occasion: 'planned',
        activities,
        startedAt: '2026-10-25T08:00:00Z' as Session['startedAt'],
        events: [],
        firstTimeUp: false,
      };
      return showsMost(told);
    };
    expect(of('toilet', 'chair')).toBe('toilet');
    expect(of('chair', 'toilet')).toBe('chair');
  });
});

describe('the goal under another plan than the staged check', () => {
  it.each([
    [{ scope: 'comfort' }, 'No daily goal: a comfort plan applies'],
    [
      { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } },
      "No daily goal: the clinician's own plan applies",
    ],
  ])('is none, and only the plan that applies is said of it', (payload, words) => {
    const other: Told = { type: 'scope-set', at: 1, id: 'scope', payload };
    const told = stayOf(check('walk', 0.5), other, session(15));
    const { today } = evaluateStay(told, ward, calendar, hours(16)).view;
    const because = [{ rule: 'goal/own-plan', facts: ['scope'], words }];
    expect(today).toMatchObject({ goal: null, goalProposed: false, met: null, because });
  });
});

describe('a step of the goal', () => {
  const step = (...told: readonly Told[]) =>
    evaluateStay(stayOf(...told), ward, calendar, hours(25)).view.proposal?.step ?? null;
  const walks = check('walk', 14.05);
  const goal = (more: object = {}): Told => ({
    type: 'goal-set',
    at: 14.1,
    payload: { goal: { activity: 'chair', timesUp: 3, ...more } },
  });
  const easy = (at: number, more: object = {}): Told =>
    session(at, { activities: ['chair'], effort: 3, ...more });
  const refused = (at: number) => notDone(at, 'said-no');

  it('goes by when the sessions began, not by when what they say occurred', () => {
    // A refusal noted hours later than the easy session after it is no refusal in a row.
    const late = [
      { ...refused(15), at: 18 },
      { ...refused(16), at: 19 },
    ];
    expect(step(walks, goal(), ...late, easy(17))).toBeNull();
    expect(step(walks, goal(), easy(17), refused(18), refused(19))).toBe('back');
  });
  it('back after an event stands where the check was of the instant in which the session ended', () => {
    const dizzy = easy(16, { events: ['dizzy'] });
    expect(step(walks, goal(), dizzy, check('walk', 16))).toBe('back');
    expect(step(walks, goal(), dizzy, check('walk', 16.1))).toBeNull();
  });
  it('counts from the beginning after an event that a check has looked at', () => {
    const looked = [easy(15, { events: ['dizzy'] }), check('walk', 16)];
    expect(step(walks, goal(), ...looked, easy(17))).toBeNull();
    expect(step(walks, goal(), ...looked, easy(17), easy(18))).toBe('up');
    expect(step(walks, goal(), ...looked, refused(17))).toBeNull();
    expect(step(walks, goal(), ...looked, refused(17), refused(18))).toBe('back');
  });
  it('back is not for two refusals with a short way to the toilet between them', () => {
    const far = goal({ activity: 'walk', metres: 300 });
    const toToilet = session(16, { effort: 3, metres: 10, occasion: 'toilet', activities: ['walk'] });
    expect(step(walks, far, refused(15), toToilet, refused(17))).toBeNull();
    expect(step(walks, far, refused(15), refused(17))).toBe('back');
  });
  it('up is not undone by a session between for which nobody wrote the metres', () => {
    const far = goal({ activity: 'walk', metres: 300 });
    const walked = (at: number, more: object = {}) =>
      session(at, { effort: 3, activities: ['walk'], ...more });
    const whole = { metres: 100 };
    expect(step(walks, far, walked(15, whole), walked(16), walked(17, whole))).toBe('up');
    expect(step(walks, far, walked(15, whole), walked(16, { metres: 20 }), walked(17, whole))).toBeNull();
  });
});
