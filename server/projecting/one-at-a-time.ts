/** Runs what it is given one after another; what failed holds nobody up. */
export class OneAtATime {
  #last: Promise<void> = Promise.resolve();

  run<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#last.then(work);
    this.#last = done.then(
      () => {},
      () => {},
    );
    return done;
  }
  /** Fulfilled once all that was given so far has ended. */
  get settled(): Promise<void> {
    return this.#last;
  }
}
