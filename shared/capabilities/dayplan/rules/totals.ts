import type { StayId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Fact, StayRecord } from '../../corrections/facts.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { boardWrongIn } from '../../orders/rules/board-wrong.ts';
import { amountsOf, goalMet, lastGoalSet, sessionsOf } from '../../sessions/rules/activity.ts';
import { goalForShare, shareOfDay } from '../../sessions/rules/waking.ts';
import type { Goal } from '../../sessions/values.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { localDate } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';

/** One stay on one ward day. `recorded: false` is a gap, never a zero. */
export interface WardDayTotal {
  /** Date on the ward's clock on which the ward day began, '2026-10-25'. */
  readonly day: string;
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly stay: StayId;
  readonly recorded: boolean;
  readonly sessions: {
    readonly done: number;
    readonly part: number;
    readonly stopped: number;
    /** By group of reason. */
    readonly notDone: Readonly<Record<string, number>>;
  };
  readonly timesUp: number;
  /** Sums of what was written down; null when no amount was. */
  readonly minutesOutOfBed: number | null;
  readonly metres: number | null;
  /**
   * The goal that a person set, as it stood at the end of that day (or at `t`); on the day of arrival
   * and of leaving its part for the waking hours there, null when these were none.
   */
  readonly goal: Goal | null;
  readonly goalMet: boolean | null;
  /** How often somebody said that the board is wrong about this person. */
  readonly boardWrong: number;
}

/**
 * Each ward day of a stay, from arrival until it ended or `t`, oldest first. A pure function of the
 * stay's facts and the ward's rules: a late or corrected entry changes the day it belongs to.
 */
export function totalsOf(
  record: StayRecord,
  calendar: WardCalendar,
  t: EpochMs,
  rules: RulesDocument = DEFAULT_RULES,
): WardDayTotal[] {
  const { facts } = effectiveFacts(record);
  const began = facts.find((f) => f.type === 'stay-begun')?.occurred;
  if (began === undefined || began > t) return [];
  const ended = facts.findLast((f) => f.type === 'stay-ended')?.occurred ?? Infinity;
  const until = Math.min(ended, t);
  const factsBy = facts.filter((f) => f.occurred <= t);
  const sessions = sessionsOf(factsBy, t);
  const totals: WardDayTotal[] = [];
  let day = calendar.wardDay(began);
  while (day.from <= until) {
    const whole = goalAt(facts, Math.min(day.to - 1, until));
    const share = shareOfDay(day, { from: began, to: ended }, calendar, rules);
    const goal = whole && goalForShare(whole, share);
    const amounts = amountsOf(sessions, day, goal);
    const { recorded, done, part, stopped, notDone, timesUp, minutesOutOfBed, metres } = amounts;
    totals.push({
      day: localDate(calendar.zone, day.from),
      from: day.from,
      to: day.to,
      stay: record.stay,
      recorded,
      sessions: { done, part, stopped, notDone },
      timesUp,
      minutesOutOfBed,
      metres,
      goal,
      goalMet: goalMet(goal, amounts),
      boardWrong: boardWrongIn(factsBy, day),
    });
    day = calendar.wardDay(day.to);
  }
  return totals;
}

const goalAt = (facts: readonly Fact[], at: EpochMs): Goal | null =>
  lastGoalSet(facts.filter((f) => f.occurred <= at))?.data.goal ?? null;
