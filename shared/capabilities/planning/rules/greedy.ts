/**
 * A plan without a solver: one visit after another where it is worth most. Never better than the
 * solver's on purpose; it is what the solver begins from, and what stands in for it, marked as such.
 */
import type { DayProblem, Placement } from '../problem.ts';
import { keepable } from './check-plan.ts';
import { feasibleVisits, type Feasible } from './feasible.ts';
import { groundOf } from './ground.ts';
import { Occupied } from './occupied.ts';
import { worthOf } from './worth.ts';

/** Rounds in which what was left out is put forward. */
const ROUNDS = 24;

/**
 * The best of a few orders in which the visits are placed; then, round after round, what the last plan
 * left out is put forward, and the best plan of all rounds stays.
 */
export function greedyPlan(
  problem: DayProblem,
  feasible: readonly Feasible[] = feasibleVisits(problem),
): Placement[] {
  const reach = chainWorth(feasible);
  const orders: ((a: Feasible, b: Feasible) => number)[] = [
    (a, b) => reach(b) - reach(a),
    (a, b) => scarce(a) - scarce(b),
    (a, b) => needs(b) - needs(a) || reach(b) - reach(a),
  ];
  const value = (plan: readonly Placement[]): number => worthOf(problem, plan).value;
  let best = orders
    .map((order) => placeIn(problem, feasible, order))
    .reduce((a, b) => (value(b) > value(a) ? b : a));
  const forward = new Map(feasible.map((one) => [one, reach(one) / effort(one)]));
  for (let round = 0; round < ROUNDS; round++) {
    const plan = placeIn(problem, feasible, (a, b) => forward.get(b)! - forward.get(a)!);
    if (value(plan) > value(best)) best = plan;
    const placed = new Set(plan.map(({ visit }) => visit));
    const left = feasible.filter(({ visit, none }) => none === null && !placed.has(visit.visit));
    if (left.length === 0) break;
    for (const one of left) {
      forward.set(one, forward.get(one)! * 1.5);
      // It waits for these: they go forward with it.
      for (const first of feasible) {
        if (one.visit.after.includes(first.visit.visit)) forward.set(first, forward.get(first)! * 1.25);
      }
    }
  }
  return best;
}

/** One order alone. `earliest`: each at the first slot there is, whatever it is worth there. */
export function placeIn(
  problem: DayProblem,
  feasible: readonly Feasible[],
  order: (a: Feasible, b: Feasible) => number,
  earliest = false,
): Placement[] {
  const state = new Occupied(groundOf(problem, feasible));
  const before = new Set(problem.previous.map(({ visit }) => visit));
  for (const pin of keepable(problem)) state.put(pin);
  // What was promised already comes first: a plan stays as it is where it can.
  const queue = feasible
    .filter(({ visit }) => !state.has(visit.visit))
    .toSorted(
      (a, b) =>
        Number(before.has(b.visit.visit)) - Number(before.has(a.visit.visit)) || order(a, b) || byName(a, b),
    );
  fill(state, queue, earliest);
  return state.plan;
}

/** Puts in what there is still room for and worth it. */
export function filledUp(
  problem: DayProblem,
  feasible: readonly Feasible[],
  plan: readonly Placement[],
): Placement[] {
  const state = new Occupied(groundOf(problem, feasible));
  for (const one of plan) state.put(one);
  const reach = chainWorth(feasible);
  fill(
    state,
    feasible
      .filter(({ visit }) => !state.has(visit.visit))
      .toSorted((a, b) => reach(b) - reach(a) || byName(a, b)),
    false,
  );
  return state.plan;
}

/** Puts in one after another in this order, each where it is worth most; what has to wait for another waits. */
export function fill(state: Occupied, queue: readonly Feasible[], earliest: boolean): void {
  const left = [...queue];
  for (;;) {
    const at = left.findIndex((one) => state.ready(one));
    if (at < 0) return;
    const [next] = left.splice(at, 1);
    const room = state.best(next!, {}, earliest);
    if (room && room.worth > 0) state.putAt(room);
  }
}

const scarce = ({ starts }: Feasible): number => starts.length;
const byName = (a: Feasible, b: Feasible): number => (a.visit.visit < b.visit.visit ? -1 : 1);
const effort = ({ visit }: Feasible): number => visit.people * visit.length;
const needs = ({ visit }: Feasible): number => (visit.sets === null ? 0 : 1);

/** Its weight and of all that has to wait for it. */
function chainWorth(feasible: readonly Feasible[]): (one: Feasible) => number {
  const followers = (one: Feasible, seen: Set<string>): number =>
    feasible
      .filter(({ visit }) => visit.after.includes(one.visit.visit) && !seen.has(visit.visit))
      .reduce((sum, next) => sum + followers(next, seen.add(next.visit.visit)), one.visit.weight);
  const known = new Map(feasible.map((one) => [one, followers(one, new Set())]));
  return (one) => known.get(one)!;
}
