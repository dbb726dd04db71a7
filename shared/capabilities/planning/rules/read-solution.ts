/** From a solution of the model to placements, and back. Pure. */
import type { Placement } from '../problem.ts';
import type { Model } from './model.ts';

/** `values` by column; what is not near 0 or 1 is no plan. */
export function readSolution({ columns, feasible, problem }: Model, values: ArrayLike<number>): Placement[] {
  const starts = new Map<number, { at: number; set: number | null; crew: number[] }>();
  for (const [c, column] of columns.entries()) {
    if (column.is === 'y' && values[c]! > 0.5)
      starts.set(column.v, { at: column.at, set: column.set, crew: [] });
  }
  for (const [c, column] of columns.entries()) {
    if (column.is !== 'x' || values[c]! <= 0.5) continue;
    const start = starts.get(column.v);
    if (start?.at === column.at) start.crew.push(column.s);
  }
  return [...starts]
    .map(([v, { at, set, crew }]): Placement => {
      const { visit } = feasible[v]!;
      return {
        visit: visit.visit,
        start: at,
        crew: crew.map((s) => problem.staff[s]!.staff),
        items: set === null ? [] : [...visit.sets![set]!],
      };
    })
    .toSorted((a, b) => a.start - b.start || (a.visit < b.visit ? -1 : 1));
}

/** The same the other way round: a plan as values of the columns, for the solver to begin from. */
export function asSolution({ columns, feasible, problem }: Model, plan: readonly Placement[]): number[] {
  const of = new Map(plan.map((p) => [p.visit as string, p]));
  const work = problem.staff.map(() => 0);
  for (const { visit, crew } of plan) {
    const length = problem.visits.find((v) => v.visit === visit)?.length ?? 0;
    for (const [s, { staff }] of problem.staff.entries()) if (crew.includes(staff)) work[s]! += length;
  }
  return columns.map((column) => {
    if (column.is === 'most') return Math.max(0, ...work);
    const { visit } = feasible[column.v]!;
    const p = of.get(visit.visit);
    if (p?.start !== column.at) return 0;
    if (column.is === 'x') return p.crew.includes(problem.staff[column.s]!.staff) ? 1 : 0;
    const set = column.set === null ? [] : visit.sets![column.set]!;
    return set.toSorted().join(' ') === p.items.toSorted().join(' ') ? 1 : 0;
  });
}
