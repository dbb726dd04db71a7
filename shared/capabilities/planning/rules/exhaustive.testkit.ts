/**
 * The best plan by trying everything, for problems so small that it can be done. It asks only the
 * checker what is allowed and knows nothing of how plans are made otherwise.
 */
import type { DayProblem, NeededVisit, Placement } from '../problem.ts';
import { checkPlan } from './check-plan.ts';
import { worthOf } from './worth.ts';

export function bestOfAll(problem: DayProblem): { value: number; tried: number } {
  const open = { ...problem, previous: problem.previous.map((p) => ({ ...p, pinned: false })) };
  const visits = inOrder(problem.visits);
  const options = visits.map((visit) =>
    everywhere(problem, visit).filter((p) => checkPlan(open, [p]).every(({ rule }) => rule === 'after')),
  );
  let best = -Infinity;
  let tried = 0;
  const go = (i: number, plan: readonly Placement[], most: number): void => {
    if (most < best) return;
    if (i === visits.length) {
      tried++;
      if (checkPlan(problem, plan).length === 0) best = Math.max(best, worthOf(problem, plan).value);
      return;
    }
    for (const option of options[i]!) {
      const more = [...plan, option];
      if (checkPlan(open, more).length === 0) go(i + 1, more, most);
    }
    go(i + 1, plan, most - visits[i]!.weight);
  };
  go(
    0,
    [],
    visits.reduce((sum, { weight }) => sum + weight, 0),
  );
  return { value: best, tried };
}

/** What has to come first is tried first: then a part of a plan is only wrong if the whole is. */
function inOrder(visits: readonly NeededVisit[]): NeededVisit[] {
  const done: NeededVisit[] = [];
  const add = (one: NeededVisit): void => {
    if (done.includes(one)) return;
    for (const first of visits.filter(({ visit }) => one.after.includes(visit))) add(first);
    done.push(one);
  };
  for (const one of visits) add(one);
  return done;
}

function everywhere({ grid, staff }: DayProblem, visit: NeededVisit): Placement[] {
  const names = staff.map((one) => one.staff);
  const crews =
    visit.people === 1
      ? names.map((one) => [one])
      : names.flatMap((one, i) => names.slice(i + 1).map((other) => [one, other]));
  const sets = visit.sets ?? [[]];
  const placements: Placement[] = [];
  for (let start = 0; start < grid.slots; start++) {
    for (const crew of crews)
      for (const items of sets) placements.push({ visit: visit.visit, start, crew, items: [...items] });
  }
  return placements;
}
