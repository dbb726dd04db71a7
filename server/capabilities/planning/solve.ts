/**
 * A day plan by the solver, in four steps: a greedy plan to begin from; the linear relaxation, which
 * says how good any plan can be and which starts matter; that plan shaken many times; the search of
 * the solver from there among the starts that matter. Beside it, in a thread of its own, the whole
 * model is searched for a tighter bound. Whatever happens there is a plan: the greedy one, marked, when
 * the solver has none.
 */
import type { DayProblem, Placement } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { filledUp, greedyPlan } from '@footboard/shared/capabilities/planning/rules/greedy';
import { modelOf, type Model } from '@footboard/shared/capabilities/planning/rules/model';
import { gapOf, greedyProposal, proposalOf } from '@footboard/shared/capabilities/planning/rules/propose';
import { asSolution, readSolution } from '@footboard/shared/capabilities/planning/rules/read-solution';
import { shaken } from '@footboard/shared/capabilities/planning/rules/shaken';
import { worthOf } from '@footboard/shared/capabilities/planning/rules/worth';
import { bestFrom, highs, linearPrices, type Stop } from './highs.ts';
import { narrowed, partOf, priced, safeBound, startsByLoss } from './narrow.ts';

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
/** From so many visits on, a few stays are searched at a time first. */
const MANY = 45;
const TOURS = 1;
/** Share of the time after the relaxation in which the plan is shaken (with many visits, with few), and tries where nodes are counted. */
const SHAKEN = { many: 0.7, few: 0.45 };
const TRIES = 400;
/** Columns of the few stays that are searched at a time. */
const FEW = 350;

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
  const starts = startsByLoss(model, duals);
  let best = shaken(problem, model.feasible, greedy, limits.seed, shaking(problem, left()));
  let nodes = 0;
  const enough = (): boolean => {
    const more = left();
    return (gapOf(value(best), bound) ?? 1) <= limits.gap || (more !== null && more < 0.2);
  };
  /** Searches these columns from the best plan on; false: the solver had none. */
  const look = (keep: readonly boolean[], begin: readonly number[]): boolean => {
    const { part, of } = partOf(model, keep);
    const from = of.map((c) => begin[c]!);
    const found = bestFrom(solver, part, from, limits.gap / 2, stop());
    if (!found) return false;
    nodes += found.nodes;
    const plan = filled(model, readSolution(part, found.values));
    if (value(plan) > value(best)) best = plan;
    return true;
  };
  // A few stays at a time, the others as they are: with many visits that is sooner better than all at once.
  const stays = [...new Set(problem.visits.map(({ stay }) => stay))];
  const tours = problem.visits.length > MANY ? TOURS : 0;
  for (let tour = 0; tour < tours; tour++) {
    for (let next = 0; next < stays.length && !enough();) {
      const begin = asSolution(model, best);
      const near = narrowed(model, starts, begin, 2 * NARROW * (tour + 1));
      const few = fewStays(model, near, best, stays, next + tour * 2);
      next += few.moved;
      const keep = near.map((is, c) => is && (begin[c]! > 0.5 || isOf(model, c, few.stays)));
      if (!look(keep, begin)) break;
    }
  }
  for (let most = NARROW; !enough(); most *= 2) {
    const begin = asSolution(model, best);
    const keep = narrowed(model, starts, begin, most);
    if (!look(keep, begin) || keep.every(Boolean)) break;
  }
  return { plan: best, bound, nodes };
}

/** How much of the shaking is over: by the clock where the time is limited, by tries where it is not. */
function shaking({ visits }: DayProblem, seconds: number | null): () => number {
  let tries = 0;
  if (seconds === null) return () => tries++ / TRIES;
  const began = performance.now();
  const all = SHAKEN[visits.length > MANY ? 'many' : 'few'] * seconds * 1_000;
  return () => (all <= 0 ? 1 : (performance.now() - began) / all);
}

/**
 * The whole model searched at once: seldom done in time with many visits, but its bound is tighter than
 * the relaxation's. Null: nothing that the other search would not find itself, or no time.
 */
export async function solveWhole(problem: DayProblem, limits: Limits): Promise<DayProposal | null> {
  const began = performance.now();
  const model = modelOf(problem);
  if (model.columns.length <= WHOLE || model.columns.length > TOO_LARGE) return null;
  const start = asSolution(model, greedyPlan(problem, model.feasible));
  const solver = await highs();
  const seconds = limits.seconds === null ? null : limits.seconds - (performance.now() - began) / 1_000;
  if (seconds !== null && seconds <= 0.2) return null;
  const found = bestFrom(solver, model, start, limits.gap, { ...limits, seconds });
  if (!found) return null;
  const plan = filled(model, readSolution(model, found.values));
  if (checkPlan(problem, plan).length > 0) return null;
  const { bound, nodes } = found;
  return proposalOf(
    problem,
    plan,
    { bound, how: 'solver', fallback: null, seed: limits.seed, nodes },
    model.feasible,
  );
}

/** Whether a column belongs to one of these stays, or to all. */
function isOf({ columns, feasible }: Model, c: number, stays: ReadonlySet<string>): boolean {
  const column = columns[c]!;
  return column.is === 'most' || stays.has(feasible[column.v]!.visit.stay);
}

/** The next stays in turn, with some that have a visit left out, as many as make a model soon searched. */
function fewStays(
  model: Model,
  near: readonly boolean[],
  plan: readonly Placement[],
  stays: readonly string[],
  next: number,
): { stays: Set<string>; moved: number } {
  const size = new Map<string, number>();
  for (const [c, column] of model.columns.entries()) {
    if (column.is === 'most' || !near[c]) continue;
    const { stay } = model.feasible[column.v]!.visit;
    size.set(stay, (size.get(stay) ?? 0) + 1);
  }
  const placed = new Set(plan.map(({ visit }) => visit));
  const short = stays.filter((stay) =>
    model.feasible.some(
      ({ visit, none }) => visit.stay === stay && none === null && !placed.has(visit.visit),
    ),
  );
  const few = new Set(turned(short, next).slice(0, 3));
  let columns = [...few].reduce((sum, stay) => sum + (size.get(stay) ?? 0), 0);
  let moved = 0;
  for (const stay of turned(stays, next)) {
    if (moved > 0 && columns >= FEW) break;
    moved++;
    if (few.has(stay)) continue;
    few.add(stay);
    columns += size.get(stay) ?? 0;
  }
  return { stays: few, moved };
}

const turned = (all: readonly string[], by: number): string[] =>
  all.length === 0 ? [] : [...all.slice(by % all.length), ...all.slice(0, by % all.length)];
