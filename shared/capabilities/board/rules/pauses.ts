/**
 * What puts a check off to the next move: the person is off the ward, or was seen asleep. Source:
 * design, validity row (common practice, no source). Neither touches trust or help.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import { triggerOf } from '../../orders/rules/triggers.ts';
import type { sessionRecorded } from '../../sessions/events.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { TrustInput } from './validity.ts';

/** One time off the ward that has ended: [since, back). */
export interface TimeAway {
  readonly since: EpochMs;
  readonly back: EpochMs;
  readonly cameBack: EventId;
}

/** The times off the ward that have ended, oldest first. Facts up to the instant asked about, in order. */
export function timesAway(facts: readonly Fact[]): TimeAway[] {
  const times: TimeAway[] = [];
  let since: EpochMs | null = null;
  for (const fact of facts) {
    if (fact.type === 'went-off-ward') since ??= fact.occurred;
    else if (fact.type === 'came-back' && since !== null) {
      times.push({ since, back: fact.occurred, cameBack: fact.id });
      since = null;
    }
  }
  return times;
}

/**
 * When something that was due at `at` is due once the person is back: what ran out while away is due
 * a while after coming back; what had run out before stays as it was. `back`: the last time away
 * that changed it, or null.
 */
export function dueAfterAway(
  at: EpochMs,
  away: readonly TimeAway[],
  rules: RulesDocument,
): { readonly at: EpochMs; readonly back: TimeAway | null } {
  let due = at;
  let last: TimeAway | null = null;
  for (const time of away) {
    if (due < time.since || due >= time.back) continue;
    due = time.back + rules.validity.afterReturnHours.value * HOUR;
    last = time;
  }
  return { at: due, back: last };
}

/**
 * Whether the person counts as asleep at `t`: from when somebody saw it until the night ends (by
 * day: for the ward's hours), or until something is recorded that nobody does in their sleep. Of
 * the same instant as the sleep, that counts too.
 */
export function asleepAt(input: TrustInput): Fact | null {
  const { facts, t, rules, calendar, note } = input;
  const seen = facts.findLast((f) => f.type === 'asleep-seen');
  if (!seen) return null;
  const night = calendar.night(seen.occurred);
  const until = night.is ? night.until : seen.occurred + rules.validity.asleepHours.value * HOUR;
  note(until);
  if (t >= until) return null;
  return facts.some((fact) => wokeIn(fact, seen.occurred, input)) ? null : seen;
}

const AWAKE: ReadonlySet<string> = new Set([
  'assessment-recorded',
  'plan-confirmed',
  'seen-walking',
  'walking-measured',
  'went-off-ward',
  'came-back',
]);

/** Whether this fact shows the person awake at or after `asleep`, as known at `t`. */
function wokeIn(fact: Fact, asleep: EpochMs, { t, rules, note }: TrustInput): boolean {
  if (fact.type === 'session-recorded') {
    const { session } = fact.data as PayloadOf<typeof sessionRecorded>;
    if (session.outcome === 'not-done') return false;
    if (fact.occurred >= asleep) return true;
    // Seen asleep in the chair: moved back to bed at the session's end.
    const end = session.endedAt === undefined ? fact.occurred : toEpoch(session.endedAt);
    if (end < asleep) return false;
    note(end);
    return t >= end;
  }
  if (fact.occurred < asleep) return false;
  if (AWAKE.has(fact.type)) return true;
  // Somebody must come soon, also without a move: then nobody leaves the person to sleep.
  const trigger = triggerOf(fact);
  return trigger !== null && (rules.validity.triggers[trigger.kind]?.value ?? null) !== null;
}
