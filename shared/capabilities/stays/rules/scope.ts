/** Which plan applies to a stay, and who may say so. */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { scopeSet } from '../events.ts';

export type ScopeKind = PayloadOf<typeof scopeSet>['scope'];

/**
 * From the one that asks for the least help to the one that forbids the most: a comfort plan asks for
 * none of its own, the staged check does, a clinician's plan takes its place.
 */
export const GUARDS: readonly ScopeKind[] = ['comfort', 'staged', 'clinicians-plan'];

/** Whether a scope that is set counts: from someone who may not free only when it guards as much. Design, rule 2. */
export function scopeCounts(now: ScopeKind, fact: Fact): boolean {
  const { scope } = fact.data as PayloadOf<typeof scopeSet>;
  return isQualified(fact.author) || GUARDS.indexOf(scope) >= GUARDS.indexOf(now);
}
