/** What a plan is worth: what it places, less what each soft rule costs. Higher is better. Pure. */
import type { DayProblem, NeededVisit, Placement } from '../problem.ts';
import type { Objective } from '../proposal.ts';
import { timesOf } from './feasible.ts';

/** What it costs that this visit begins there, whoever goes. */
export interface StartCosts {
  readonly debt: number;
  readonly spread: number;
  readonly seenLast: number;
}
export function costsOfStart(problem: DayProblem, visit: NeededVisit, first: number, at: number): StartCosts {
  return {
    debt: visit.debt * Math.max(0, at - first),
    spread: visit.around === null ? 0 : problem.weights.spread * Math.abs(at - visit.around),
    seenLast: visit.seenLast ? problem.weights.seenLast * (problem.grid.slots - at) : 0,
  };
}

/** Whether this member of the crew goes outside the bays they look after. */
export const isOutside = ({ staff }: DayProblem, s: number, visit: NeededVisit): boolean =>
  staff[s]!.bays.length > 0 && !staff[s]!.bays.includes(visit.bay);

/** @param firstOf a visit's first possible slot, where it is known already; else it is looked for */
export function worthOf(
  problem: DayProblem,
  placements: readonly Placement[],
  firstOf: (visit: NeededVisit) => number | undefined = (visit) => timesOf(problem, visit)[0],
): Objective {
  const { weights } = problem;
  const visits = new Map(problem.visits.map((v) => [v.visit, v]));
  const position = new Map(problem.staff.map((one, s) => [one.staff, s]));
  const work = problem.staff.map(() => 0);
  const sum = { placed: 0, debt: 0, spread: 0, seenLast: 0, otherBay: 0 };
  for (const { visit: id, start, crew } of placements) {
    const visit = visits.get(id);
    if (!visit) continue;
    const costs = costsOfStart(problem, visit, firstOf(visit) ?? start, start);
    sum.placed += visit.weight;
    sum.debt += costs.debt;
    sum.spread += costs.spread;
    sum.seenLast += costs.seenLast;
    for (const who of crew) {
      const s = position.get(who);
      if (s === undefined) continue;
      work[s]! += visit.length;
      if (isOutside(problem, s, visit)) sum.otherBay += weights.otherBay;
    }
  }
  const fairness = weights.fairness * above(work);
  const moved = costOfMoves(problem, placements);
  const { placed, debt, spread, seenLast, otherBay } = sum;
  const value = placed - debt - spread - seenLast - otherBay - fairness - moved;
  return { value, placed, debt, spread, seenLast, otherBay, fairness, moved };
}

/** Slots by which whoever does most is above everybody's mean. */
export function above(work: ArrayLike<number>): number {
  let most = 0;
  let sum = 0;
  for (let s = 0; s < work.length; s++) {
    most = Math.max(most, work[s]!);
    sum += work[s]!;
  }
  return work.length === 0 ? 0 : most - sum / work.length;
}

function costOfMoves({ weights, previous }: DayProblem, placements: readonly Placement[]): number {
  const now = new Map(placements.map((p) => [p.visit, p]));
  return previous.reduce((sum, before) => {
    const after = now.get(before.visit);
    if (!after || after.start !== before.start) return sum + weights.moved;
    return sum + weights.otherCrew * after.crew.filter((who) => !before.crew.includes(who)).length;
  }, 0);
}
