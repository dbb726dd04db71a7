import type { Clock } from '@footboard/server/platform/clock';
import type { EpochMs } from '@footboard/shared/kernel/times';

/** The demo's ward clock: set once, when the database says where the play stands; runs at a chosen rate. */
export class DemoClock implements Clock {
  private from: EpochMs | null = null;
  private setAt = 0;
  constructor(
    readonly rate: number,
    private readonly realNow: () => number = Date.now,
  ) {}
  set(from: EpochMs): void {
    this.from = from;
    this.setAt = this.realNow();
  }
  /** Where it was set. */
  get startedAt(): EpochMs {
    if (this.from === null) throw new Error('the demo clock is not set yet');
    return this.from;
  }
  now(): EpochMs {
    return Math.round(this.startedAt + (this.realNow() - this.setAt) * this.rate);
  }
  /** Real milliseconds until the ward clock reaches an instant; 0 when it has. */
  realMsUntil(at: EpochMs): number {
    return Math.max(0, (at - this.now()) / this.rate);
  }
}
