/**
 * Trust in the plan and when the next check is due. Source: design, trust and validity rows (hospital
 * policies as the users' research lists them; practice). The instant asked about is `t`; `note` is
 * told each later instant at which an answer changes by time alone.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { ELAPSED_DAY, HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { assessmentRecorded, planConfirmed } from '../../assessments/events.ts';
import type { TierJudgement } from '../../assessments/rules/tier.ts';
import type { Fact } from '../../corrections/facts.ts';
import { isCheck, isConfirm, type Trigger, type Triggers } from '../../orders/rules/triggers.ts';
import type { TriggerKind } from '../../orders/values.ts';
import type { Standing } from '../../stays/rules/standing.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Because, DueView, TrustView } from '../view.ts';

export interface TrustInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly rules: RulesDocument;
  readonly calendar: WardCalendar;
  readonly standing: Standing;
  readonly tier: TierJudgement;
  readonly triggers: Triggers;
  readonly conflicts: TrustView['conflicts'];
  /** The tier's word after each assessment, worked out when asked; for the settled rule. */
  readonly tierWords: () => ReadonlyMap<EventId, string>;
  readonly note: (at: EpochMs) => void;
}

/** The last check or confirm that renewed the plan; null when never checked here. */
export interface Renewal {
  readonly fact: Fact;
  readonly at: EpochMs;
}

export function lastRenewal(facts: readonly Fact[], tier: TierJudgement): Renewal | null {
  if (!tier.assessment) return null;
  let latest: Fact | null = null;
  let renewal: Fact | null = null;
  for (const fact of facts) {
    if (isCheck(fact)) renewal = latest = fact;
    else if (latest && isConfirm(fact)) {
      const { assessment } = fact.data as PayloadOf<typeof planConfirmed>;
      if (assessment === latest.id || assessment === tier.assessment.id) renewal = fact;
    }
  }
  return renewal && { fact: renewal, at: renewal.occurred };
}

interface Validity {
  readonly until: EpochMs;
  /** From here on a check comes before the next move, also while `until` is still ahead. */
  readonly nextMoveFrom: EpochMs;
  readonly because: Because[];
}

/** After these the next check belongs to the next move, not to a clock. */
const AT_NEXT_MOVE: ReadonlySet<TriggerKind> = new Set<TriggerKind>([
  'return-from-surgery',
  'return-from-dialysis',
  'sedation',
  'block-on',
  'block-off',
]);

export function trustAndDue(input: TrustInput): { trust: TrustView; due: DueView } {
  const { standing, tier, triggers, t } = input;
  if (standing.scope.kind !== 'staged') return outsideTheStagedCheck(input);
  const renewal = lastRenewal(input.facts, tier);
  const validity = renewal ? validityFrom(renewal, input) : firstCheck(input);
  const open = triggers.open.filter((o) => !(o.kind === 'arrival' && renewal === null));

  const reasons: Because[] = open.map((o) =>
    say('trust/trigger', [o.event], `${o.words}, ${saidAt(input, o.at)}`),
  );
  for (const c of input.conflicts) reasons.push(say('trust/conflict', [c.safer, c.other], c.words));
  if (renewal) {
    if (t >= validity.until) {
      reasons.push(
        say('trust/ran-out', [renewal.fact.id], `Last check ${saidAt(input, renewal.at)}: validity ran out`),
      );
    } else if (t >= validity.nextMoveFrom) reasons.push(...validity.because);
    input.note(validity.until);
    input.note(validity.nextMoveFrom);
  }
  const state = !renewal ? 'not-known' : reasons.length > 0 ? 're-check' : 'current';
  const standsOn = renewal
    ? say(
        'trust/current',
        [renewal.fact.id],
        `${renewal.fact.type === 'plan-confirmed' ? 'Confirmed' : 'Checked'} ${saidAt(input, renewal.at)}`,
      )
    : say('trust/not-known', [], 'Not checked on this ward');
  return {
    trust: {
      state,
      openTriggers: triggers.open.map(({ event, kind, at, words }) => ({ event, kind, at, words })),
      conflicts: [...input.conflicts],
      because: state === 're-check' ? reasons : [standsOn, ...reasons],
    },
    due: dueFrom(validity, open, renewal !== null, input),
  };
}

