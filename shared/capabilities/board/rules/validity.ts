/**
 * What renews a plan and how long it holds then. Source: design, validity row (hospital policies as
 * the users' research lists them in 3a; every number is common practice, to be signed by the ward).
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { ELAPSED_DAY, HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { assessmentRecorded, planConfirmed } from '../../assessments/events.ts';
import type { ProtocolLookup } from '../../assessments/rules/protocol.ts';
import type { TierJudgement } from '../../assessments/rules/tier.ts';
import type { Fact } from '../../corrections/facts.ts';
import { howFar, isReadable, mayGoTo } from '../../orders/rules/reach.ts';
import { isCheck, isConfirm, type Triggers } from '../../orders/rules/triggers.ts';
import type { stayBegun } from '../../stays/events.ts';
import type { Standing } from '../../stays/rules/standing.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Because } from '../because.ts';
import type { TrustView } from '../moving-view.ts';

export interface TrustInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly rules: RulesDocument;
  readonly calendar: WardCalendar;
  readonly standing: Standing;
  readonly tier: TierJudgement;
  readonly protocols: ProtocolLookup;
  readonly triggers: Triggers;
  readonly conflicts: TrustView['conflicts'];
  readonly renewal: Renewal | null;
  /** The tier's word after each assessment, worked out when asked; for the settled rule. */
  readonly tierWords: () => ReadonlyMap<EventId, string>;
  readonly note: (at: EpochMs) => void;
}

/** The last check or confirm that renewed the plan; null when never checked here. */
export interface Renewal {
  readonly fact: Fact;
  readonly at: EpochMs;
  /** The last check since that went less far, and so renewed nothing. */
  readonly lesser: Fact | null;
}

/**
 * A check renews that tested the last stage which stands cleared after it, or as far as the orders and
 * holds of its time let it: a look at the person in bed says nothing of the walk that was cleared a day
 * before. One that found a stage not met leaves less cleared, and so went as far. Common practice, no source.
 * One under a protocol that nobody can read renews nothing.
 * A qualified person's confirm of the last check, or of the one the tier stands on, renews too. A session
 * never does, whoever recorded it.
 */
export function lastRenewal({
  facts,
  tier,
  protocols,
  rules,
}: Pick<TrustInput, 'facts' | 'tier' | 'protocols' | 'rules'>): Renewal | null {
  if (!tier.assessment) return null;
  let latest: Fact | null = null;
  let renewal: Fact | null = null;
  let lesser: Fact | null = null;
  for (const [i, fact] of facts.entries()) {
    if (isCheck(fact) && !isReadable(fact, protocols)) {
      if (renewal) lesser = fact;
    } else if (isCheck(fact)) {
      latest = fact;
      const { tested, lost } = howFar(fact, protocols);
      const stands = tier.clearedAfter.get(fact.id) ?? -1;
      const asFar =
        lost !== null || tested >= stands || tested >= mayGoTo(facts.slice(0, i), fact.occurred, rules);
      // The first check of a stay begins the validity, however far it went.
      if (renewal && !asFar) lesser = fact;
      else [renewal, lesser] = [fact, null];
    } else if (latest && isConfirm(fact)) {
      const { assessment } = fact.data as PayloadOf<typeof planConfirmed>;
      if (assessment === latest.id || assessment === tier.assessment.id) [renewal, lesser] = [fact, null];
    }
  }
  return renewal && { fact: renewal, at: renewal.occurred, lesser };
}

export interface Validity {
  /** The hours since the check, or the ward's check in every shift, whichever ends first. */
  readonly until: EpochMs;
  /** Where the hours since the check end. */
  readonly byHours: EpochMs;
  /** Where the ward's check in every shift is late; Infinity when the ward has that off. */
  readonly byShift: EpochMs;
  /** From here on a check comes before the next move, also while `until` is still ahead. */
  readonly nextMoveFrom: EpochMs;
  readonly hoursBecause: Because;
  readonly shiftBecause: Because;
  /** Why a check comes before the first move of each shift, when it does. */
  readonly moveBecause: Because | null;
}

