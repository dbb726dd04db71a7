/** Waking hours and the part of a ward day. Ours, practice; the instants of the clock change: IANA tz, Europe/Berlin 2026. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  hours,
  recordOf,
  START,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { runs } from '../../../kernel/runs.testkit.ts';
import { HOUR, MINUTE } from '../../../kernel/times.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { goalForShare, nightsSince, shareOfDay, wakingMs } from './waking.ts';

const spring = wardCalendar({
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
});
const noNight = wardCalendar({
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '00:00',
  nightTo: '00:00',
});

describe('waking time', () => {
  it('leaves out the night: 21:00 to 07:00 is 11 h on the night the clocks go back', () => {
    // START is 18:00; the night begins 3 h later and ends 14 h later, an hour having been repeated.
    expect(nightsSince(calendar, START, hours(2))).toEqual({ sleptMs: 0, pausedAt: null });
    expect(nightsSince(calendar, START, hours(3) - 1)).toEqual({ sleptMs: 0, pausedAt: null });
    expect(nightsSince(calendar, START, hours(3))).toEqual({ sleptMs: 0, pausedAt: hours(3) });
    expect(nightsSince(calendar, START, hours(14) - 1)).toEqual({ sleptMs: 0, pausedAt: hours(3) });
    expect(nightsSince(calendar, START, hours(14))).toEqual({ sleptMs: 11 * HOUR, pausedAt: null });
    expect(nightsSince(calendar, START, hours(40))).toEqual({ sleptMs: 21 * HOUR, pausedAt: null });
  });
  it('is 9 h of night when the clocks go forward', () => {
    const evening = Date.parse('2027-03-27T19:00:00Z');
    expect(nightsSince(spring, evening, evening + 23 * HOUR)).toEqual({
      sleptMs: 9 * HOUR,
      pausedAt: null,
    });
  });
  it('counts from the middle of a night only what is left of it', () => {
    expect(nightsSince(calendar, hours(10), hours(12))).toEqual({ sleptMs: 0, pausedAt: hours(10) });
    expect(nightsSince(calendar, hours(10), hours(15))).toEqual({ sleptMs: 4 * HOUR, pausedAt: null });
    expect(wakingMs(calendar, hours(10), hours(12))).toBe(0);
    expect(wakingMs(calendar, hours(10), hours(15))).toBe(HOUR);
  });
  it('is all the time on a ward without a night, and none backwards', () => {
    expect(wakingMs(noNight, START, hours(30))).toBe(30 * HOUR);
    expect(wakingMs(calendar, hours(2), hours(1))).toBe(0);
    expect(nightsSince(calendar, hours(2), hours(1))).toEqual({ sleptMs: 0, pausedAt: null });
  });
  it('adds up, and never runs backwards', () => {
    const at = fc.integer({ min: 0, max: 400 * 60 }).map((m) => START + m * MINUTE);
    fc.assert(
      fc.property(at, at, at, (x, y, z) => {
        const [a, b, c] = [x, y, z].toSorted((p, q) => p - q) as [number, number, number];
        const whole = wakingMs(calendar, a, c);
        expect(wakingMs(calendar, a, b) + wakingMs(calendar, b, c)).toBe(whole);
        expect(whole).toBeGreaterThanOrEqual(0);
        expect(whole).toBeLessThanOrEqual(c - a);
      }),
      runs(200, 'cases'),
    );
  });
});

describe('the share of a ward day', () => {
  const day = calendar.wardDay(hours(20));
  const share = (from: number, to: number) => shareOfDay(day, { from, to }, calendar, DEFAULT_RULES);
  it('is whole for whoever is there from its start to its end', () => {
    expect(share(day.from, day.to)).toBe(1);
    expect(share(-Infinity, Infinity)).toBe(1);
    expect(
      shareOfDay(calendar.wardDay(START), { from: -Infinity, to: Infinity }, calendar, DEFAULT_RULES),
    ).toBe(1);
  });
  it("counts the waking hours there of the ward's 14", () => {
    expect(share(day.from + 7 * HOUR, Infinity)).toBe(0.5);
    expect(share(-Infinity, day.from + 7 * HOUR)).toBe(0.5);
    expect(share(day.from + 2 * HOUR, day.from + 5.5 * HOUR)).toBe(0.25);
    expect(share(day.from + 14 * HOUR, Infinity)).toBe(0);
    expect(share(day.from + 20 * HOUR, Infinity)).toBe(0);
  });
  it('is never more than whole', () => {
    expect(
      shareOfDay(noNight.wardDay(START), { from: START - 8 * HOUR, to: Infinity }, noNight, DEFAULT_RULES),
    ).toBe(1);
  });
});

describe('a goal for a share of the day', () => {
  const goal = { activity: 'walk' as const, timesUp: 3, minutesOutOfBed: 60, metres: 90 };
  it('is the nearest whole number of times, with as much each time', () => {
    expect(goalForShare(goal, 1)).toBe(goal);
    expect(goalForShare(goal, 0.84)).toEqual(goal);
    expect(goalForShare(goal, 0.83)).toEqual({ ...goal, timesUp: 2, minutesOutOfBed: 40, metres: 60 });
    expect(goalForShare(goal, 0.5)).toEqual({ ...goal, timesUp: 2, minutesOutOfBed: 40, metres: 60 });
    expect(goalForShare(goal, 0.49)).toEqual({ ...goal, timesUp: 1, minutesOutOfBed: 20, metres: 30 });
    expect(goalForShare({ activity: 'chair', timesUp: 3 }, 0.5)).toEqual({ activity: 'chair', timesUp: 2 });
  });
  it('is one time while any waking time is left, and nothing in the night', () => {
    expect(goalForShare(goal, 0.01)).toEqual({ ...goal, timesUp: 1, minutesOutOfBed: 20, metres: 30 });
    expect(goalForShare(goal, 0)).toBeNull();
  });
  it('of minutes alone is as many of the minutes', () => {
    const minutes = { activity: 'chair' as const, timesUp: 0, minutesOutOfBed: 60 };
    expect(goalForShare(minutes, 0.5)).toEqual({ ...minutes, minutesOutOfBed: 30 });
  });
});

describe('the goal on the day of arrival', () => {
  const arriving = (at: number, ...told: readonly Told[]) => recordOf([{ ...begun(), at }, ...told]);
  const today = (h: number, at: number, ...told: readonly Told[]) =>
    evaluateStay(arriving(at, ...told), ward, calendar, hours(h)).view.today;
  const part = (of: ReturnType<typeof today>) => of.because.find((b) => b.rule === 'goal/part-of-day');

  it('asks for the part of the day that is left, says so, and for all of it the next day', () => {
    // 14:00 on the next ward day: 7 of 14 waking hours are left.
    const now = today(22, 21, check('walk', 21.5));
    expect(now.goal).toEqual({ activity: 'walk', timesUp: 2 });
    expect(part(now)).toEqual({
      rule: 'goal/part-of-day',
      facts: ['e00001'],
      words: 'Here for part of this ward day: 2 of 3 times asked',
    });
    expect(part(today(22, 14, check('walk', 21.5)))).toBeUndefined();
    expect(today(22, 14, check('walk', 21.5)).goal?.timesUp).toBe(3);
    expect(today(39, 21, check('walk', 21.5)).goal?.timesUp).toBe(3);
  });
  it('asks for nothing more when the person arrives in the night, and begins with the next day', () => {
    const night = today(30, 29, check('walk', 29.5));
    expect(night.goal).toBeNull();
    expect(part(night)?.words).toBe('Arrived in the night: the goal begins with the next ward day');
    expect(today(38, 29, check('walk', 29.5)).goal?.timesUp).toBe(3);
  });
  it('holds for a goal that was set as well', () => {
    const set: Told = { type: 'goal-set', at: 21.6, payload: { goal: { activity: 'chair', timesUp: 4 } } };
    const now = today(22, 21, check('walk', 21.5), set);
    expect(now).toMatchObject({ goal: { activity: 'chair', timesUp: 2 }, goalProposed: false });
  });
  it('is not cut where no goal could be said anyway', () => {
    expect(part(today(22, 21))).toBeUndefined();
  });
});
