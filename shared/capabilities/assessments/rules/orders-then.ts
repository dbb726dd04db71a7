import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { orderChanged } from '../../orders/events.ts';
import type { Side } from '../values.ts';

/**
 * The orders that a check is judged under, as they stood when it was done. From someone who may not
 * free, and of two of one instant, the stricter stands.
 */
export class OrdersThen {
  oxygenTarget: { readonly low: number; readonly high: number } | null = null;
  /** Legs that may bear nothing. */
  readonly mayNotBear = new Set<Side>();
  /** Arms that may not push with all their strength. */
  readonly mayNotPush = new Set<Side>();
  private readonly stoppedSince = new Map<string, EpochMs>();

  take(fact: Fact): void {
    const { order } = fact.data as PayloadOf<typeof orderChanged>;
    const mayFree = isQualified(fact.author);
    if (order.about === 'oxygen-target') {
      const low = this.oxygenTarget && !mayFree ? Math.max(order.low, this.oxygenTarget.low) : order.low;
      this.oxygenTarget = { low, high: Math.max(low, order.high) };
    }
    if (order.about === 'weight-bearing') {
      const side: Side = order.limb.startsWith('left') ? 'left' : 'right';
      const leg = order.limb.endsWith('-leg');
      const stopped = leg ? this.mayNotBear : this.mayNotPush;
      if (leg ? order.bears === 'none' : order.bears !== 'unrestricted') {
        stopped.add(side);
        this.stoppedSince.set(order.limb, fact.occurred);
      } else if (mayFree && this.stoppedSince.get(order.limb) !== fact.occurred) stopped.delete(side);
    }
  }
}
