/** Counts over many simulated days: who asked, who waited too long, and what was missing. */
import { candidatesOf } from './arrivals.ts';
import { runDay, type Request } from './day-run.ts';
import { gamma, randomOf } from '../../../kernel/random.ts';
import { drawRates, type Posterior } from './rates.ts';
import { GROUPS, SLOT_MINUTES, type Group, type Rates, type Scenario } from './scenario.ts';
import { asksForHands, wantedOf } from './wanted.ts';

export interface Runs {
  readonly seed: number;
  readonly runs: number;
  /** Sets of rates drawn from what the record leaves open; runs are shared out evenly. */
  readonly blocks: number;
}
export interface Belief {
  readonly posteriors: readonly Posterior[];
  /** How much days differ beyond chance (rates.ts); Infinity: no more. */
  readonly daySpread: number;
}

/** Runs `each` day in turn. The same seed gives the same days, whatever the scenario's supply is. */
export function overDays(
  scenario: Scenario,
  { posteriors, daySpread }: Belief,
  { seed, runs, blocks }: Runs,
  each: (day: { block: number; run: number; rates: Rates; factor: number }) => void,
): void {
  const drawn = Array.from({ length: blocks }, (_, b) => drawRates(posteriors, randomOf(seed, 7, b)));
  for (let run = 0; run < runs; run++) {
    const block = run % blocks;
    const factor = daySpread === Infinity ? 1 : gamma(randomOf(seed, 11, run), daySpread) / daySpread;
    each({ block, run, rates: drawn[block]!, factor });
  }
}

/** Groups a request counts in. With a piece of equipment: whatever was missing. Hands: only when hands were. */
function countsIn(request: Request, late: boolean): readonly (readonly [Group, boolean])[] {
  const { need } = request.candidate;
  const rows: [Group, boolean][] = [];
  if (need.group !== null) rows.push([need.group, late]);
  if (asksForHands(need.hands)) rows.push(['hands', late && request.short === 'hands']);
  return rows;
}

export interface Tally {
  readonly runs: number;
  readonly blocks: number;
  /** By group: [block][slot]. */
  readonly asked: Readonly<Record<Group, readonly Float64Array[]>>;
  readonly late: Readonly<Record<Group, readonly Float64Array[]>>;
  /** By group: [slot][how many], as counts of runs. */
  readonly wanted: Readonly<Record<Group, readonly Uint32Array[]>>;
  /** By group: [slot], late requests for which people were missing last. */
  readonly noHands: Readonly<Record<Group, Float64Array>>;
  /** By source: runs with a late request, and late requests by slot. */
  readonly lateRuns: Uint32Array;
  readonly lateAt: readonly Float64Array[];
  /** Requests and late ones of a day. */
  readonly askedADay: number;
  readonly lateADay: number;
}

export const MOST_WANTED = 40;
const perGroup = <T>(of: () => T): Record<Group, T> =>
  Object.fromEntries(GROUPS.map((group) => [group, of()])) as Record<Group, T>;

export function tallyOf(scenario: Scenario, belief: Belief, runs: Runs): Tally {
  const { slots, sources, lateAfter } = scenario;
  const byBlock = () => Array.from({ length: runs.blocks }, () => new Float64Array(slots));
  const asked = perGroup(byBlock);
  const late = perGroup(byBlock);
  const wanted = perGroup(() => Array.from({ length: slots }, () => new Uint32Array(MOST_WANTED + 1)));
  const noHands = perGroup(() => new Float64Array(slots));
  const lateRuns = new Uint32Array(sources.length);
  const lateAt = sources.map(() => new Float64Array(slots));
  let all = 0;
  let tooLate = 0;
  overDays(scenario, belief, runs, ({ block, run, rates, factor }) => {
    const candidates = candidatesOf(scenario, rates, runs.seed, run, factor);
    const most = wantedOf(scenario, candidates);
    for (const group of GROUPS)
      most[group].forEach((n, slot) => wanted[group][slot]![Math.min(n, MOST_WANTED)]!++);
    const lateHere = new Set<number>();
    for (const request of runDay(scenario, candidates, runs.seed, run)) {
      const slot = Math.min(slots - 1, Math.floor(request.asked / SLOT_MINUTES));
      const isLate = request.wait > lateAfter;
      all++;
      for (const [group, counts] of countsIn(request, isLate)) {
        asked[group][block]![slot]!++;
        if (!counts) continue;
        late[group][block]![slot]!++;
        if (request.short === 'hands') noHands[group][slot]!++;
      }
      if (!isLate) continue;
      tooLate++;
      lateHere.add(request.source);
      lateAt[request.source]![slot]!++;
    }
    for (const source of lateHere) lateRuns[source]!++;
  });
  return {
    runs: runs.runs,
    blocks: runs.blocks,
    asked,
    late,
    wanted,
    noHands,
    lateRuns,
    lateAt,
    askedADay: all / runs.runs,
    lateADay: tooLate / runs.runs,
  };
}

/** Late requests of a day, and nothing else: for what-ifs. */
export function lateADay(scenario: Scenario, belief: Belief, runs: Runs): number {
  let late = 0;
  overDays(scenario, belief, runs, ({ run, rates, factor }) => {
    const candidates = candidatesOf(scenario, rates, runs.seed, run, factor);
    for (const { wait } of runDay(scenario, candidates, runs.seed, run))
      if (wait > scenario.lateAfter) late++;
  });
  return late / runs.runs;
}
