/** Movement debt: waking time since last up. Ours, practice (the limit of 4 waking hours is the ward's). */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hold,
  hours,
  notDone,
  order,
  recordOf,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { histories } from '../../board/rules/random-history.testkit.ts';
import type { DebtView } from '../../board/activity-view.ts';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { HOUR, toIso } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { amountsOf } from './activity.ts';
import { movementDebt } from './debt.ts';
import { goalToday } from './goals.ts';
import { input } from './goals.testkit.ts';

/** START is 18:00; the night is from 3 h to 14 h after it (the clocks go back), then from 28 h to 38 h. */
const look = (h: number, ...told: readonly Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(h));
const debt = (h: number, ...told: readonly Told[]) => look(h, ...told).view.debt!;
const waking = (d: DebtView, t: number) => ((d.pausedAt ?? t) - d.since - d.sleptMs) / HOUR;
const walks = check('walk', 14.5);
const sat = (at: number, until?: number): Told =>
  session(at, { activities: ['chair'], ...(until === undefined ? {} : { endedAt: toIso(hours(until)) }) });
/** A day of which nothing is known: no check, no session. */
const todayWithout = {
  today: goalToday(input({ cleared: null })),
  amounts: amountsOf([], { from: hours(0), to: hours(14) }, null),
};

describe('movement debt', () => {
  it('DEBT-1 counts from the end of the last time up', () => {
    const now = debt(18, sat(15, 16));
    expect(now).toMatchObject({ since: hours(16), sleptMs: 0, pausedAt: null, owed: false });
    expect(now.because).toEqual([
      {
        rule: 'debt/since',
        facts: ['e00002'],
        words: 'Waking time since last up; owed from 4 waking hours on',
      },
    ]);
    expect(debt(18, sat(15, 16), notDone(17, 'said-no')).since).toBe(hours(16));
    expect(debt(18, sat(15, 16), session(17, { activities: ['back-raised'] })).since).toBe(hours(16));
    expect(debt(18, sat(15, 16), session(17, { activities: ['toilet'], occasion: 'toilet' })).since).toBe(
      hours(17),
    );
  });
  it('counts from the arrival when no time up was recorded, and says so', () => {
    const now = debt(2);
    expect(now).toMatchObject({ since: hours(0), owed: false });
    expect(now.because[0]).toEqual({
      rule: 'debt/since',
      facts: ['e00001'],
      words: 'Waking time since arrival, no time up recorded; owed from 4 waking hours on',
    });
  });
  it('stands on no entry where the arrival was not told as one', () => {
    const { today, amounts } = todayWithout;
    const told = movementDebt({
      t: hours(2),
      began: hours(1),
      arrival: null,
      scope: 'staged',
      lastUp: null,
      holds: [],
      activityOrder: null,
      calendar,
      rules: DEFAULT_RULES,
      today,
      amounts,
      note: () => undefined,
    });
    expect(told).toMatchObject({ since: hours(1), owed: false });
    expect(told.because.map((b) => b.facts)).toEqual([[]]);
  });
  it('leaves the nights out, 11 h of them when the clocks go back', () => {
    expect(waking(debt(2), hours(2))).toBe(2);
    expect(debt(5)).toMatchObject({ sleptMs: 0, pausedAt: hours(3) });
    expect(waking(debt(13.9), hours(13.9))).toBe(3);
    expect(debt(14)).toMatchObject({ sleptMs: 11 * HOUR, pausedAt: null });
    expect(waking(debt(14.5), hours(14.5))).toBe(3.5);
    expect(debt(10, sat(9)).pausedAt).toBe(hours(9));
    expect(waking(debt(10, sat(9)), hours(10))).toBe(0);
  });
  it('is owed from four waking hours on, and names the instant before it comes', () => {
    expect(debt(19.999, sat(15, 16)).owed).toBe(false);
    expect(debt(20, sat(15, 16)).owed).toBe(true);
    expect(look(19.5, sat(15, 16)).nextChange).toBe(hours(20));
    expect(debt(14.999).owed).toBe(false);
    expect(debt(15).owed).toBe(true);
    expect(debt(10).owed).toBe(false);
    expect(debt(29, sat(15)).owed).toBe(true);
    const rules = structuredClone(DEFAULT_RULES);
    rules.activity.debtFreeHours.value = 2;
    expect(evaluateStay(stayOf(), { ...ward, rules }, calendar, hours(2)).view.debt?.owed).toBe(true);
  });
  it('names that instant after a night too, and in the night only that it ends: sleep adds nothing', () => {
    expect(look(14.5).nextChange).toBe(hours(15));
    expect(look(5, sat(2)).nextChange).toBe(hours(14));
  });
  it('is not owed while a hold or an order stops getting up, and says which', () => {
    const at = (...told: readonly Told[]) => debt(22, walks, sat(15), ...told);
    for (const scope of ['out-of-bed', 'raising-the-back', 'all-including-turning']) {
      const now = at(hold(16, scope, 40));
      expect(now).toMatchObject({
        owed: false,
        clears: 'Nothing clears it while that stands: ask for its review',
      });
      expect(now.because[1]).toEqual({
        rule: 'debt/hold',
        facts: ['e00004'],
        words: `Not owed while the hold on ${scope.replaceAll('-', ' ')} stands`,
      });
    }
    for (const scope of ['walking', 'standing']) expect(at(hold(16, scope, 40)).owed).toBe(true);
    const bed = at(order(16, { about: 'activity', most: 'bed' }));
    expect(bed.owed).toBe(false);
    expect(bed.because[1]).toEqual({
      rule: 'debt/order',
      facts: ['e00004'],
      words: 'Not owed while the order is bed',
    });
    expect(at(order(16, { about: 'activity', most: 'edge-of-bed' })).owed).toBe(true);
  });
  it('a hold whose review is due still frees nobody: not owed, review asked for', () => {
    expect(debt(22, walks, sat(15), hold(16, 'out-of-bed', 17)).owed).toBe(false);
  });
  it("is none under a comfort plan, and goes on under a clinician's plan", () => {
    const comfort: Told = { type: 'scope-set', at: 1, payload: { scope: 'comfort' } };
    expect(look(22, comfort).view.debt).toBeNull();
    const fence = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan-1' } };
    expect(debt(22, { type: 'scope-set', at: 1, payload: fence })).toMatchObject({
      owed: true,
      clears: "One time up clears it, as far as the clinician's plan allows",
    });
  });
});

