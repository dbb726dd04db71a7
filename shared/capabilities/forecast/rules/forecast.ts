/**
 * The forecast itself: a pure function of what was put in, run in a worker thread. Demand against
 * supply by quarter hour, the chance that a request waits too long, who would wait, and what would
 * help. A picture of what is likely, not an order of who comes first.
 */
import { helpsOf } from './helps.ts';
import { GROUPS, type Group } from './scenario.ts';
import { tallyOf, type Tally } from './tally.ts';
import type { Chance, Clash, Forecast, ForecastInput, SlotOfGroup, Waits } from './types.ts';

/** Below so many simulated requests a share says nothing. */
const LEAST_ASKED = 40;
/** A stretch with fewer late requests in it a day is not worth saying. */
const LEAST_LATE = 0.25;
/** A slot without a clash between two with one does not part them. */
const GAP = 2;

export function forecastOf(input: ForecastInput): Forecast {
  const { scenario, belief, runs, sayFrom, changes } = input;
  const tally = tallyOf(scenario, belief, runs);
  const groups = Object.fromEntries(
    GROUPS.map((group) => [
      group,
      Array.from({ length: scenario.slots }, (_, slot) => slotOf(tally, group, slot)),
    ]),
  ) as Record<Group, SlotOfGroup[]>;
  const clashes = GROUPS.flatMap((group) => clashesOf(tally, group, groups[group], sayFrom)).toSorted(
    (a, b) => a.from - b.from || b.lateADay - a.lateADay,
  );
  return {
    groups,
    clashes,
    waits: waitsOf(tally, sayFrom),
    helps: clashes.length === 0 ? [] : helpsOf(input, clashes, changes),
    askedADay: tally.askedADay,
    lateADay: tally.lateADay,
  };
}

const sum = (values: readonly number[] | Float64Array): number => {
  let total = 0;
  for (const value of values) total += value;
  return total;
};

/** The share over slots [from, to), and its range over the blocks of rates. */
function chanceOf(tally: Tally, group: Group, from: number, to: number): Chance | null {
  const over = (block: Float64Array): number => {
    let total = 0;
    for (let slot = from; slot < to; slot++) total += block[slot]!;
    return total;
  };
  const asked = tally.asked[group].map(over);
  const late = tally.late[group].map(over);
  const all = sum(asked);
  if (all < LEAST_ASKED) return null;
  const shares = late.flatMap((n, b) => (asked[b]! > 0 ? [n / asked[b]!] : [])).toSorted((a, b) => a - b);
  const chance = sum(late) / all;
  const at = (part: number): number => shares[Math.round(part * (shares.length - 1))]!;
  return { chance, low: Math.min(chance, at(0.05)), high: Math.max(chance, at(0.95)) };
}

function slotOf(tally: Tally, group: Group, slot: number): SlotOfGroup {
  const counts = tally.wanted[group][slot]!;
  let mean = 0;
  let above = 0;
  let tenth = 0;
  for (let n = counts.length - 1; n >= 0; n--) {
    mean += (n * counts[n]!) / tally.runs;
    above += counts[n]!;
    if (tenth === 0 && above >= tally.runs / 10) tenth = n;
  }
  return {
    wanted: mean,
    wantedTenth: tenth,
    asked: sum(tally.asked[group].map((block) => block[slot]!)) / tally.runs,
    late: chanceOf(tally, group, slot, slot + 1),
  };
}

function clashesOf(tally: Tally, group: Group, slots: readonly SlotOfGroup[], sayFrom: number): Clash[] {
  const found: { from: number; to: number }[] = [];
  slots.forEach(({ late }, slot) => {
    if (late === null || late.chance < sayFrom) return;
    const last = found.at(-1);
    if (last && slot - last.to <= GAP) last.to = slot + 1;
    else found.push({ from: slot, to: slot + 1 });
  });
  return found.flatMap(({ from, to }) => {
    const chance = chanceOf(tally, group, from, to);
    if (chance === null || chance.chance < sayFrom) return [];
    const late = sum(tally.late[group].map((block) => sum(block.slice(from, to))));
    if (late < LEAST_LATE * tally.runs) return [];
    const noHands = sum(tally.noHands[group].slice(from, to));
    return [
      {
        group,
        from,
        to,
        ...chance,
        short: noHands * 2 > late ? 'hands' : 'item',
        lateADay: late / tally.runs,
      },
    ];
  });
}

function waitsOf(tally: Tally, sayFrom: number): Waits[] {
  return tally.lateAt
    .flatMap((bySlot, source): Waits[] => {
      const chance = tally.lateRuns[source]! / tally.runs;
      if (chance < sayFrom) return [];
      // The half hour in which it is most likely, so that two even slots do not hide each other.
      let best = 0;
      const of = (slot: number) => bySlot[slot]! + (bySlot[slot + 1] ?? 0);
      bySlot.forEach((_, slot) => {
        if (of(slot) > of(best)) best = slot;
      });
      return [{ source, chance, slot: best }];
    })
    .toSorted((a, b) => b.chance - a.chance || a.source - b.source);
}
