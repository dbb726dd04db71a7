/**
 * A plan without a solver: one visit after another where it is worth most. Never better than the
 * solver's on purpose; it is what the solver begins from, and what stands in for it, marked as such.
 */
import type { DayProblem, Placement } from '../problem.ts';
import { keepable } from './check-plan.ts';
import { feasibleVisits, type Feasible } from './feasible.ts';
import { Occupied } from './occupied.ts';
import { worthOf } from './worth.ts';

/** The best of a few orders in which the visits are placed. */
export function greedyPlan(
  problem: DayProblem,
  feasible: readonly Feasible[] = feasibleVisits(problem),
): Placement[] {
  const reach = chainWorth(feasible);
  const orders: ((a: Feasible, b: Feasible) => number)[] = [
    (a, b) => reach(b) / effort(b) - reach(a) / effort(a),
    (a, b) => reach(b) - reach(a),
    (a, b) => scarce(a) - scarce(b),
    (a, b) => needs(b) - needs(a) || reach(b) - reach(a),
  ];
  const plans = orders.map((order) => placeIn(problem, feasible, order));
  return plans.reduce((best, one) =>
    worthOf(problem, one).value > worthOf(problem, best).value ? one : best,
  );
}

/** One order alone. `earliest`: each at the first slot there is, whatever it is worth there. */
export function placeIn(
  problem: DayProblem,
  feasible: readonly Feasible[],
  order: (a: Feasible, b: Feasible) => number,
  earliest = false,
): Placement[] {
  const state = new Occupied(problem, feasible);
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
  const state = new Occupied(problem, feasible);
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

function fill(state: Occupied, queue: readonly Feasible[], earliest: boolean): void {
  let left = [...queue];
  for (;;) {
    const next = left.find((one) => state.ready(one));
    if (!next) return;
    left = left.filter((one) => one !== next);
    const room = state.best(next, {}, earliest);
    if (room && room.worth > 0) state.put(room.placement);
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
