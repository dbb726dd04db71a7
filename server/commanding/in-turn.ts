/**
 * Work on one thing, one piece after another; work on different things does not wait. Here it keeps
 * entries for one stay from racing each other within this process: the log's unique key would settle
 * the race, at the price of deciding again. Between processes only the log decides.
 */
export class InTurn {
  readonly #last = new Map<string, Promise<unknown>>();

  async run<T>(thing: string, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(thing);
    // However the one before ended, it is this one's turn.
    const mine = before ? before.then(work, work) : work();
    this.#last.set(thing, mine);
    try {
      return await mine;
    } finally {
      if (this.#last.get(thing) === mine) this.#last.delete(thing);
    }
  }
}
