/** Since when something has been so without a break, as far back as what was recorded says. Pure. */
import type { EpochMs } from '../../../kernel/times.ts';

export interface HeldAt {
  readonly holds: boolean;
  /** The answer is the same from the instant asked about until this one; null for ever. */
  readonly next: EpochMs | null;
}

/**
 * The instant from which it has held up to `now`; null where it does not hold now.
 *
 * @param instants when something was recorded that can change the answer, in any order
 * @param at the answer at an instant, from what had occurred by then
 */
export function heldSince(
  now: EpochMs,
  instants: Iterable<EpochMs>,
  at: (t: EpochMs) => HeldAt,
): EpochMs | null {
  const starts = [...new Set([...instants].filter((t) => t <= now))].toSorted((a, b) => b - a);
  let since: EpochMs | null = null;
  let until = now;
  for (const start of starts.length > 0 ? starts : [now]) {
    const from = heldToTheEnd(start, until, at);
    if (from === null) break;
    since = from;
    // It began within the spell, by time alone.
    if (from > start) break;
    until = start - 1;
  }
  return since;
}

/** From when it held within [start, until] up to its end; null where it does not at the end. */
function heldToTheEnd(start: EpochMs, until: EpochMs, at: (t: EpochMs) => HeldAt): EpochMs | null {
  let from: EpochMs | null = null;
  for (let t = start; ;) {
    const { holds, next } = at(t);
    from = holds ? (from ?? t) : null;
    if (next === null || next > until || next <= t) return from;
    t = next;
  }
}
