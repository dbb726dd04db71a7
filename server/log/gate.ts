/**
 * A few appends at a time per ward within this process. All appends of a ward queue on its head row
 * anyway; queueing here keeps them from holding a pooled connection each while they wait there, so
 * that one busy ward cannot starve the others, and callers are let in in order of arrival. More than
 * one, because the next is sent, parsed and has its outcome written while the first is being flushed;
 * half the pool, so that other wards and readers always find a connection. Other processes still
 * meet at the row.
 */
export class WardGate {
  readonly #width: number;
  /** Per ward, those inside first, then those waiting, in order of arrival. */
  readonly #queues = new Map<string, Visit[]>();

  /** @param width how many may be inside for one ward. */
  constructor(width = 4) {
    this.#width = width;
  }

  /** Runs `work` once it is let in to all of these wards. Places are taken in all at once, so nobody waits in a circle. */
  async through<T>(wards: readonly string[], work: () => Promise<T>): Promise<T> {
    const visit: Visit = { wards, enter: () => undefined, entered: false };
    const turn = new Promise<void>((resolve) => (visit.enter = resolve));
    for (const ward of wards) {
      const queue = this.#queues.get(ward);
      if (queue) queue.push(visit);
      else this.#queues.set(ward, [visit]);
    }
    this.#letIn(visit);
    await turn;
    try {
      return await work();
    } finally {
      this.#leave(visit);
    }
  }

  #letIn(visit: Visit): void {
    if (visit.entered) return;
    const first = visit.wards.every((ward) => this.#queues.get(ward)!.indexOf(visit) < this.#width);
    if (!first) return;
    visit.entered = true;
    visit.enter();
  }

  #leave(visit: Visit): void {
    for (const ward of visit.wards) {
      const queue = this.#queues.get(ward)!;
      queue.splice(queue.indexOf(visit), 1);
      if (queue.length === 0) this.#queues.delete(ward);
    }
    for (const ward of visit.wards) {
      for (const next of this.#queues.get(ward)?.slice(0, this.#width) ?? []) this.#letIn(next);
    }
  }
}

interface Visit {
  readonly wards: readonly string[];
  enter(): void;
  entered: boolean;
}
