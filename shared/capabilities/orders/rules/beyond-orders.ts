import type { assessmentRecorded } from '../../assessments/events.ts';
import { meaningsMet } from '../../assessments/rules/meanings-met.ts';
import type { ProtocolLookup } from '../../assessments/rules/protocol.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { PlanInput } from '../../handling/rules/types.ts';

/** The least activity an order must allow for a stage of this meaning. */
const ASKS = {
  edge: ['edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'],
  stand: ['stand', 'walk', 'no-limit'],
  turn: ['chair', 'stand', 'walk', 'no-limit'],
  walk: ['walk', 'no-limit'],
} as const;

/**
 * The order that a check goes beyond, by showing the person doing what it did not allow at that
 * time: the two disagree, the order stands, and the check does not answer it. Null when it does not.
 */
export function orderGoneBeyond(
  check: Fact<PayloadOf<typeof assessmentRecorded>>,
  orders: PlanInput['orders'],
  protocols: ProtocolLookup,
): EventId | null {
  const met = meaningsMet(check.data, protocols);
  const { activity } = orders;
  if (activity) {
    for (const meaning of ['edge', 'stand', 'turn', 'walk'] as const) {
      const allowed: readonly string[] = ASKS[meaning];
      if (met.has(meaning) && !allowed.includes(activity.value)) return activity.fact;
    }
  }
  if (!met.has('stand') && !met.has('turn') && !met.has('walk')) return null;
  const onLeg = check.data.stages.find((s) => s.outcome === 'met' && s.oneLeg)?.oneLeg;
  for (const side of ['left', 'right'] as const) {
    const order = orders.weightBearing.get(`${side}-leg`);
    if (order?.value.bears === 'none' && onLeg !== (side === 'left' ? 'right' : 'left')) return order.fact;
  }
  return null;
}
