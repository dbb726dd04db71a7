import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { seenWalking as seenWalkingType } from '../../assessments/events.ts';
import type { WalkingSupport } from '../../assessments/values.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Stated } from '../../handling/rules/types.ts';
import { isCheck, type Trigger } from '../../orders/rules/triggers.ts';
import type { OnOwn } from '../../handling/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Role } from '../../../kernel/author.ts';

const MAY_SET: ReadonlySet<Role> = new Set<Role>(['nurse', 'therapist', 'charge-nurse']);
/** Facts that take "on own" back whatever they say in detail. A scope that is set again leaves it off too. */
const TAKES_BACK: ReadonlySet<string> = new Set(['on-own-removed', 'hold-placed', 'scope-set']);

/**
 * "On own" as last set by a nurse or therapist; taken back by anyone's removal, any trigger, a hold,
 * or a later check in which a stage was not met, and never back by itself. Nor does it come back when
 * someone who may not free tells afterwards that the staged check had applied all along: who set it
 * did so under another plan. `scopeFact` is what set the plan that applies. Source: design, people.
 */
export function onOwnInForce(
  facts: readonly Fact[],
  triggers: readonly Trigger[],
  scopeFact: Fact | null,
): Stated<OnOwn> | null {
  const set = facts.findLastIndex((f) => f.type === 'on-own-set' && MAY_SET.has(f.author.role));
  const fact = facts[set];
  if (!fact) return null;
  for (const later of facts.slice(set + 1)) {
    if (TAKES_BACK.has(later.type)) return null;
    if (later.type === 'assessment-recorded' && foundLess(later)) return null;
  }
  if (triggers.some((trigger) => trigger.at >= fact.occurred)) return null;
  if (scopeFact && !isQualified(scopeFact.author) && scopeFact.recorded >= fact.recorded) return null;
  return { value: fact.data as OnOwn, fact: fact.id, at: fact.occurred };
}

function foundLess(fact: Fact): boolean {
  const { stages, cooperation } = fact.data as {
    stages: readonly { outcome: string }[];
    cooperation?: { waitsForHelp: string };
  };
  return (
    stages.some((s) => s.outcome === 'not-met') ||
    (cooperation !== undefined && cooperation.waitsForHelp !== 'yes')
  );
}

/**
 * "Seen walking steadily on arrival", while it holds: for the ward's hours, until the first check or
 * any trigger but the arrival itself. Source: design, rule 2.1.
 */
export function seenWalkingInForce(
  facts: readonly Fact[],
  triggers: readonly Trigger[],
  t: EpochMs,
  rules: RulesDocument,
  note: (at: EpochMs) => void,
): Stated<WalkingSupport> | null {
  const at = facts.findLastIndex((f) => f.type === 'seen-walking' && isQualified(f.author));
  const fact = facts[at];
  if (!fact) return null;
  const until = fact.occurred + rules.handling.seenWalkingHours.value * HOUR;
  note(until);
  if (t >= until) return null;
  if (facts.some((f) => f.type === 'assessment-recorded')) return null;
  if (triggers.some((x) => x.kind !== 'arrival' && x.at >= fact.occurred)) return null;
  const { walkingSupport } = fact.data as PayloadOf<typeof seenWalkingType>;
  return { value: walkingSupport, fact: fact.id, at: fact.occurred };
}

/** The walking support last seen in use, in a check or on arrival. */
export function walkingSupportOf(facts: readonly Fact[]): Stated<WalkingSupport> | null {
  for (const fact of facts.toReversed()) {
    if (!isCheck(fact) && !(fact.type === 'seen-walking' && isQualified(fact.author))) continue;
    const { walkingSupport } = fact.data as { walkingSupport?: WalkingSupport };
    if (walkingSupport !== undefined) return { value: walkingSupport, fact: fact.id, at: fact.occurred };
  }
  return null;
}
