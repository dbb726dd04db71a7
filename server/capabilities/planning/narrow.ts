/**
 * What the linear relaxation says of a model: a bound no plan can pass, and which starts are worth
 * a closer look. Both hold for any duals, also those of a search that was cut short.
 */
import type { Model } from '@footboard/shared/capabilities/planning/rules/model';

/** What each column would still add to the worth at these prices of the rows (reduced costs). */
export function reducedCosts({ worth, rows }: Model, duals: ArrayLike<number>): Float64Array {
  const left = Float64Array.from(worth);
  for (const [r, { columns, values }] of rows.entries()) {
    const price = duals[r]!;
    if (price === 0) continue;
    for (const [i, c] of columns.entries()) left[c]! -= price * values[i]!;
  }
  return left;
}

/** Prices with the signs they may have: none on a side that is not limited. */
export const priced = ({ rows }: Model, duals: ArrayLike<number>): Float64Array =>
  Float64Array.from(rows, ({ low, high }, r) => {
    const price = duals[r]!;
    return (price > 0 && high === Infinity) || (price < 0 && low === -Infinity) ? 0 : price;
  });

/**
 * Weak duality: whatever the prices, no plan is worth more than this (any text on linear programming;
 * here with bounds on both sides of rows and columns).
 */
export function safeBound(model: Model, duals: ArrayLike<number>): number {
  const left = reducedCosts(model, duals);
  let bound = model.offset;
  for (const [c, is] of left.entries()) bound += Math.max(0, is) * model.high[c]!;
  for (const [r, { low, high }] of model.rows.entries()) {
    const price = duals[r]!;
    if (price !== 0) bound += price * (price > 0 ? high : low);
  }
  return bound;
}

/**
 * The columns worth a closer look, at most about `most`: every visit keeps its best few starts, then
 * the starts that lose least at the prices. `always` stay, whatever they lose.
 */
export function narrowed(
  model: Model,
  starts: readonly StartColumns[],
  always: ArrayLike<number>,
  most: number,
): boolean[] {
  const keep = model.columns.map((column, c) => column.is === 'most' || always[c]! > 0.5);
  const first = new Map<number, number>();
  let count = 0;
  for (const start of starts) {
    const had = first.get(start.v) ?? 0;
    if (had >= 3 && count >= most) continue;
    first.set(start.v, had + 1);
    for (const c of start.columns) {
      if (!keep[c]) count++;
      keep[c] = true;
    }
  }
  return keep;
}

export interface StartColumns {
  readonly v: number;
  readonly columns: readonly number[];
  readonly loses: number;
}
/** Starts with their columns, what loses least at these prices first. */
export function startsByLoss(model: Model, duals: ArrayLike<number>): StartColumns[] {
  const { columns, feasible, problem } = model;
  const left = reducedCosts(model, duals);
  const starts = new Map<string, { v: number; ys: number[]; xs: number[] }>();
  for (const [c, column] of columns.entries()) {
    if (column.is === 'most') continue;
    const key = `${column.v} ${column.at}`;
    const start = starts.get(key) ?? { v: column.v, ys: [], xs: [] };
    starts.set(key, start);
    (column.is === 'y' ? start.ys : start.xs).push(c);
  }
  const best = (of: readonly number[], many: number): number =>
    of
      .map((c) => left[c]!)
      .toSorted((a, b) => b - a)
      .slice(0, many)
      .reduce((sum, is) => sum + is, 0);
  return [...starts.values()]
    .map(({ v, ys, xs }) => {
      const { people, lead } = feasible[v]!.visit;
      const crew = xs.toSorted((a, b) => left[b]! - left[a]!);
      const leads = crew.filter((c) => {
        const column = columns[c]!;
        return column.is === 'x' && lead.includes(problem.staff[column.s]!.role);
      });
      // Those who lose least, one to spare, and two who may lead.
      const near = new Set([...crew.slice(0, people + 2), ...leads.slice(0, 2)]);
      return { v, columns: [...ys, ...near], loses: -(best(ys, 1) + best(xs, people)) };
    })
    .toSorted((a, b) => a.loses - b.loses);
}

/** The model with some columns left out, and which column of the whole each of its is. */
export function partOf(model: Model, keep: readonly boolean[]): { part: Model; of: number[] } {
  const of = keep.flatMap((is, c) => (is ? [c] : []));
  const to = new Int32Array(model.columns.length).fill(-1);
  for (const [i, c] of of.entries()) to[c] = i;
  const rows = model.rows.flatMap((row) => {
    const { low, columns, values } = row;
    const kept = columns.flatMap((c, i) => (to[c]! >= 0 ? [[to[c]!, values[i]!] as const] : []));
    if (kept.length === 0 && low <= 0) return [];
    return [{ ...row, columns: kept.map(([c]) => c), values: kept.map(([, value]) => value) }];
  });
  const part = {
    ...model,
    columns: of.map((c) => model.columns[c]!),
    worth: of.map((c) => model.worth[c]!),
    high: of.map((c) => model.high[c]!),
    rows,
  };
  return { part, of };
}