describe('what would clear it', () => {
  const clears = (...told: readonly Told[]) => debt(22, ...told).clears;
  it('one time up, and what is left of the goal today', () => {
    expect(clears(walks)).toBe('One time up clears it; 3 more today meet the goal, none recorded yet');
    expect(clears(walks, sat(15))).toBe('One time up clears it; 2 more today meet the goal');
    expect(clears(walks, sat(15), sat(16))).toBe('One time up clears it; 1 more today meets the goal');
    const done = "One time up clears it; the times of today's goal are done";
    expect(clears(walks, sat(15), sat(16), sat(17))).toBe(done);
    expect(clears(walks, sat(15), sat(16), sat(17), sat(18))).toBe(done);
  });
  it('a check first, when it is not known what may be done', () => {
    expect(clears()).toBe('A check first; then one time up clears it');
  });
  it('no promise of getting up where only the bed is cleared', () => {
    expect(clears(check('upright', 14.5))).toBe(
      'One time up clears it once that is cleared; until then a chair by lift, if a nurse sets it',
    );
  });
  it('no goal in the night of arrival, but one time up', () => {
    const night = [{ ...begunAt(29) }, { ...check('walk', 29.5) }];
    expect(evaluateStay(recordOf(night), ward, calendar, hours(30)).view.debt?.clears).toBe(
      'One time up clears it',
    );
  });
});
const begunAt = (at: number): Told => ({
  type: 'stay-begun',
  at,
  payload: { stay: 'stay-1', person: 'person-1', bed: 'bed-1', from: 'home' },
});

describe('movement debt over random histories', { timeout: patience }, () => {
  it('DEBT-2 is never negative, and runs on and never back until the next time up', () => {
    const at = fc.integer({ min: 0, max: 400 });
    fc.assert(
      fc.property(histories, at, at, (told, a, b) => {
        const record = recordOf(told);
        const [early, late] = [Math.min(a, b) / 4, Math.max(a, b) / 4];
        const [one, two] = [early, late].map((h) => evaluateStay(record, ward, calendar, hours(h)).view.debt);
        const times = [early, late].map(hours);
        for (const [i, d] of [one, two].entries()) {
          expect(d === null || d === undefined ? 0 : waking(d, times[i]!)).toBeGreaterThanOrEqual(0);
        }
        fc.pre(one !== null && two !== null && one?.since === two?.since);
        expect(waking(two!, hours(late))).toBeGreaterThanOrEqual(waking(one!, hours(early)));
        expect(waking(two!, hours(late)) - waking(one!, hours(early))).toBeLessThanOrEqual(
          late - early + 1e-9,
        );
      }),
      runs(100),
    );
  });
});
