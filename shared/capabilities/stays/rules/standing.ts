/** What a stay's own facts say now: where the person is, which plan applies, weight, what is attached. */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { TrustView } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { PlanInput, Stated } from '../../handling/rules/types.ts';
import type {
  attachmentAdded,
  attachmentRemoved,
  scopeSet,
  usualWayRecorded,
  wallShowingSet,
  weightRecorded,
  wentOffWard,
} from '../events.ts';
import type { UsualWay, WallShowing, Weight } from '../values.ts';
import { scopesTold } from './scope.ts';

type Attachment = PayloadOf<typeof attachmentAdded>;

export interface Standing {
  /** When the stay began; null when that is not among the facts. */
  readonly began: EpochMs | null;
  readonly away: StayView['away'];
  readonly scope: StayView['scope'];
  readonly scopeFact: Fact | null;
  readonly usualWay: UsualWay | null;
  readonly usualWayFact: Fact | null;
  readonly weight: Stated<Weight> | null;
  /** In the order they were added. */
  readonly attachments: readonly { readonly fact: Fact; readonly of: Attachment }[];
  readonly wall: WallShowing;
  readonly conflicts: TrustView['conflicts'];
}

/** Facts up to the instant asked about, in order. */
export function standingOf(facts: readonly Fact[]): Standing {
  let began: EpochMs | null = null;
  let begunBy: EventId | null = null;
  let away: StayView['away'] = null;
  let usualWay: UsualWay | null = null;
  let usualWayFact: Fact | null = null;
  let weight: Stated<Weight> | null = null;
  let wall: WallShowing = 'as-ward';
  const attached = new Map<string, { fact: Fact; of: Attachment }>();
  const scopes = scopesTold(facts);
  const scopeFact = scopes.counted.at(-1) ?? null;
  const conflicts: TrustView['conflicts'] = [...scopes.conflicts];
  for (const fact of facts) {
    switch (fact.type) {
      case 'stay-begun':
        began = fact.occurred;
        begunBy = fact.id;
        break;
      case 'went-off-ward': {
        const p = fact.data as PayloadOf<typeof wentOffWard>;
        away = { since: fact.occurred, reason: p.reason, dueBack: p.dueBack ? toEpoch(p.dueBack) : null };
        break;
      }
      case 'came-back':
        away = null;
        break;
      case 'usual-way-recorded':
        usualWay = (fact.data as PayloadOf<typeof usualWayRecorded>).usual;
        usualWayFact = fact;
        break;
      case 'weight-recorded': {
        const before: Stated<Weight> | null = weight;
        weight = laterWeight(before, fact);
        if (weight === before && !isQualified(fact.author)) {
          conflicts.push({
            question: 'weight',
            safer: before?.fact ?? begunBy ?? fact.id,
            other: fact.id,
            words: `Weight read by someone who may not free: ${before ? 'the heavier one before it' : '"unknown"'} still counts until a nurse records it`,
          });
        }
        break;
      }
      case 'wall-showing-set':
        wall = (fact.data as PayloadOf<typeof wallShowingSet>).showing;
        break;
      case 'attachment-added': {
        const of = fact.data as Attachment;
        const there = attached.get(of.attachment);
        attached.set(of.attachment, { fact, of: there ? askingMost(there.of, of) : of });
        break;
      }
      case 'attachment-removed': {
        const p = fact.data as PayloadOf<typeof attachmentRemoved>;
        const there = attached.get(p.attachment);
        if (!there) break;
        if (isQualified(fact.author)) attached.delete(p.attachment);
        else {
          conflicts.push({
            question: `attachment: ${p.attachment}`,
            safer: there.fact.id,
            other: fact.id,
            words: `${there.of.kind.replaceAll('-', ' ')} said to be removed, by someone who may not free: still counted`,
          });
        }
        break;
      }
      default:
    }
  }
  return {
    began,
    away,
    scope: scopeOf(scopeFact?.data),
    scopeFact,
    usualWay,
    usualWayFact,
    weight,
    attachments: [...attached.values()],
    wall,
    conflicts,
  };
}

const scopeOf = (said?: PayloadOf<typeof scopeSet>): StayView['scope'] => ({
  kind: said?.scope ?? 'staged',
  fence: said?.scope === 'clinicians-plan' ? said.fence : null,
  plan: !said || said.scope === 'staged' ? null : (said.plan ?? null),
});

/** The entry of the arrival: what was never recorded was not recorded since. Null where it is not among the facts. */
export const arrivalOf = (facts: readonly Fact[]): EventId | null =>
  facts.find((f) => f.type === 'stay-begun')?.id ?? null;

/** The same attachment told twice: what asks for more of the two stands. */
function askingMost(a: Attachment, b: Attachment): Attachment {
  return {
    ...b,
    kind: ASKS_A_PERSON.has(a.kind) ? a.kind : b.kind,
    disconnects:
      DISCONNECTS.indexOf(a.disconnects) <= DISCONNECTS.indexOf(b.disconnects)
        ? a.disconnects
        : b.disconnects,
    needsOwnPerson: a.needsOwnPerson || b.needsOwnPerson,
  };
}
const ASKS_A_PERSON: ReadonlySet<Attachment['kind']> = new Set<Attachment['kind']>([
  'chest-drain',
  'oxygen-cylinder',
]);
const DISCONNECTS: readonly Attachment['disconnects'][] = ['nobody', 'nurse', 'anyone-trained'];

/**
 * The last weight of a qualified person counts. A lighter one may free, and so may a first one, since
 * an unknown weight asks for the most: by someone else they wait for a nurse, a heavier one counts at
 * once. Of two of the same instant the heavier stands.
 */
function laterWeight(last: Stated<Weight> | null, fact: Fact): Stated<Weight> | null {
  const { weight } = fact.data as PayloadOf<typeof weightRecorded>;
  const mayBeLess = isQualified(fact.author) && fact.occurred !== last?.at;
  const heavier = last !== null && weight.kg > last.value.kg;
  return mayBeLess || heavier ? { value: weight, fact: fact.id, at: fact.occurred } : last;
}

export const attachmentsForPlan = (standing: Standing): PlanInput['attachments'] =>
  standing.attachments.map(({ fact, of }) => ({
    value: { kind: of.kind, needsOwnPerson: of.needsOwnPerson, disconnects: of.disconnects },
    fact: fact.id,
    at: fact.occurred,
  }));
