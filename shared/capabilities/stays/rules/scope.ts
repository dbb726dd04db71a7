/** Which plan applies to a stay, and who may say so. */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { TrustView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { scopeSet } from '../events.ts';

export type ScopeKind = PayloadOf<typeof scopeSet>['scope'];

/**
 * From the one that asks for the least help to the one that forbids the most: a comfort plan asks for
 * none of its own, the staged check does, a clinician's plan takes its place.
 */
export const GUARDS: readonly ScopeKind[] = ['comfort', 'staged', 'clinicians-plan'];

/** What the entries on which plan applies come to. */
export interface ScopesTold {
  /** Those that set the plan that applied from then on, in order: of one instant at most one. */
  readonly counted: readonly ScopeFact[];
  /** Entries of the instant of the last of them that say otherwise. */
  readonly conflicts: TrustView['conflicts'];
}
type ScopeFact = Fact<PayloadOf<typeof scopeSet>>;

/**
 * Facts in order. From someone who may not free a scope counts only when it guards as much as what
 * applies; a clinician's plan that leaves the spine in doubt guards more than another. Of one instant the one
 * that guards more stands, and what says otherwise is kept as a conflict until the next entry. Design, rule 2.
 */
export function scopesTold(facts: readonly Fact[]): ScopesTold {
  const counted: ScopeFact[] = [];
  let conflicts: TrustView['conflicts'] = [];
  for (const told of atOneTime(facts)) {
    const free = told.filter((f) => isQualified(f.author));
    const least = free.length > 0 ? Math.min(...free.map(guards)) : guards(counted.at(-1));
    const heard = told.filter((f) => free.includes(f) || guards(f) >= least).toSorted(mostGuardedFirst);
    const [stands] = heard;
    if (!stands) continue;
    counted.push(stands);
    const says = JSON.stringify(stands.data);
    conflicts = heard
      .filter((f) => JSON.stringify(f.data) !== says)
      .map((other) => ({ question: 'scope', safer: stands.id, other: other.id, words: DISAGREE }));
  }
  return { counted, conflicts };
}

const DISAGREE =
  'Two entries of the same time differ on which plan applies: the one that guards more stands; tell both authors';

/** A clinician's plan that leaves the spine in doubt guards more than any other of its kind: nobody is turned by two. */
const leavesSpineInDoubt = ({ data }: ScopeFact): boolean =>
  data.scope === 'clinicians-plan' && data.fence === 'unstable-spine-pelvis-or-long-bone';
/** The staged check applies until something else is said. */
const guards = (fact: ScopeFact | undefined): number =>
  GUARDS.indexOf(fact?.data.scope ?? 'staged') + (fact && leavesSpineInDoubt(fact) ? 1 : 0);
const byQualified = (fact: ScopeFact): number => (isQualified(fact.author) ? 1 : 0);
const mostGuardedFirst = (a: ScopeFact, b: ScopeFact): number =>
  guards(b) - guards(a) || byQualified(b) - byQualified(a) || (a.id > b.id ? -1 : 1);

function atOneTime(facts: readonly Fact[]): ScopeFact[][] {
  const groups: ScopeFact[][] = [];
  for (const fact of facts) {
    if (fact.type !== 'scope-set') continue;
    const last = groups.at(-1);
    if (last?.[0]!.occurred === fact.occurred) last.push(fact as ScopeFact);
    else groups.push([fact as ScopeFact]);
  }
  return groups;
}
