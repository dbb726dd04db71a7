/**
 * One append at a time per ward within this process. All appends of a ward queue on its head row
 * anyway; queueing here keeps them from holding a pooled connection each while they wait there, so
 * that one busy ward cannot starve the others, and every caller is served in order of arrival.
 * Other processes still meet at the row.
 */
export class WardGate {
  readonly #tails = new Map<string, Promise<void>>();

  /** Runs `work` once all earlier work on any of these wards is done. Places are taken at once, so never in a circle. */
  async through<T>(wards: readonly string[], work: () => Promise<T>): Promise<T> {
    const earlier = wards.map((ward) => this.#tails.get(ward));
    let leave!: () => void;
    const mine = new Promise<void>((resolve) => (leave = resolve));
    for (const ward of wards) this.#tails.set(ward, mine);
    try {
      for (const tail of earlier) if (tail) await tail;
      return await work();
    } finally {
      leave();
      for (const ward of wards) if (this.#tails.get(ward) === mine) this.#tails.delete(ward);
    }
  }
}
