/**
 * A plan made better by taking a few visits out and putting them in again elsewhere, many times (ruin
 * and recreate: Schrimpf et al. 2000, simulated annealing: Kirkpatrick et al. 1983; both from memory).
 * It says nothing of how good a plan can be: the solver begins from what comes out here. Every plan on
 * the way keeps every hard rule, since only what `Occupied` allows is put in. Pure.
 */
import { randomOf, type Random } from '../../../kernel/random.ts';
import type { DayProblem, Placement } from '../problem.ts';
import { keepable } from './check-plan.ts';
import type { Feasible } from './feasible.ts';
import { fill } from './greedy.ts';
import { groundOf } from './ground.ts';
import { Occupied, type Room } from './occupied.ts';

/** At most so many visits are taken out at once, and two at least. */
const MOST_OUT = 12;
/** A loss of this share of a visit's mean weight is taken now and then at the beginning, none at the end. */
const WARM = 0.04;
/** Share of the tries that make room for one visit that found no place, and put it in first. */
const MISSING = 0.3;

/**
 * @param seed the same for the same plan, as long as `done` says the same
 * @param done share of the search that is over, asked before each try; 1 or more ends it
 */
export function shaken(
  problem: DayProblem,
  feasible: readonly Feasible[],
  from: readonly Placement[],
  seed: number,
  done: () => number,
): Placement[] {
  const random = randomOf(seed);
  const placeable = feasible.filter(({ none }) => none === null);
  if (placeable.length === 0) return [...from];
  const pinned = new Set<string>(keepable(problem).map(({ visit }) => visit));
  const mean = placeable.reduce((sum, { visit }) => sum + visit.weight, 0) / placeable.length;
  const waiting = waitingFor(placeable);
  const wish = new Map(placeable.map((one) => [one, 0]));
  const state = new Occupied(groundOf(problem, feasible));
  for (const one of from) state.put(one);
  let now: readonly Placement[] = state.plan;
  let { value } = state;
  let best = now;
  let most = value;
  for (let over = done(); over < 1; over = done()) {
    const out: Room[] = [];
    const missing = random.next() < MISSING ? missingOne(placeable, state, random) : null;
    for (const visit of takenOut(problem, now, random, waiting, missing?.at ?? null)) {
      const was = pinned.has(visit) ? null : state.take(visit);
      if (was) out.push(was);
    }
    const left = placeable.filter(({ visit }) => !state.has(visit.visit));
    for (const one of left) wish.set(one, wishOf(one) * (0.3 + random.next()));
    if (missing) wish.set(missing.one, Infinity);
    fill(
      state,
      left.toSorted((a, b) => wish.get(b)! - wish.get(a)!),
      false,
    );
    const is = state.value;
    const warmth = Math.max(0.002 * mean, WARM * mean * (1 - over));
    if (is > value || random.next() < Math.exp((is - value) / warmth)) {
      now = state.plan;
      value = is;
      if (is > most + 1e-9) {
        best = now;
        most = is;
      }
      continue;
    }
    for (const { visit } of left) state.take(visit.visit);
    for (const room of out) state.putAt(room);
  }
  return [...best];
}

const wishOf = ({ visit }: Feasible): number => visit.weight / (visit.people * visit.length);

/** What has to come after each visit, however far down the chain. */
function waitingFor(placeable: readonly Feasible[]): ReadonlyMap<string, readonly string[]> {
  const next = new Map<string, string[]>();
  for (const { visit } of placeable) {
    for (const first of visit.after) next.set(first, [...(next.get(first) ?? []), visit.visit]);
  }
  const all = (visit: string): Set<string> => {
    const found = new Set<string>();
    const look = [visit];
    for (let one = look.pop(); one !== undefined; one = look.pop()) {
      for (const after of next.get(one) ?? []) {
        if (found.has(after)) continue;
        found.add(after);
        look.push(after);
      }
    }
    return found;
  };
  return new Map([...next.keys()].map((visit) => [visit, [...all(visit)]]));
}

/** One that found no place, and when it might begin. */
function missingOne(
  placeable: readonly Feasible[],
  state: Occupied,
  random: Random,
): { one: Feasible; at: number } | null {
  const missing = placeable.filter((one) => !state.has(one.visit.visit) && state.ready(one));
  const one = missing[Math.floor(random.next() * missing.length)];
  return one ? { one, at: one.starts[Math.floor(random.next() * one.starts.length)]!.at } : null;
}

/**
 * A few visits that are near each other in time, or of one person, or any; and what comes after them.
 * @param at near this slot; null: whichever way chance says
 */
function takenOut(
  { staff, grid }: DayProblem,
  plan: readonly Placement[],
  random: Random,
  waiting: ReadonlyMap<string, readonly string[]>,
  at: number | null,
): Set<string> {
  const many = 2 + Math.floor(random.next() * (MOST_OUT - 1));
  const kind = at === null ? random.next() : 0;
  const around = at ?? random.next() * grid.slots;
  const who = staff[Math.floor(random.next() * staff.length)]?.staff;
  const chosen =
    kind < 0.4
      ? nearest(plan, around, many)
      : some(
          kind < 0.7 && who !== undefined ? plan.filter(({ crew }) => crew.includes(who)) : plan,
          many,
          random,
        );
  const out = new Set<string>();
  for (const { visit } of chosen) {
    out.add(visit);
    for (const after of waiting.get(visit) ?? []) out.add(after);
  }
  return out;
}

/** Those that begin nearest to a slot; the plan is in order of its starts. */
function nearest(plan: readonly Placement[], around: number, many: number): readonly Placement[] {
  let from = 0;
  while (from + many < plan.length && plan[from + many]!.start - around < around - plan[from]!.start) from++;
  return plan.slice(from, from + many);
}

/** As many drawn by chance. */
function some(all: readonly Placement[], many: number, random: Random): readonly Placement[] {
  const left = [...all];
  for (let i = 0; i < Math.min(many, left.length); i++) {
    const other = i + Math.floor(random.next() * (left.length - i));
    [left[i], left[other]] = [left[other]!, left[i]!];
  }
  return left.slice(0, many);
}
