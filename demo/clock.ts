import type { Clock } from '@footboard/server/platform/clock';
import type { EpochMs } from '@footboard/shared/kernel/times';

/** The demo's ward clock: starts at an instant of October 2026 and runs at a chosen rate. */
export class DemoClock implements Clock {
  readonly startedReal: number;
  constructor(
    readonly startedAt: EpochMs,
    readonly rate: number,
    private readonly realNow: () => number = Date.now,
  ) {
    this.startedReal = realNow();
  }
  now(): EpochMs {
    return Math.round(this.startedAt + (this.realNow() - this.startedReal) * this.rate);
  }
  /** Real milliseconds until the ward clock reaches an instant; 0 when it has. */
  realMsUntil(at: EpochMs): number {
    return Math.max(0, (at - this.now()) / this.rate);
  }
}
