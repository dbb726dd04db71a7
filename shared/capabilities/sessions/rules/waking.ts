/** Waking time: what is left of elapsed time without the ward's nights. Instants in, so that a clock change costs nothing. */
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { Period, WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Goal } from '../values.ts';

/** Nights that are over since `since` (ms), and when the night that runs at `t` began to count; null by day. */
export interface Nights {
  readonly sleptMs: number;
  readonly pausedAt: EpochMs | null;
}

export function nightsSince(calendar: WardCalendar, since: EpochMs, t: EpochMs): Nights {
  let sleptMs = 0;
  let cursor = Math.min(since, t);
  for (;;) {
    const { is, until } = calendar.night(cursor);
    if (until > t) return { sleptMs, pausedAt: is ? cursor : null };
    if (is) sleptMs += until - cursor;
    cursor = until;
  }
}

/** Waking time from `from` to `to`, ms; never negative. */
export function wakingMs(calendar: WardCalendar, from: EpochMs, to: EpochMs): number {
  if (to <= from) return 0;
  const { sleptMs, pausedAt } = nightsSince(calendar, from, to);
  return (pausedAt ?? to) - from - sleptMs;
}

/**
 * The share of a ward day's waking hours in which the person is on the ward, 0 to 1. A day on which
 * nobody arrives or leaves is whole, whatever its nights. Source: the ward's rules, waking hours.
 */
export function shareOfDay(day: Period, here: Period, calendar: WardCalendar, rules: RulesDocument): number {
  if (here.from <= day.from && here.to >= day.to) return 1;
  const waking = wakingMs(calendar, Math.max(day.from, here.from), Math.min(day.to, here.to));
  return Math.min(1, waking / (rules.activity.wakingHours.value * HOUR));
}

/**
 * What a day's goal comes to in a share of the day: the nearest whole number of times, and one while
 * any waking time is left (going to the toilet counts), with the same distance and minutes each. Null
 * when only night is left of the day: then the goal begins with the next. Ours, practice.
 */
export function goalForShare(goal: Goal, share: number): Goal | null {
  if (share >= 1) return goal;
  if (share <= 0) return null;
  const timesUp = Math.max(Math.min(1, goal.timesUp), Math.round(goal.timesUp * share));
  const part = goal.timesUp > 0 ? timesUp / goal.timesUp : share;
  return {
    activity: goal.activity,
    timesUp,
    ...(goal.minutesOutOfBed === undefined
      ? {}
      : { minutesOutOfBed: Math.round(goal.minutesOutOfBed * part) }),
    ...(goal.metres === undefined ? {} : { metres: Math.round(goal.metres * part) }),
  };
}
