import type { EpochMs } from '@footboard/shared/kernel/times';

/** The server's clock. Real time runs at rate 1; the demo shifts and may speed it up. */
export interface Clock {
  now(): EpochMs;
  readonly rate: number;
}
export const CLOCK = Symbol('Clock');
export const systemClock: Clock = { now: () => Date.now(), rate: 1 };
