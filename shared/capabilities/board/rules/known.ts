/**
 * What the facts of a stay say up to an instant, whatever that instant is: orders, triggers, tier,
 * where the person is. It changes only when a fact arrives or begins to count, so it is worked out
 * once for those facts and kept beside them.
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { earlyWarningRises } from '../../assessments/rules/early-warning.ts';
import { meaningsMet } from '../../assessments/rules/meanings-met.ts';
import {
  protocolInForce,
  protocolLookup,
  type Protocol,
  type ProtocolLookup,
} from '../../assessments/rules/protocol.ts';
import { judgeTier, tierWords, type TierInput, type TierJudgement } from '../../assessments/rules/tier.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Effective } from '../../corrections/rules/effective.ts';
import type { PlanInput, Stated } from '../../handling/rules/types.ts';
import { measuresOf } from '../../measures/rules/measures-of.ts';
import { orderGoneBeyond } from '../../orders/rules/beyond-orders.ts';
import { ordersInForce, type OrdersInForce } from '../../orders/rules/orders.ts';
import { isCheck, triggersOf, type Triggers } from '../../orders/rules/triggers.ts';
import type { TriggerKind } from '../../orders/values.ts';
import { firstTimeUpPending, type UpSoFar } from '../../sessions/rules/first-time-up.ts';
import { sessionsBeyondStop } from '../../sessions/rules/what-went-wrong.ts';
import { besidePlan, type BesidePlan } from '../../stays/rules/beside-plan.ts';
import { attachmentsForPlan, standingOf, type Standing } from '../../stays/rules/standing.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import { rulesOf } from '../../wards/rules/ward-state.ts';
import type { MeasuresView } from '../activity-view.ts';
import type { TrustView } from '../moving-view.ts';
import type { StayView } from '../view.ts';
import { Kept } from './kept.ts';
import { onOwnInForce, walkingSupportOf } from './on-own.ts';
import { lastRenewal, type Renewal } from './validity.ts';

export interface Known {
  readonly rules: RulesDocument;
  readonly protocols: ProtocolLookup;
  /** What a check would be done under now. */
  readonly protocol: Protocol;
  /** The facts that count by then, in order. */
  readonly facts: readonly Fact[];
  readonly standing: Standing;
  readonly besidePlan: BesidePlan;
  readonly orders: OrdersInForce;
  readonly triggers: Triggers;
  /** Sessions beyond a stop limit, by their entry, with the words. */
  readonly beyondStop: ReadonlyMap<EventId, string>;
  readonly tier: TierJudgement;
  readonly renewal: Renewal | null;
  readonly tierWords: () => ReadonlyMap<EventId, string>;
  readonly conflicts: TrustView['conflicts'];
  readonly sedatedAt: Stated<true> | null;
  readonly upSoFar: UpSoFar;
  readonly onOwn: PlanInput['onOwn'];
  readonly walkingSupport: PlanInput['walkingSupport'];
  readonly attachments: PlanInput['attachments'];
  readonly upInCheck: StayView['lastUp'];
  readonly measures: MeasuresView | null;
  /** Answers that depend on the instant too. */
  readonly kept: Kept;
}

interface Kinship {
  readonly count: number;
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly known: Known;
}

/** `note` is told when the next fact begins to count. */
export function knownAt(
  effective: Effective,
  ward: WardState,
  calendar: WardCalendar,
  t: EpochMs,
  note: (at: EpochMs) => void,
): Known {
  const all = effective.facts;
  let count = all.length;
  while (count > 0 && all[count - 1]!.occurred > t) count--;
  if (count < all.length) note(all[count]!.occurred);
  const last = effective.beside.kept as Kinship | null;
  if (last && last.count === count && last.ward === ward && last.calendar === calendar) return last.known;
  const facts = count === all.length ? all : all.slice(0, count);
  const known = workedOut(facts, effective, ward, calendar, t);
  const now: Kinship = { count, ward, calendar, known };
  effective.beside.kept = now;
  return known;
}

