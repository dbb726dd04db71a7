/** What sessions say: when the person was last up, today's amounts, and whether the goal is met. */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { TodayView } from '../../board/activity-view.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Period } from '../../wards/context.ts';
import type { goalSet, sessionRecorded } from '../events.ts';
import type { Goal, Session } from '../values.ts';
import { isUp, mostDemanding, reaches, showsAsMuch, wasUp } from './activities.ts';

export interface SessionFact {
  readonly fact: Fact<PayloadOf<typeof sessionRecorded>>;
  readonly session: Session;
  readonly from: EpochMs;
  /** When it ended; its start when that was not written down. */
  readonly to: EpochMs;
}

/** Sessions begun by `t`, in order. `note` is told when a later one begins or a running one ends. */
export function sessionsOf(
  facts: readonly Fact[],
  t: EpochMs,
  note: (at: EpochMs) => void = () => undefined,
): SessionFact[] {
  const sessions: SessionFact[] = [];
  for (const f of facts) {
    if (f.type !== 'session-recorded') continue;
    const fact = f as Fact<PayloadOf<typeof sessionRecorded>>;
    const { session } = fact.data;
    const { from, end } = timesOf(session);
    note(from);
    note(end);
    if (from <= t) sessions.push({ fact, session, from, to: end <= t ? end : from });
  }
  return sessions;
}

/** Parsed once for each session: a board asks again at every view. */
const parsed = new WeakMap<Session, { readonly from: EpochMs; readonly end: EpochMs }>();
function timesOf(session: Session): { readonly from: EpochMs; readonly end: EpochMs } {
  let times = parsed.get(session);
  if (!times) {
    const from = toEpoch(session.startedAt);
    times = { from, end: session.endedAt === undefined ? from : toEpoch(session.endedAt) };
    parsed.set(session, times);
  }
  return times;
}

export function lastUpOf(sessions: readonly SessionFact[]): StayView['lastUp'] {
  let last: SessionFact | null = null;
  for (const s of sessions) if (wasUp(s.session) && (!last || s.to >= last.to)) last = s;
  return last && { at: last.to, event: last.fact.id, activity: mostDemanding(last.session)! };
}

/** The last thing that went wrong in a session. */
export function lastEventOf(sessions: readonly SessionFact[]): StayView['lastEvent'] {
  let last: StayView['lastEvent'] = null;
  for (const s of sessions) {
    const kind = s.session.events[0];
    if (kind && (!last || s.from >= last.at)) last = { kind, at: s.from };
  }
  return last;
}

/** Longest distance of a session that was done with nothing going wrong and no stop limit passed, metres. */
export function longestWalkOf(sessions: readonly SessionFact[], beyondStop: ReadonlyMap<EventId, string>) {
  let longest: { metres: number; fact: SessionFact['fact']['id'] } | null = null;
  for (const { session, fact } of sessions) {
    const { metres } = session;
    if (session.outcome !== 'done' || metres === undefined || session.events.length > 0) continue;
    if (!session.activities.includes('walk') || beyondStop.has(fact.id)) continue;
    if (metres > 0 && (!longest || metres > longest.metres)) longest = { metres, fact: fact.id };
  }
  return longest;
}

/** The last goal that a qualified person set; what anyone else says of it does not count. */
export function lastGoalSet(facts: readonly Fact[]): Fact<PayloadOf<typeof goalSet>> | null {
  const last = facts.findLast((f) => f.type === 'goal-set' && isQualified(f.author));
  return (last as Fact<PayloadOf<typeof goalSet>> | undefined) ?? null;
}

export interface DayAmounts extends Pick<
  TodayView,
  'recorded' | 'timesUp' | 'minutesOutOfBed' | 'metres' | 'notDone'
> {
  readonly done: number;
  readonly part: number;
  readonly stopped: number;
  /** Sessions of the kind that the goal asks for: on the feet where it asks for standing or more. */
  readonly ofItsKind: number;
  /** Sessions up, or walks, for which nobody wrote the minutes, or the metres. */
  readonly gaps: { readonly minutes: boolean; readonly metres: boolean };
}

/**
 * Amounts of one ward day, by when a session began. Amounts that nobody wrote down stay null. A
 * goal that asks only for the back raised counts those spells as well.
 */
export function amountsOf(sessions: readonly SessionFact[], day: Period, goal: Goal | null): DayAmounts {
  const inBedCounts = goal !== null && !isUp(goal.activity);
  const sums = { recorded: false, timesUp: 0, done: 0, part: 0, stopped: 0, ofItsKind: 0 };
  const kind = goal && (showsAsMuch(goal.activity, 'stand') ? 'stand' : goal.activity);
  let minutesOutOfBed: number | null = null;
  let metres: number | null = null;
  const gaps = { minutes: false, metres: false };
  const notDone: Record<string, number> = {};
  for (const { session, from } of sessions) {
    if (from < day.from || from >= day.to) continue;
    sums.recorded = true;
    if (session.outcome === 'not-done') {
      const group = session.notDone?.group ?? 'no-reason';
      notDone[group] = (notDone[group] ?? 0) + 1;
      continue;
    }
    sums[session.outcome]++;
    if (wasUp(session) || (inBedCounts && session.activities.includes(goal.activity))) sums.timesUp++;
    if (kind && reaches(session, kind)) sums.ofItsKind++;
    if (session.minutesOutOfBed !== undefined) {
      minutesOutOfBed = (minutesOutOfBed ?? 0) + session.minutesOutOfBed;
    } else if (wasUp(session)) gaps.minutes = true;
    if (session.metres !== undefined) metres = (metres ?? 0) + session.metres;
    else if (session.activities.includes('walk')) gaps.metres = true;
  }
  return { ...sums, minutesOutOfBed, metres, notDone, gaps };
}

/**
 * Null while it cannot be said: no goal, nothing recorded, or an amount the goal asks for not written down.
 * The way to the toilet, the wash and the meal count, but a goal on the feet is not met by lifts alone.
 */
export function goalMet(goal: Goal | null, amounts: DayAmounts): boolean | null {
  if (!goal || !amounts.recorded) return null;
  const parts = [
    amounts.timesUp >= goal.timesUp && amounts.ofItsKind > 0,
    reached(goal.minutesOutOfBed, amounts.minutesOutOfBed, amounts.gaps.minutes),
    reached(goal.metres, amounts.metres, amounts.gaps.metres),
  ];
  if (parts.includes(false)) return false;
  return parts.includes(null) ? null : true;
}
function reached(asked: number | undefined, amount: number | null, gap: boolean): boolean | null {
  if (asked === undefined) return true;
  if (amount === null) return null;
  return amount >= asked ? true : gap ? null : false;
}
