/** What must be so before a measure is taken: it must never be the reason for an unsafe walk or rise. */
import type { StayView } from '../../board/view.ts';
import { isCleared, isHeld, isOrdered } from '../../sessions/rules/activities.ts';
import type { Measure } from '../values.ts';

export const measureNeeds = (kind: Measure['kind']): 'walk' | 'stand' =>
  kind === 'chair-stands' || kind === 'five-rises' ? 'stand' : 'walk';

const plain = (code: string): string => code.replaceAll('-', ' ');

/**
 * Why a measure is not to be taken, in words; null when nothing stops it. The stage it needs is
 * cleared, no hold, no order and no plan on HOLD stops it. Source: design, goals ("never an activity
 * whose stage is not cleared") and trust.
 * @param cleared keys of the cleared stages; null when they are not known here, and the server judges
 */
export function stopsMeasure(
  kind: Measure['kind'],
  cleared: ReadonlySet<string> | null,
  {
    tier,
    holds,
    orders,
    plan,
    checkBeforeMoving,
  }: Pick<StayView, 'tier' | 'holds' | 'orders' | 'plan' | 'checkBeforeMoving'>,
): string | null {
  const needs = measureNeeds(kind);
  const doing = needs === 'walk' ? 'walking' : 'standing';
  if (cleared && !isCleared(needs, cleared)) {
    return `${doing} is not cleared; the tier is ${tier.word ?? 'none: the staged check does not apply'}`;
  }
  const hold = holds.find((h) => isHeld(needs, h.scope));
  if (hold) return `a hold stops ${doing}: ${plain(hold.reason)}`;
  for (const { order } of orders) {
    if (order.about === 'activity' && !isOrdered(needs, order.most)) {
      return `the order allows activity up to ${plain(order.most)}, not ${doing}`;
    }
  }
  const bearsNone = orders.some(
    ({ order }) => order.about === 'weight-bearing' && order.limb.endsWith('leg') && order.bears === 'none',
  );
  if (needs === 'stand' && bearsNone) {
    return 'the order lets a leg bear nothing: rises from a chair say nothing then';
  }
  if (checkBeforeMoving) return 'how this person moves now is not known';
  if (plan?.day.some((p) => p.task === needs && p.hold)) return `the plan says HOLD for ${doing}`;
  return null;
}
