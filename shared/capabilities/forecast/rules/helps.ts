/**
 * What would help, tried out: the same simulated days again with one thing changed. The same random
 * numbers on both sides, so that what differs is the change and not the luck.
 */
import { SLOT_MINUTES, type Need, type Scenario, type Source } from './scenario.ts';
import { lateADay } from './tally.ts';
import type { Change, Clash, ForecastInput, Help } from './types.ts';

/** Tried over so many days: enough to put them in order, since luck is the same on both sides. */
const TRIES = 200;
/** Of planned moves those in the tight stretch or so many slots before it are tried, up to so many. */
const NEAR = 4;
const MOST_MOVES = 6;
/** What spares fewer than so many late requests, or less than a twentieth of them, is not said. */
const LEAST = 0.2;

export function helpsOf(
  { scenario, belief, runs }: ForecastInput,
  clashes: readonly Clash[],
  changes: readonly Change[],
): Help[] {
  const few = { ...runs, runs: Math.min(TRIES, runs.runs) };
  const before = lateADay(scenario, belief, few);
  let moves = 0;
  const tried = changes.flatMap((change): Help[] => {
    const worst = worstFor(change, clashes);
    if (!worst) return [];
    if (change.kind === 'move-session') {
      const { at } = scenario.sources[change.source]!.due[change.due]!;
      if (at < (worst.from - NEAR) * SLOT_MINUTES || at >= worst.to * SLOT_MINUTES) return [];
      if (++moves > MOST_MOVES) return [];
    }
    const after = lateADay(changed(scenario, change, worst), belief, few);
    return [{ change, from: worst.from, to: worst.to, before, after }];
  });
  const helping = tried
    .filter(({ after }) => before - after >= Math.max(LEAST, before / 20))
    .toSorted((a, b) => a.after - b.after);
  // Of several sessions to move, of several swaps, of several things to borrow: the best.
  const seen = new Set<string>();
  return helping.filter(({ change: { kind } }) => !seen.has(kind) && seen.add(kind));
}

/** The stretch a change is made for: equipment where that is short, hands where they are, else the worst of all. */
function worstFor(change: Change, clashes: readonly Clash[]): Clash | null {
  const asked = clashes.filter(({ group, short }) =>
    change.kind === 'borrow'
      ? group === change.item.group && short === 'item'
      : change.kind !== 'pair-of-aides' || short === 'hands',
  );
  return asked.reduce<Clash | null>((a, b) => (a === null || b.lateADay > a.lateADay ? b : a), null);
}

/** @param tight the stretch that the change is made for */
export function changed(
  scenario: Scenario,
  change: Change,
  tight: { readonly from: number; readonly to: number },
): Scenario {
  switch (change.kind) {
    case 'borrow': {
      const place = scenario.items.length;
      const to = tight.to * SLOT_MINUTES;
      const more = (need: Need): Need =>
        need.group === change.item.group && need.items.length > 0
          ? { ...need, items: [...need.items, place] }
          : need;
      return {
        ...scenario,
        items: [...scenario.items, { ...change.item, to: Math.max(to, change.item.to) }],
        sources: scenario.sources.map((source) => withNeeds(source, more)),
      };
    }
    case 'swap-to-track':
      return {
        ...scenario,
        sources: scenario.sources.map((source, i) => (i === change.source ? change.becomes : source)),
      };
    case 'pair-of-aides':
      return {
        ...scenario,
        hands: scenario.hands.map((n, slot) =>
          slot >= tight.from && slot < tight.to ? Math.min(n + change.hands, scenario.on[slot]!) : n,
        ),
      };
    case 'move-session':
      return {
        ...scenario,
        sources: scenario.sources.map((source, i) =>
          i === change.source
            ? {
                ...source,
                due: source.due.map((due, j) =>
                  j === change.due ? { ...due, at: due.at + change.by } : due,
                ),
              }
            : source,
        ),
      };
  }
}

export function withNeeds(source: Source, as: (need: Need) => Need): Source {
  const { day, night } = source.care;
  return {
    ...source,
    care: { day: day && as(day), night: night && as(night) },
    due: source.due.map((due) => ({
      ...due,
      need: as(due.need),
      follows: due.follows && { ...due.follows, need: as(due.follows.need) },
    })),
  };
}
