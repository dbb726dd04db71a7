/** When a ward's runner wakes by itself: at the next instant its view can change, and after a failed pass. */
import { MINUTE, SECOND } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Clock } from '../platform/clock.ts';
import type { Timers } from './timers.ts';

const REARM_AT_LEAST = MINUTE;
const LONGEST_PAUSE = 8 * SECOND;
/** A view that claims to change at once must not keep the machine busy. */
const SHORTEST_WAIT = 20;
const nothing = () => {};

export class RunnerAlarms {
  readonly #clock: Clock;
  readonly #timers: Timers;
  #failures = 0;
  #cancelNext: () => void = nothing;
  #cancelRetry: () => void = nothing;

  constructor({ clock, timers }: { readonly clock: Clock; readonly timers: Timers }) {
    this.#clock = clock;
    this.#timers = timers;
  }

  /** The one scheduler of the ward, at the clock's own rate; a new instant takes the place of the one before. */
  arm(nextChange: EpochMs | null, wake: () => void): void {
    this.#cancelNext();
    const left = nextChange === null ? REARM_AT_LEAST : (nextChange - this.#clock.now()) / this.#clock.rate;
    const wait = Math.min(Math.max(Math.ceil(left), SHORTEST_WAIT), REARM_AT_LEAST);
    this.#cancelNext = this.#timers.after(wait, wake);
  }

  /** After each failure in a row twice as long as before. */
  again(retry: () => void): void {
    const pause = Math.min(SECOND * 2 ** this.#failures, LONGEST_PAUSE);
    this.#failures++;
    this.#cancelRetry();
    this.#cancelRetry = this.#timers.after(pause, retry);
  }
  succeeded(): void {
    this.#failures = 0;
  }

  /** Wakes nobody by a next change any more; a retry that waits stays. */
  disarm(): void {
    this.#cancelNext();
  }
  off(): void {
    this.#cancelNext();
    this.#cancelRetry();
  }
}
