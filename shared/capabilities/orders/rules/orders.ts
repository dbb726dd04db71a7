/**
 * Orders in force: per question the last one counts, by when it was given. Two of the same instant
 * that differ: the stricter stands and both are shown. From someone who may not free, an order
 * counts only where it is stricter than what is in force (design rule 2).
 */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { TrustView } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { PlanInput, Stated } from '../../handling/rules/types.ts';
import type { orderChanged } from '../events.ts';
import type { Limb, Order, Precaution } from '../values.ts';

export interface OrdersInForce {
  readonly forPlan: PlanInput['orders'];
  /** As shown: what limits now, in a fixed order of questions. */
  readonly list: StayView['orders'];
  readonly conflicts: TrustView['conflicts'];
}
type OrderFact = Fact<PayloadOf<typeof orderChanged>>;

const ACTIVITY = ['no-limit', 'walk', 'stand', 'chair', 'edge-of-bed', 'bed'] as const;
const BEARING = ['unrestricted', 'limited', 'none'] as const;

/** How strict an order is within its own question; 0 asks for nothing. */
function strictness(order: Order): number {
  switch (order.about) {
    case 'activity':
      return ACTIVITY.indexOf(order.most);
    case 'weight-bearing':
      return BEARING.indexOf(order.bears);
    case 'precaution':
    case 'brace':
      return order.on ? 1 : 0;
    case 'oxygen-target':
      return order.low;
  }
}

/**
 * Two orders that limit the same limb, held against each other by the prescriber's number. A number
 * is stricter than none; a percentage and a weight cannot be compared: neither may pass for stricter.
 */
function asToTheNumber(last: Order, next: Order): 'stricter' | 'same' | 'freer' {
  if (last.about !== 'weight-bearing' || next.about !== 'weight-bearing') return 'same';
  if (last.bears !== 'limited' || next.bears !== 'limited') return 'same';
  const before = last.limit;
  const after = next.limit;
  if (!before) return after ? 'stricter' : 'same';
  if (!after) return 'freer';
  const more =
    'kg' in before && 'kg' in after
      ? after.kg - before.kg
      : 'percent' in before && 'percent' in after
        ? after.percent - before.percent
        : Infinity;
  return more > 0 ? 'freer' : more < 0 ? 'stricter' : 'same';
}

/** Whether an order limits anything. An oxygen target says what is enough, not what may be done. */
export const limits = (order: Order): boolean => order.about !== 'oxygen-target' && strictness(order) > 0;

/** What an order answers; a later one replaces an earlier one on the same question only. */
export const questionOf = (order: Order): string => {
  if (order.about === 'weight-bearing') return `weight-bearing ${order.limb}`;
  return order.about === 'precaution' ? `precaution ${order.precaution}` : order.about;
};

export function ordersInForce(facts: readonly Fact[]): OrdersInForce {
  const current = new Map<string, OrderFact>();
  const conflicts = new Map<string, TrustView['conflicts'][number]>();
  for (const fact of facts) {
    if (fact.type !== 'order-changed') continue;
    const next = fact as OrderFact;
    const question = questionOf(next.data.order);
    const last = current.get(question);
    const before = last ? strictness(last.data.order) : unordered(next.data.order);
    const after = strictness(next.data.order);
    const number = last ? asToTheNumber(last.data.order, next.data.order) : 'same';
    const stricter = after > before || (after === before && number !== 'freer');
    const differ = before !== after || number !== 'same';
    const sameTime = last?.occurred === next.occurred && differ;
    if (last && !stricter && sameTime) {
      conflicts.set(question, disagree(question, last, next, SAME_TIME));
    } else if (!stricter && !isQualified(next.author)) {
      if (last) conflicts.set(question, disagree(question, last, next, MAY_NOT_FREE));
    } else {
      current.set(question, next);
      conflicts.delete(question);
      if (last && sameTime) conflicts.set(question, disagree(question, next, last, SAME_TIME));
    }
  }
  return { forPlan: forPlan(current), list: shown(current), conflicts: [...conflicts.values()] };
}

/** With no order the ward's own saturation limit applies: a first target may lie below it, so it may free. */
const unordered = (order: Order): number => (order.about === 'oxygen-target' ? Infinity : 0);

const SAME_TIME = 'two orders of the same time differ';
const MAY_NOT_FREE = 'a freer order by someone who may not free';
const disagree = (question: string, safer: Fact, other: Fact, why: string) => ({
  question: `order: ${question}`,
  safer: safer.id,
  other: other.id,
  words: `Order (${question.replaceAll('-', ' ')}): ${why}; the stricter stands`,
});

function forPlan(current: ReadonlyMap<string, OrderFact>): PlanInput['orders'] {
  let activity: PlanInput['orders']['activity'] = null;
  let brace: Stated<true> | null = null;
  const weightBearing = new Map<Limb, Stated<Extract<Order, { about: 'weight-bearing' }>>>();
  const precautions = new Map<Precaution, Stated<true>>();
  for (const fact of current.values()) {
    const { order } = fact.data;
    const stands = { fact: fact.id, at: fact.occurred };
    if (order.about === 'activity') activity = { value: order.most, ...stands };
    else if (order.about === 'weight-bearing') weightBearing.set(order.limb, { value: order, ...stands });
    else if (order.about === 'precaution' && order.on) {
      precautions.set(order.precaution, { value: true, ...stands });
    } else if (order.about === 'brace' && order.on) brace = { value: true, ...stands };
  }
  return { activity, weightBearing, precautions, brace };
}

function shown(current: ReadonlyMap<string, OrderFact>): StayView['orders'] {
  return [...current.entries()]
    .filter(([, { data }]) => !('on' in data.order) || data.order.on)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([, fact]) => ({ event: fact.id, order: fact.data.order, at: fact.occurred }));
}