/** `note` is told when the reasons for a check in each shift end, not the ends of validity themselves. */
export function validityFrom(renewal: Renewal, input: TrustInput): Validity {
  const v = input.rules.validity;
  const settled = isSettled(renewal, input);
  const hours = settled ? v.settledHours : v.unsettledHours;
  const shiftEnds = input.calendar.shift(renewal.at).to;
  const byHours = renewal.at + hours.value * HOUR;
  // A shift shorter than the ward's hours into it still asks for its own check.
  const nextEnds = input.calendar.shift(shiftEnds).to;
  const intoShift = shiftEnds + v.intoShiftHours.value * HOUR;
  const byShift = v.eachShift.value ? Math.min(intoShift, nextEnds) : Infinity;
  const moveBecause = checkedEachShift(input);
  const facts = renewal.lesser ? [renewal.fact.id, renewal.lesser.id] : [renewal.fact.id];
  const far = renewal.lesser ? ' as far as what stands cleared' : '';
  return {
    until: Math.min(byHours, byShift),
    byHours,
    byShift,
    nextMoveFrom: moveBecause ? shiftEnds : Infinity,
    hoursBecause: say(
      'due/validity',
      facts,
      settled
        ? `${hours.value} h${far && ` after the last check${far}`}: the same tier for ${v.settledAfterHours.value} h and no trigger (${hours.source})`
        : `${hours.value} h after the last check${far} (${hours.source})`,
    ),
    shiftBecause: say(
      'due/every-shift',
      facts,
      (intoShift <= nextEnds
        ? `A check in every shift, within ${v.intoShiftHours.value} h of its start: `
        : `A check in every shift, the next by its end ${saidAt(input, nextEnds)}: `) +
        `the last one${far} was in the shift to ${saidAt(input, shiftEnds)} (${v.eachShift.source})`,
    ),
    moveBecause,
  };
}

/** The same tier over the settled time before the last check, and no trigger in it. */
function isSettled(renewal: Renewal, { facts, triggers, rules, standing, tierWords }: TrustInput): boolean {
  const since = renewal.at - rules.validity.settledAfterHours.value * HOUR;
  if (standing.began === null || standing.began > since) return false;
  if (triggers.seen.some((x) => x.at > since && x.at <= renewal.at)) return false;
  const words = tierWords();
  const word = words.get(facts.findLast((f) => f.occurred <= renewal.at && words.has(f.id))!.id);
  for (const fact of facts.toReversed()) {
    if (fact.occurred > renewal.at || !words.has(fact.id)) continue;
    if (words.get(fact.id) !== word) return false;
    if (fact.occurred <= since) return true;
  }
  return false;
}

/**
 * Help waited for only sometimes, or the first day after surgery: a check comes before the first
 * move of each shift of the ward's roster. Someone who arrives from theatre is as new from surgery
 * as someone who comes back.
 */
function checkedEachShift({ facts, t, rules, triggers, note }: TrustInput): Because | null {
  const fromTheatre = facts.find(
    (f) => f.type === 'stay-begun' && (f.data as PayloadOf<typeof stayBegun>).from === 'theatre',
  );
  const surgery = triggers.seen
    .filter((x) => x.kind === 'return-from-surgery')
    .map((x) => ({ event: x.event, at: x.at }));
  if (fromTheatre) surgery.unshift({ event: fromTheatre.id, at: fromTheatre.occurred });
  for (const x of surgery) {
    note(x.at + ELAPSED_DAY);
    if (t < x.at + ELAPSED_DAY) {
      return say('due/each-shift', [x.event], 'First day after surgery: before the first move of each shift');
    }
  }
  const window = rules.validity.cooperationWindowHours.value * HOUR;
  for (const fact of facts) {
    if (fact.type !== 'assessment-recorded') continue;
    const { cooperation } = fact.data as PayloadOf<typeof assessmentRecorded>;
    if (cooperation?.waitsForHelp !== 'varies') continue;
    note(fact.occurred + window);
    if (t < fact.occurred + window) {
      return say(
        'due/each-shift',
        [fact.id],
        'Waits for help only sometimes: before the first move of each shift',
      );
    }
  }
  return null;
}

export const saidAt = ({ calendar }: Pick<TrustInput, 'calendar'>, at: EpochMs): string =>
  sayDayTime(calendar.zone, at);
export const say = (rule: string, facts: EventId[], words: string): Because => ({ rule, facts, words });
