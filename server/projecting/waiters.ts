import type { Timers } from './timers.ts';

interface Waiter {
  readonly position: number;
  done(shown: boolean): void;
}

/** Commands that wait until the board has folded what they recorded. */
export class Waiters {
  readonly #timers: Timers;
  readonly #waiting = new Set<Waiter>();

  constructor(timers: Timers) {
    this.#timers = timers;
  }

  /** True once `reached` gets there, false after `withinMs`. */
  wait(position: number, withinMs: number): Promise<boolean> {
    return new Promise((resolve) => {
      const waiter: Waiter = {
        position,
        done: (shown) => {
          cancel();
          this.#waiting.delete(waiter);
          resolve(shown);
        },
      };
      const cancel = this.#timers.after(withinMs, () => waiter.done(false));
      this.#waiting.add(waiter);
    });
  }

  reached(position: number): void {
    for (const waiter of this.#waiting) if (waiter.position <= position) waiter.done(true);
  }

  giveUp(): void {
    for (const waiter of this.#waiting) waiter.done(false);
  }
}
