/** A plan as a proposal: worth, gap, what is not in it and why, and what moved. Pure. */
import type { DayProblem, Placement } from '../problem.ts';
import type { DayProposal, Move } from '../proposal.ts';
import { explainPlaced, explainUnplaced } from './explain.ts';
import { feasibleVisits, type Feasible } from './feasible.ts';
import { greedyPlan } from './greedy.ts';
import { worthOf } from './worth.ts';

export type Search = Pick<DayProposal, 'bound' | 'how' | 'fallback' | 'seed' | 'nodes'>;

export function proposalOf(
  problem: DayProblem,
  plan: readonly Placement[],
  search: Search,
  feasible: readonly Feasible[] = feasibleVisits(problem),
): DayProposal {
  const objective = worthOf(problem, plan);
  return {
    placed: explainPlaced(problem, feasible, plan),
    unplaced: explainUnplaced(problem, feasible, plan),
    objective,
    ...search,
    gap: gapOf(objective.value, search.bound),
    moves: movesOf(problem, plan),
    weightsVersion: problem.weights.version,
  };
}

/** Share of the bound that the plan may be short of. */
export function gapOf(value: number, bound: number | null): number | null {
  if (bound === null) return null;
  return Math.max(0, bound - value) / Math.max(1, Math.abs(bound));
}

/** Without a solver: marked, and with why. */
export const greedyProposal = (problem: DayProblem, fallback: DayProposal['fallback']): DayProposal =>
  proposalOf(problem, greedyPlan(problem), { bound: null, how: 'greedy', fallback, seed: 0, nodes: null });

export function movesOf(
  { previous, visits }: Pick<DayProblem, 'previous' | 'visits'>,
  plan: readonly Placement[],
): Move[] {
  const after = new Map(plan.map((p) => [p.visit as string, p]));
  const asked = new Set(visits.map(({ visit }) => visit));
  const old = previous.flatMap((was): Move[] => {
    const is = after.get(was.visit);
    const before = bare(was);
    // What is not asked for any more has not moved: nobody would go.
    if (!is) return asked.has(was.visit) ? [{ visit: was.visit, kind: 'gone', before, after: null }] : [];
    const kind =
      is.start !== was.start
        ? 'time'
        : !same(is.crew, was.crew)
          ? 'crew'
          : !same(is.items, was.items)
            ? 'items'
            : null;
    return kind === null ? [] : [{ visit: was.visit, kind, before, after: bare(is) }];
  });
  const known = new Set(previous.map(({ visit }) => visit));
  const added = plan.filter(({ visit }) => !known.has(visit));
  return [...old, ...added.map((p): Move => ({ visit: p.visit, kind: 'new', before: null, after: bare(p) }))];
}

const bare = ({ visit, start, crew, items }: Placement): Placement => ({ visit, start, crew, items });
const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.toSorted().join(' ') === b.toSorted().join(' ');
