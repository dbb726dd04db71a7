/**
 * Answers kept between two looks at a stay. A rule's answer holds from the instant it was asked at
 * until the first instant it noted, as long as the answers it was made from are the same objects.
 * Source: design, rule 7 (a view changes by time alone only at an instant that it names).
 */
import type { EpochMs } from '../../../kernel/times.ts';

type Note = (at: EpochMs) => void;
interface Answer {
  readonly value: unknown;
  readonly madeFrom: readonly unknown[];
  readonly from: EpochMs;
  readonly until: EpochMs;
}

export class Kept {
  private readonly answers = new Map<string, Answer>();

  /** `work` tells `note` each later instant at which its answer can change by time alone. */
  at<T>(name: string, t: EpochMs, note: Note, madeFrom: readonly unknown[], work: (note: Note) => T): T {
    const known = this.answers.get(name);
    if (known && t >= known.from && t < known.until && same(known.madeFrom, madeFrom)) {
      note(known.until);
      return known.value as T;
    }
    let until = Infinity;
    const value = work((at) => {
      if (at > t && at < until) until = at;
    });
    this.answers.set(name, { value, madeFrom, from: t, until });
    note(until);
    return value;
  }
}

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);
