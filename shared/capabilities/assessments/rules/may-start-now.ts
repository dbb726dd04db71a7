/**
 * May we start, for the next session: the latest readings, what is in force and what was last seen
 * against the ward's limits. What was not taken, or too long ago, asks first: it is never taken as
 * normal. Orders, local policy and the clinician at the bedside come first.
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { HoldView, StartView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Capability, PlanInput } from '../../handling/rules/types.ts';
import type { Triggers } from '../../orders/rules/triggers.ts';
import { arrivalOf } from '../../stays/rules/standing.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { CountingInput, Found, StartWhy } from './counting.ts';
import { wordOf } from './may-start.ts';
import { OrdersThen } from './orders-then.ts';
import type { ProtocolLookup } from './protocol.ts';
import {
  attachmentReasons,
  cooperationReasons,
  cooperationTooOld,
  holdReasons,
  orderReasons,
  stageReasons,
  triggerReasons,
} from './start-in-force.ts';
import { afterSymptoms } from './start-after-symptoms.ts';
import { judgeCare, judgeScore } from './start-care.ts';
import { judgeSigns } from './start-signs.ts';
import type { TierJudgement } from './tier.ts';

export interface MayStartInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly rules: RulesDocument;
  readonly protocols: ProtocolLookup;
  readonly tier: TierJudgement;
  readonly triggers: Triggers;
  readonly capability: Capability;
  readonly holds: readonly HoldView[];
  readonly orders: PlanInput['orders'];
  readonly attachments: PlanInput['attachments'];
  /** Told each later instant at which the answer changes by time alone. */
  readonly note: (at: EpochMs) => void;
}

export interface MayStart {
  readonly view: StartView;
  /** What stops by what was taken of the person, not by a hold or an order. */
  readonly signs: readonly StartWhy[];
}

export function mayStartNow(input: MayStartInput): MayStart {
  const { facts, t, rules, note, tier, capability } = input;
  const clear = tier.seen.stages.get('clear');
  const clearedAt = clear?.outcome === 'met' ? clear.at : null;
  const found: Found = { reasons: [], notTaken: [], tooOld: [] };
  const counting: CountingInput = { facts, t, rules, clearedAt, note };
  judgeSigns({ ...counting, ...targetInForce(facts, rules) }, found);
  judgeScore(counting, found);
  judgeCare(counting, found);
  const notTaken = [...found.notTaken];
  const seenOf: Found = { reasons: [], notTaken: [], tooOld: [] };
  cooperationTooOld(counting, seenOf);
  const reasons = joinReasons([
    ...stageReasons(tier, input.protocols),
    ...afterSymptoms(input),
    ...triggerReasons(input.triggers, rules),
    ...holdReasons(input.holds),
    ...orderReasons(input.orders),
    ...found.reasons,
    ...cooperationReasons(capability, tier),
    ...seenOf.reasons,
    ...attachmentReasons(input.attachments),
    ...(notTaken.length > 0 ? [takeFirst(notTaken, found.tooOld, rules)] : []),
  ]);
  const { waitsForHelp, followsInstructions } = capability;
  if (waitsForHelp === 'not known' || followsInstructions === 'not known') {
    notTaken.push('waits for help, follows instructions');
  }
  notTaken.push(...seenOf.notTaken);
  const arrival = arrivalOf(facts);
  const signs = found.reasons.filter((r) => r.word === 'not-now');
  return {
    // What was never asked or taken was not since the arrival.
    view: {
      word: wordOf(reasons),
      reasons: reasons.map((r) => (r.facts.length > 0 || !arrival ? r : { ...r, facts: [arrival] })),
      notTaken,
    },
    signs,
  };
}

/** Of two views of one stay the stricter, with the reasons of both. */
export function joinStarts(a: StartView, b: StartView): StartView {
  const reasons = joinReasons([...a.reasons, ...b.reasons]);
  return { word: wordOf(reasons), reasons, notTaken: [...new Set([...a.notTaken, ...b.notTaken])] };
}

/** What stops before what asks; the same said twice is said once, with the facts of both. */
function joinReasons(reasons: readonly StartWhy[]): StartWhy[] {
  const once = new Map<string, StartWhy>();
  for (const reason of reasons) {
    const said = once.get(reason.words);
    const facts = said ? [...new Set([...said.facts, ...reason.facts])] : reason.facts;
    once.set(reason.words, { ...(said?.word === 'not-now' ? said : reason), facts });
  }
  const all = [...once.values()];
  return [...all.filter((r) => r.word === 'not-now'), ...all.filter((r) => r.word === 'ask-first')];
}

const takeFirst = (
  notTaken: readonly string[],
  facts: readonly EventId[],
  { start: { readingHours } }: RulesDocument,
): StartWhy => ({
  word: 'ask-first',
  words: `to take first: ${notTaken.join(', ')}`,
  limit: readingHours.value,
  source: readingHours.source,
  takenAt: null,
  facts: [...new Set(facts)],
});

/** The person's own oxygen target by the orders so far, and the order that gave it. */
function targetInForce(
  facts: readonly Fact[],
  rules: RulesDocument,
): {
  readonly oxygenTarget: OrdersThen['oxygenTarget'];
  readonly targetFact: EventId | null;
} {
  const orders = new OrdersThen(rules.start.saturationBelow.value);
  let targetFact: EventId | null = null;
  for (const fact of facts) {
    if (fact.type !== 'order-changed') continue;
    const before = orders.oxygenTarget;
    orders.take(fact);
    if (orders.oxygenTarget !== before && orders.oxygenTarget?.low !== before?.low) targetFact = fact.id;
  }
  return { oxygenTarget: orders.oxygenTarget, targetFact };
}
