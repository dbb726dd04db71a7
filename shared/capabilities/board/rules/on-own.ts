import { isQualified } from '../../../kernel/author.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { seenWalking as seenWalkingType } from '../../assessments/events.ts';
import type { WalkingSupport } from '../../assessments/values.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Stated } from '../../handling/rules/types.ts';
import { isCheck, isConfirm, type Trigger, type Triggers } from '../../orders/rules/triggers.ts';
import type { OnOwn } from '../../handling/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Role } from '../../../kernel/author.ts';
import type { TrustView } from '../moving-view.ts';

const MAY_SET: ReadonlySet<Role> = new Set<Role>(['nurse', 'therapist', 'charge-nurse']);
/** Facts that take "on own" back whatever they say in detail. A scope that is set again leaves it off too. */
const TAKES_BACK: ReadonlySet<string> = new Set(['on-own-removed', 'hold-placed', 'scope-set']);

/**
 * "On own" as last set by a nurse or therapist; taken back by anyone's removal, any trigger, a hold,
 * or a later check in which a stage was not met as judged (`judgedLess`), and never back by itself. Set
 * after a trigger it waits until somebody has looked; where the trigger was told of only afterwards, and
 * nobody had looked in between, who set it did not know, and it is off. Nor does it come back when
 * someone who may not free tells afterwards that the staged check had applied all along: who set it
 * did so under another plan. `scopeFact` is what set the plan that applies. Set twice at one instant,
 * only what both say counts, and both are shown. Source: design, people and rule 2.
 */
export function onOwnInForce(
  facts: readonly Fact[],
  triggers: Triggers,
  scopeFact: Fact | null,
  judgedLess: ReadonlySet<EventId>,
): OnOwnTold {
  const told = facts.filter(speaksOfOnOwn);
  const last = told.at(-1);
  if (!last) return OFF;
  const together = told.filter((f) => f.occurred === last.occurred);
  const sets = together.filter((f): f is SetFact => f.type === 'on-own-set');
  const removed = together.find((f) => f.type === 'on-own-removed');
  if (removed) {
    const conflicts = sets.map((other) => disagree(removed, other, REMOVED_TOO));
    return { stands: null, conflicts: lookedAtSince(facts, last) ? [] : conflicts };
  }
  const [first] = sets;
  for (const later of facts.slice(facts.indexOf(first!) + 1)) {
    if (TAKES_BACK.has(later.type)) return OFF;
    if (later.type !== 'assessment-recorded') continue;
    if (judgedLess.has(later.id) || foundLess(later)) return OFF;
  }
  if (triggers.seen.some((trigger) => trigger.at >= last.occurred)) return OFF;
  if (triggers.open.some(({ kind }) => kind !== 'arrival')) return OFF;
  if (triggers.seen.some((trigger) => notKnownThen(trigger, last, facts))) return OFF;
  if (scopeFact && !isQualified(scopeFact.author) && sets.some((f) => scopeFact.recorded >= f.recorded)) {
    return OFF;
  }
  return whereAllAgree(sets);
}

/** A trigger of before "on own" was set, told of only after it, with no look at the person between the two. */
function notKnownThen(trigger: Trigger, set: Fact, facts: readonly Fact[]): boolean {
  const told = facts.find((f) => f.id === trigger.event);
  if (trigger.kind === 'arrival' || !told || told.recorded <= set.recorded) return false;
  return !facts.some(
    (f) => f.occurred > trigger.at && f.occurred <= set.occurred && (isCheck(f) || isConfirm(f)),
  );
}

/** What was set, and what was said otherwise at that very time. */
export interface OnOwnTold {
  readonly stands: Stated<OnOwn> | null;
  readonly conflicts: TrustView['conflicts'];
}
type SetFact = Fact<OnOwn>;
const OFF: OnOwnTold = { stands: null, conflicts: [] };

const speaksOfOnOwn = (fact: Fact): boolean =>
  fact.type === 'on-own-removed' || (fact.type === 'on-own-set' && MAY_SET.has(fact.author.role));
const lookedAtSince = (facts: readonly Fact[], since: Fact): boolean =>
  facts.some((f) => f.occurred > since.occurred && (isCheck(f) || isConfirm(f)));

const SET_TWICE =
  'On own was set twice at the same time, not alike: only what both say counts; tell both authors';
const REMOVED_TOO = 'On own was set and removed at the same time: removed stands; tell both authors';
const disagree = (safer: Fact, other: Fact, words: string): TrustView['conflicts'][number] => ({
  question: 'on own',
  safer: safer.id,
  other: other.id,
  words,
});

/** Of several of one instant the places and times that each of them names: neither is the later one. */
function whereAllAgree(sets: readonly SetFact[]): OnOwnTold {
  const where = sets[0]!.data.where.filter((w) => sets.every((f) => f.data.where.includes(w)));
  const when = sets[0]!.data.when.filter((w) => sets.every((f) => f.data.when.includes(w)));
  const saysMore = ({ data }: SetFact): boolean =>
    data.where.some((w) => !where.includes(w)) || data.when.some((w) => !when.includes(w));
  const safest = sets.find((f) => !saysMore(f)) ?? sets[0]!;
  const conflicts = sets
    .filter((f) => f !== safest && saysMore(f))
    .map((other) => disagree(safest, other, SET_TWICE));
  const none = where.length === 0 || when.length === 0;
  const stands = none ? null : { value: { where, when }, fact: safest.id, at: safest.occurred };
  return { stands, conflicts };
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

/** From none to the one that steadies most. Common practice, no source. */
const STEADIES: readonly WalkingSupport[] = [
  'none',
  'stick',
  'two-sticks',
  'crutches',
  'wheeled-frame',
  'frame',
];

export interface SupportTold {
  readonly stands: Stated<WalkingSupport> | null;
  readonly conflicts: TrustView['conflicts'];
}

/** The walking support last seen in use, in a check or on arrival; of one instant the steadiest. */
export function walkingSupportOf(facts: readonly Fact[]): SupportTold {
  const told = facts.filter(tellsSupport);
  const at = told.at(-1)?.occurred;
  const steadiestFirst = told
    .filter((f) => f.occurred === at)
    .toSorted((a, b) => steadies(b) - steadies(a) || (a.id > b.id ? -1 : 1));
  const [stands] = steadiestFirst;
  if (!stands) return { stands: null, conflicts: [] };
  return {
    stands: { value: stands.data.walkingSupport, fact: stands.id, at: stands.occurred },
    conflicts: steadiestFirst
      .filter((f) => steadies(f) < steadies(stands))
      .map((other) => ({
        question: 'walking support',
        safer: stands.id,
        other: other.id,
        words: 'Two walking supports were seen at the same time: the steadier one stands; tell both authors',
      })),
  };
}

type SupportFact = Fact<{ readonly walkingSupport: WalkingSupport }>;
const tellsSupport = (fact: Fact): fact is SupportFact =>
  (isCheck(fact) || (fact.type === 'seen-walking' && isQualified(fact.author))) &&
  (fact.data as Partial<SupportFact['data']>).walkingSupport !== undefined;
const steadies = ({ data }: SupportFact): number => STEADIES.indexOf(data.walkingSupport);
