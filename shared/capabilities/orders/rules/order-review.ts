/**
 * An order that keeps somebody in bed is looked at anew each ward day: given or renewed before this one
 * began, it is said to be not reviewed. It frees nobody. Source: users' research 3a, bed rest (daily);
 * that the ward day counts is common practice, no source.
 */
import type { Because } from '../../board/because.ts';
import type { StayView } from '../../board/view.ts';
import type { Period } from '../../wards/context.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';

/** The rule's id: the huddle finds what is to be reviewed by it. */
export const NOT_REVIEWED = 'order/not-reviewed';

export function bedNotReviewed(
  orders: StayView['orders'],
  today: Period,
  zone: string,
): { words: string; because: Because[] }[] {
  return orders
    .filter(({ order, at }) => order.about === 'activity' && order.most === 'bed' && at < today.from)
    .map(({ event, at }) => {
      const words = `Order to stay in bed since ${sayDayTime(zone, at)}: not reviewed today; ask whether it still applies`;
      return { words, because: [{ rule: NOT_REVIEWED, facts: [event], words }] };
    });
}
