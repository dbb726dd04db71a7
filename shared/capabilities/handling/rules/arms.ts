/**
 * What a person's arms are needed for on the feet, against what orders and findings leave of them.
 * A walking support that the arms may not load is no support: the fallback is forbidden, so the way
 * over the feet is another or a HOLD (design, rule 1). Common practice, no source.
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { WalkingSupport } from '../../assessments/values.ts';
import type { PlanInput } from './types.ts';

const ARMS_NEEDED: Readonly<Record<WalkingSupport, 0 | 1 | 2>> = {
  none: 0,
  stick: 1,
  'two-sticks': 2,
  crutches: 2,
  frame: 2,
  'wheeled-frame': 2,
};
const ARMS = ['left-arm', 'right-arm'] as const;

export interface ArmsLack {
  readonly words: string;
  readonly facts: readonly EventId[];
}

/** The walking support in use needs an arm that an order lets bear nothing; null when it does not. */
export function supportForbidden(input: PlanInput): ArmsLack | null {
  if (input.orders.weightBearing.size === 0) return null;
  const stopped = ARMS.filter((arm) => input.orders.weightBearing.get(arm)?.value.bears === 'none');
  if (stopped.length === 0) return null;
  const used = [input.walkingSupport?.value, input.seenWalking?.value];
  const support = used.find((s) => s && ARMS_NEEDED[s] > ARMS.length - stopped.length);
  if (!support) return null;
  return {
    words: `Order: ${stopped.map(plain).join(' and ')} bears nothing, and the ${plain(support)} needs it: ask`,
    facts: stopped.map((arm) => input.orders.weightBearing.get(arm)!.fact),
  };
}

/** A leg that bears in part needs arms on a walking support; null when an arm may and can push, or was not tested. */
export function noArmsForLimitedLeg(input: PlanInput): ArmsLack | null {
  const c = input.capability;
  const sternum = input.orders.precautions.get('sternum');
  if (c.bears !== 'partial' || (!sternum && c.armStrength !== 'none')) return null;
  return {
    words: 'A leg bears in part or not at all, and no arm may push or was seen to: ask',
    facts: [
      ...(sternum ? [sternum.fact] : []),
      ...c.because.filter((b) => b.rule === 'capability/arm-by-order').flatMap((b) => b.facts),
    ],
  };
}

/** Whichever of the two stands against going over the feet with a walking support alone. */
export const armsLack = (input: PlanInput): ArmsLack | null =>
  supportForbidden(input) ?? noArmsForLimitedLeg(input);

const plain = (code: string): string => code.replaceAll('-', ' ');
