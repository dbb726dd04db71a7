/**
 * One simulated day, event by event: requests come, take what they need when it is free, and give it
 * back. First come, first served, no priorities: whoever waits for hands keeps others from taking
 * them; whoever waits for a lift lets others go who need none.
 */
import type { Candidate } from './arrivals.ts';
import { randomOf } from '../../../kernel/random.ts';
import { SLOT_MINUTES, type Scenario } from './scenario.ts';

/** What became of a request. */
export interface Request {
  readonly source: number;
  readonly asked: number;
  /** Minutes until it began. */
  readonly wait: number;
  readonly candidate: Candidate;
  /** What was missing last while it waited; null when it did not wait. */
  readonly short: 'item' | 'hands' | null;
  /** Place of the item it took. */
  readonly item: number | null;
}

interface Waiting {
  readonly candidate: Candidate;
  readonly asked: number;
  short: 'item' | 'hands' | null;
}
interface Leaving {
  readonly at: number;
  readonly item: number | null;
  readonly hands: number;
  readonly source: number | null;
}

/**
 * @returns every request of the day in the order in which it began
 */
export function runDay(
  scenario: Scenario,
  candidates: readonly Candidate[],
  seed: number,
  run: number,
): Request[] {
  const { items, sources, slots } = scenario;
  const free = items.map(({ sure, freeFrom }, i) => {
    const up = sure >= 1 || randomOf(seed, run, 500_000 + i).next() < sure;
    return up ? freeFrom : Infinity;
  });
  const taken = items.map(() => false);
  const open = sources.map(() => false);
  const later: Candidate[][] = sources.map(() => []);
  const waiting: Waiting[] = [];
  const leaving: Leaving[] = [];
  const done: Request[] = [];
  let used = 0;
  let next = 0;
  let tick = SLOT_MINUTES;

  const leave = (one: Leaving): void => {
    let i = leaving.length;
    while (i > 0 && leaving[i - 1]!.at < one.at) i--;
    leaving.splice(i, 0, one);
  };
  const slotAt = (t: number): number => Math.min(slots - 1, Math.floor(t / SLOT_MINUTES));
  const there = (i: number, t: number): boolean =>
    !taken[i] && free[i]! <= t && items[i]!.from <= t && t < items[i]!.to;

  const begin = (one: Waiting, item: number | null, t: number): void => {
    const { need, hold, source } = one.candidate;
    const is = item === null ? null : items[item]!;
    const atBed = hold * (is ? is.handMinutes : need.minutes);
    used += need.hands;
    leave({ at: t + atBed, item: null, hands: need.hands, source });
    if (is) {
      taken[item!] = true;
      leave({ at: t + hold * is.minutes, item, hands: 0, source: null });
    }
    done.push({
      source,
      asked: one.asked,
      wait: t - one.asked,
      candidate: one.candidate,
      short: one.short,
      item,
    });
  };

  const look = (t: number): void => {
    const slot = slotAt(t);
    let handsKept = false;
    for (let q = 0; q < waiting.length;) {
      const one = waiting[q]!;
      const { need } = one.candidate;
      const item = need.group === null ? null : (need.items.find((i) => there(i, t)) ?? -1);
      const enough =
        need.hands <= scenario.hands[slot]! - used || (used === 0 && need.hands <= scenario.on[slot]!);
      if (item === -1) one.short = 'item';
      else if (handsKept || !enough) {
        one.short = 'hands';
        handsKept = true;
      } else {
        waiting.splice(q, 1);
        begin(one, item, t);
        continue;
      }
      q++;
    }
  };
  const ask = (candidate: Candidate, t: number): void => {
    open[candidate.source] = true;
    waiting.push({ candidate, asked: t, short: null });
  };

  // An item that comes free, or is there, from a known minute on: a moment to look.
  for (const { freeFrom, from } of items)
    for (const at of [freeFrom, from]) if (at > 0) leave({ at, item: null, hands: 0, source: null });
  const end = slots * SLOT_MINUTES;
  for (;;) {
    const arrives = candidates[next]?.at ?? Infinity;
    const leaves = leaving.at(-1)?.at ?? Infinity;
    // More people may be on from a new slot.
    const looks = waiting.length > 0 && tick <= end + LONGEST ? tick : Infinity;
    const t = Math.min(arrives, leaves, looks);
    if (t === Infinity) break;
    if (t === leaves) {
      const { item, hands, source } = leaving.pop()!;
      used -= hands;
      if (item !== null) taken[item] = false;
      if (source !== null) {
        open[source] = false;
        const after = later[source]!.shift();
        if (after) ask(after, t);
      }
    } else if (t === arrives) {
      const candidate = candidates[next++]!;
      if (!open[candidate.source]) ask(candidate, t);
      else if (candidate.planned) later[candidate.source]!.push(candidate);
      else continue;
    }
    while (tick <= t) tick += SLOT_MINUTES;
    if (waiting.length > 0) look(t);
  }
  // Nobody could come until long after the end: late, and said as such.
  for (const { candidate, asked, short } of waiting)
    done.push({ source: candidate.source, asked, wait: Infinity, candidate, short, item: null });
  return done;
}
/** Requests of the last slots are followed for so long past the end (minutes). */
const LONGEST = 240;
