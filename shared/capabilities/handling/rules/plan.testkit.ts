/** Plan inputs for tests, from assessments of an invented person. */
import { assessment, hours, tierInput, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import { judgeTier } from '../../assessments/rules/tier.ts';
import type { HoldView, TrustView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { HoldScope, Limb, Order, Precaution, TriggerKind, WeightBearing } from '../../orders/values.ts';
import type { Weight } from '../../stays/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Task } from '../values.ts';
import { capabilityOf } from './capability.ts';
import { planStay } from './plan.ts';
import type { PlanInput, Stated } from './types.ts';

export const stated = <T>(value: T, at = 0, fact = 'f1'): Stated<T> => ({
  value,
  fact: fact as never,
  at: hours(at),
});

export const hold = (scope: HoldScope, reviewDue = false): HoldView => ({
  hold: `h-${scope}`,
  scope,
  reason: 'unstable',
  owner: 'staff-nurse' as never,
  placedAt: hours(0),
  reviewAt: hours(1),
  reviewDue,
  event: `e-${scope}` as never,
  note: null,
});
export const trigger = (kind: TriggerKind, at = 0): TrustView['openTriggers'][number] => ({
  event: `t-${kind}` as never,
  kind,
  at: hours(at),
  words: kind,
});
export const trust = (state: TrustView['state'], ...openTriggers: TrustView['openTriggers']): TrustView => ({
  state,
  openTriggers,
  conflicts: [],
  because: [],
});
export const noOrders: PlanInput['orders'] = {
  activity: null,
  weightBearing: new Map(),
  precautions: new Map(),
  brace: null,
};
export const limbOrder = (order: Extract<Order, { about: 'weight-bearing' }>): PlanInput['orders'] => ({
  ...noOrders,
  weightBearing: new Map([[order.limb, stated(order)]]),
});

/** A measured 70 kg, nothing else in force, one hour after the morning. */
export function planInput(facts: readonly Fact[], extra: Partial<PlanInput> = {}, at = 1): PlanInput {
  const input = { ...tierInput(facts, at), rules: extra.rules ?? DEFAULT_RULES };
  const tier = judgeTier(input);
  const orders = extra.orders ?? noOrders;
  const weight = extra.weight === undefined ? stated({ kg: 70, how: 'measured' as const }) : extra.weight;
  return {
    t: input.t,
    arrival: null,
    rules: input.rules,
    tier: tier.view,
    capability: capabilityOf({ ...input, tier, orders, weight }),
    trust: trust(tier.assessment ? 'current' : 'not-known'),
    holds: [],
    attachments: [],
    onOwn: null,
    seenWalking: null,
    walkingSupport: null,
    pressureDrop: tier.pressureDrop,
    firstTimeUpPending: null,
    sedatedAt: null,
    everWalkedHere: tier.everWalked,
    fence: null,
    spineOrPelvisInDoubt: null,
    ...extra,
    orders,
    weight,
  };
}

export const dayPlan = (input: PlanInput, task: Task) => planStay(input).day.find((p) => p.task === task)!;
export const nightPlan = (input: PlanInput, task: Task) =>
  planStay(input).night.find((p) => p.task === task)!;

/** Invented people and what was seen of them. */
export const walker = [assessment(upTo('walk'))];
export const seenTo = (last: string, says: Record<string, StageSays> = {}) => [assessment(upTo(last, says))];
export const help = (input: PlanInput, task: Task) => {
  const { hold: held, people, aid } = dayPlan(input, task);
  return [held ? 'hold' : 'go', people, aid];
};
export const weight = (kg: number, how: Weight['how'] = 'measured') => ({ weight: stated({ kg, how }) });
export const uncooperative = (which: 'waits' | 'follows', last = 'walk') => [
  assessment(
    upTo(last),
    {},
    {
      cooperation: {
        waitsForHelp: which === 'waits' ? 'no' : 'yes',
        followsInstructions: which === 'follows' ? 'no' : 'yes',
      },
    },
  ),
];
export const leftLeg = (bears: 'none' | 'limited') =>
  limbOrder({ about: 'weight-bearing', limb: 'left-leg', bears });
export const withHeldStand: Record<string, StageSays> = {
  stand: { how: 'secured', securedWith: 'standing-aid', people: 2 },
};

export type Bears = Partial<Record<Limb, WeightBearing>>;
/** Orders per limb, and precautions; each by its own invented order. */
export const limbs = (bears: Bears, precautions: Precaution[] = []): PlanInput['orders'] => ({
  ...noOrders,
  weightBearing: new Map(
    Object.entries(bears).map(([which, b]) => [
      which as Limb,
      stated({ about: 'weight-bearing' as const, limb: which as Limb, bears: b }, 0, `o-${which}`),
    ]),
  ),
  precautions: new Map(precautions.map((p) => [p, stated(true as const, 0, `o-${p}`)])),
});