function dueFrom(
  validity: Validity,
  open: readonly Trigger[],
  checkedBefore: boolean,
  input: TrustInput,
): DueView {
  const { t, rules, standing } = input;
  const v = rules.validity;
  if (standing.away) {
    return {
      state: 'at-next-move',
      at: null,
      because: [
        say('due/away', [], `Off the ward since ${saidAt(input, standing.away.since)}: before the next move`),
      ],
    };
  }
  // The first check of a stay never waits for a move.
  const waits = checkedBefore ? open.filter((o) => AT_NEXT_MOVE.has(o.kind)) : [];
  const at = Math.max(validity.until, ...waits.map((o) => o.at + v.unsettledHours.value * HOUR));
  const overdueAt = at + v.graceMinutes.value * MINUTE;
  input.note(at);
  input.note(overdueAt);
  input.note(validity.nextMoveFrom);
  if (t >= overdueAt) return { state: 'overdue', at, because: validity.because };
  if (t >= at) return { state: 'due', at, because: validity.because };
  if (open.length > 0) {
    return {
      state: 'at-next-move',
      at: null,
      because: open.map((o) =>
        say('due/trigger', [o.event], `${o.words}, ${saidAt(input, o.at)}: before the next move`),
      ),
    };
  }
  if (t >= validity.nextMoveFrom) return { state: 'at-next-move', at: null, because: validity.because };
  return { state: 'not-due', at, because: validity.because };
}

function firstCheck({ standing, facts, rules }: TrustInput): Validity {
  const hours = rules.validity.firstCheckHours;
  const arrived = standing.began ?? facts[0]?.occurred ?? 0;
  const because = say('due/arrival', [], `First check within ${hours.value} h of arrival (${hours.source})`);
  return { until: arrived + hours.value * HOUR, nextMoveFrom: Infinity, because: [because] };
}

function validityFrom(renewal: Renewal, input: TrustInput): Validity {
  const v = input.rules.validity;
  const settled = isSettled(renewal, input);
  const hours = settled ? v.settledHours : v.unsettledHours;
  const words = settled
    ? `${hours.value} h: the same tier for ${v.settledAfterHours.value} h and no trigger (${hours.source})`
    : `${hours.value} h after the last check (${hours.source})`;
  const because = [say('due/validity', [renewal.fact.id], words)];
  const perShift = checkedEachShift(input);
  if (!perShift) return { until: renewal.at + hours.value * HOUR, nextMoveFrom: Infinity, because };
  return {
    until: renewal.at + hours.value * HOUR,
    nextMoveFrom: input.calendar.night(renewal.at).until,
    because: [perShift, ...because],
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
 * move of each shift. The shifts are taken to change where the ward's night begins and ends.
 */
function checkedEachShift({ facts, t, rules, triggers, note }: TrustInput): Because | null {
  for (const x of triggers.seen) {
    if (x.kind !== 'return-from-surgery') continue;
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

function outsideTheStagedCheck({ standing, triggers, conflicts }: TrustInput): {
  trust: TrustView;
  due: DueView;
} {
  const comfort = standing.scope.kind === 'comfort';
  const words = comfort ? 'Comfort plan' : "Clinician's plan only";
  const facts: EventId[] = standing.scopeFact ? [standing.scopeFact.id] : [];
  const open = triggers.open.filter((o) => o.kind !== 'arrival');
  const state = open.length > 0 || conflicts.length > 0 ? 're-check' : 'current';
  return {
    trust: {
      state,
      openTriggers: open.map(({ event, kind, at, words: w }) => ({ event, kind, at, words: w })),
      conflicts: [...conflicts],
      because: [
        say('trust/scope', facts, words),
        ...open.map((o) => say('trust/trigger', [o.event], o.words)),
      ],
    },
    due: { state: 'none', at: null, because: [say('due/scope', facts, `${words}: no staged check is due`)] },
  };
}

const saidAt = ({ calendar }: TrustInput, at: EpochMs): string => sayDayTime(calendar.zone, at);
const say = (rule: string, facts: EventId[], words: string): Because => ({ rule, facts, words });
