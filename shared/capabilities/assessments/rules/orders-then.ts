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
  /** `wardSaturation`: the ward's own limit (%), which a first target by someone who may not free does not go below. */
  constructor(private readonly wardSaturation: number) {}

  oxygenTarget: { readonly low: number; readonly high: number } | null = null;
  /** Legs that may bear nothing. */
  readonly mayNotBear = new Set<Side>();
  /** Arms that may not push with all their strength. */
  readonly mayNotPush = new Set<Side>();
  /** By question, when what stands was ordered. */
  private readonly stoppedSince = new Map<string, EpochMs>();

  take(fact: Fact): void {
    const { order } = fact.data as PayloadOf<typeof orderChanged>;
    const mayFree = isQualified(fact.author);
    if (order.about === 'oxygen-target') {
      const stricter = order.low > (this.oxygenTarget?.low ?? this.wardSaturation);
      const sameTime = this.stoppedSince.get('oxygen-target') === fact.occurred;
      if (!stricter && (!mayFree || sameTime)) return;
      this.oxygenTarget = { low: order.low, high: Math.max(order.low, order.high) };
      this.stoppedSince.set('oxygen-target', fact.occurred);
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
