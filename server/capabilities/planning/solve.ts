/**
 * A day plan by the solver, in three steps: a greedy plan to begin from; the linear relaxation, which
 * says how good any plan can be and which starts matter; the search among those starts. Runs in a
 * worker thread. Whatever happens there is a plan: the greedy one, marked, when the solver has none.
 */
import type { DayProblem, Placement } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { filledUp, greedyPlan } from '@footboard/shared/capabilities/planning/rules/greedy';
import { modelOf, type Model } from '@footboard/shared/capabilities/planning/rules/model';
import { gapOf, greedyProposal, proposalOf } from '@footboard/shared/capabilities/planning/rules/propose';
import { asSolution, readSolution } from '@footboard/shared/capabilities/planning/rules/read-solution';
import { worthOf } from '@footboard/shared/capabilities/planning/rules/worth';
import { bestFrom, highs, linearPrices, type Stop } from './highs.ts';
import { narrowed, partOf, priced, safeBound } from './narrow.ts';

export interface Limits {
  /** For the whole search; null: no limit of time (tests say nodes instead). */
  readonly seconds: number | null;
  readonly nodes: number | null;
  readonly seed: number;
  /** A plan this close to the bound is good enough (0.002 = 0.2 %). */
  readonly gap: number;
}
export const PRODUCT_LIMITS: Limits = { seconds: 5, nodes: null, seed: 1, gap: 0.002 };

/** Up to so many columns the whole model is searched at once. */
const WHOLE = 600;
/** Beyond it not even the relaxation is done in time; a plan by hand of fewer visits is asked for. */
const TOO_LARGE = 120_000;
/** Columns of the first closer look; doubled while there is time. */
const NARROW = 400;

export async function solveDay(problem: DayProblem, limits: Limits): Promise<DayProposal> {
  const began = performance.now();
  const left = (): number | null =>
    limits.seconds === null ? null : limits.seconds - (performance.now() - began) / 1_000;
  const model = modelOf(problem);
  const greedy = greedyPlan(problem, model.feasible);
  if (model.columns.length > TOO_LARGE) return greedyProposal(problem, 'too-large');
  try {
    const found = search(await highs(), model, greedy, limits, left);
    if (!found) return greedyProposal(problem, 'out-of-time');
    const { plan, bound, nodes } = found;
    if (checkPlan(problem, plan).length > 0) return greedyProposal(problem, 'solver-failed');
    return proposalOf(
      problem,
      plan,
      { bound, how: 'solver', fallback: null, seed: limits.seed, nodes },
      model.feasible,
    );
  } catch {
    return greedyProposal(problem, 'solver-failed');
  }
}

interface Search {
  readonly plan: Placement[];
  readonly bound: number;
  readonly nodes: number;
}
type Solver = Awaited<ReturnType<typeof highs>>;

/** With what there is still room for, where that is worth more. */
function filled({ problem, feasible }: Model, plan: readonly Placement[]): Placement[] {
  const more = filledUp(problem, feasible, plan);
  return worthOf(problem, more).value > worthOf(problem, plan).value ? more : [...plan];
}

/** Everything placed at its best, whoever there is: a bound where the relaxation gave no good one. */
function plainBound({ columns, worth, offset, problem }: Model): number {
  const best = problem.visits.map(() => 0);
  for (const [c, column] of columns.entries()) {
    if (column.is === 'y') best[column.v] = Math.max(best[column.v]!, worth[c]!);
  }
  return best.reduce((sum, is) => sum + is, offset);
}

function search(
  solver: Solver,
  model: Model,
  greedy: readonly Placement[],
  limits: Limits,
  left: () => number | null,
): Search | null {
  const { problem } = model;
  const stop = (share = 1): Stop => {
    const seconds = left();
    return { ...limits, seconds: seconds === null ? null : share * seconds };
  };
  const value = (plan: readonly Placement[]): number => worthOf(problem, plan).value;
  const time = left();
  if (time !== null && time <= 0) return null;
  const start = asSolution(model, greedy);
  if (model.columns.length <= WHOLE) {
    const found = bestFrom(solver, model, start, limits.gap, stop());
    if (!found) return null;
    return {
      plan: filled(model, readSolution(model, found.values)),
      bound: found.bound,
      nodes: found.nodes,
    };
  }
  const prices = linearPrices(solver, model, stop(0.7));
  if (!prices) return null;
  const duals = priced(model, prices);
  const bound = Math.min(safeBound(model, duals), plainBound(model));
  let best: Placement[] = [...greedy];
  let nodes = 0;
  for (let most = NARROW; ; most *= 2) {
    const more = left();
    if ((gapOf(value(best), bound) ?? 1) <= limits.gap || (more !== null && more < 0.2)) break;
    const begin = asSolution(model, best);
    const { part, of } = partOf(model, narrowed(model, duals, begin, most));
    const found = bestFrom(
      solver,
      part,
      of.map((c) => begin[c]!),
      limits.gap / 2,
      stop(),
    );
    if (!found) break;
    nodes += found.nodes;
    const plan = filled(model, readSolution(part, found.values));
    if (value(plan) > value(best)) best = plan;
    if (part.columns.length === model.columns.length) break;
  }
  return { plan: best, bound, nodes };
}