function workedOut(
  facts: readonly Fact[],
  effective: Effective,
  ward: WardState,
  calendar: WardCalendar,
  t: EpochMs,
): Known {
  const rules = rulesOf(ward);
  const protocols = protocolLookup(ward.protocols);
  const judged: TierInput = { facts, t, calendar, rules, protocols };
  const standing = standingOf(facts);
  const orders = ordersInForce(facts);
  const beyondStop = sessionsBeyondStop(facts, rules);
  const triggers = triggersOf(
    facts,
    effective.lookAgain,
    protocols,
    earlyWarningRises(facts, rules),
    beyondStop,
  );
  const tier = judgeTier(judged);
  const onOwn = onOwnInForce(facts, triggers, standing.scopeFact, tier.seen.foundLess);
  const support = walkingSupportOf(facts);
  let words: ReadonlyMap<EventId, string> | null = null;
  return {
    rules,
    protocols,
    protocol: protocolInForce(ward.protocols),
    facts,
    standing,
    besidePlan: besidePlan(facts),
    orders,
    triggers,
    beyondStop,
    tier,
    renewal: lastRenewal({ facts, tier, protocols, rules }),
    tierWords: () => (words ??= tierWords(judged)),
    conflicts: [
      ...conflictsOf(facts, effective, orders, standing, tier, protocols),
      ...onOwn.conflicts,
      ...support.conflicts,
    ],
    sedatedAt: lastOf(triggers, 'sedation'),
    upSoFar: firstTimeUpPending(facts, protocols, rules),
    onOwn: onOwn.stands,
    walkingSupport: support.stands,
    attachments: attachmentsForPlan(standing),
    upInCheck: upInCheck(facts, protocols),
    measures: measuresOf(facts, t, rules),
    kept: new Kept(),
  };
}

function conflictsOf(
  facts: readonly Fact[],
  effective: Effective,
  orders: OrdersInForce,
  standing: Standing,
  tier: TierJudgement,
  protocols: ProtocolLookup,
): TrustView['conflicts'] {
  const conflicts = [...tier.conflicts, ...orders.conflicts, ...standing.conflicts];
  if (effective.conflicts.length > 0) {
    const lastCheck = facts.findLast((f) => isCheck(f))?.occurred ?? -Infinity;
    for (const { at, ...conflict } of effective.conflicts) if (lastCheck <= at) conflicts.push(conflict);
  }
  const check = tier.assessment;
  if (check && isCheck(check)) {
    const before = facts.filter((f) => f.type === 'order-changed' && f.occurred <= check.occurred);
    const order = before.length > 0 ? orderGoneBeyond(check, ordersInForce(before).forPlan, protocols) : null;
    if (order && orders.list.some((o) => o.event === order)) {
      conflicts.push({
        question: 'order and check',
        safer: order,
        other: check.id,
        words: 'The check shows more than the order in force allowed: the order stands; tell both authors',
      });
    }
  }
  return conflicts;
}

function lastOf(triggers: Triggers, kind: TriggerKind): Stated<true> | null {
  const last = triggers.seen.findLast((x) => x.kind === kind);
  return last ? { value: true, fact: last.event, at: last.at } : null;
}

/** A staged check that reached the edge of the bed or more was being up, too. */
function upInCheck(facts: readonly Fact[], protocols: ProtocolLookup): StayView['lastUp'] {
  for (const fact of facts.toReversed()) {
    if (!isCheck(fact)) continue;
    const met = meaningsMet(fact.data, protocols);
    const activity = met.has('walk') ? 'walk' : met.has('turn') || met.has('stand') ? 'stand' : 'edge-sit';
    if (activity !== 'edge-sit' || met.has('edge')) return { at: fact.occurred, event: fact.id, activity };
  }
  return null;
}
