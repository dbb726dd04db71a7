/** The model handed to HiGHS (WebAssembly) and its answers. One instance a worker, loaded at first use. */
import type { Model } from '@footboard/shared/capabilities/planning/rules/model';
import loadHighs, { type Highs, type Model as HighsModel, type ModelData } from 'highs';

// Its types describe the CommonJS build, whose default is a level deeper than that of the ES module.
const load = loadHighs as unknown as typeof loadHighs.default;
let loaded: Promise<Highs> | null = null;
export const highs = (): Promise<Highs> => (loaded ??= load());

/** What stops a search: seconds (the product), nodes (tests), or neither. */
export interface Stop {
  readonly seconds: number | null;
  readonly nodes: number | null;
  readonly seed: number;
}

/** The price of each row in the linear relaxation; of a large model without the rows that only tighten it. */
export function linearPrices(solver: Highs, model: Model, stop: Stop): Float64Array | null {
  const kept = model.rows.map(({ tightens }) => !tightens || model.columns.length <= TIGHT);
  const rows = model.rows.filter((_, r) => kept[r]);
  const prices = solver.withModel(dataOf(solver, { ...model, rows }, false), (is: HighsModel) => {
    // Without presolve and crossover: the prices of the interior are what is wanted, and soonest there.
    is.options.set({ ...options(stop), presolve: 'off', solver: 'ipm', run_crossover: 'off' });
    is.run();
    const { rowDual } = is.getSolution();
    return rowDual.length === rows.length && rowDual.every(Number.isFinite) ? rowDual : null;
  });
  if (!prices) return null;
  let next = 0;
  return Float64Array.from(kept, (is) => (is ? prices[next++]! : 0));
}

/** Columns up to which the relaxation has all its rows. */
const TIGHT = 4_000;

export interface Found {
  readonly values: Float64Array;
  readonly nodes: number;
  /** Of this model; of the whole only where it is the whole. */
  readonly bound: number;
}
/** The best plan found from `start` on; null where the solver has none. */
export function bestFrom(
  solver: Highs,
  model: Model,
  start: readonly number[],
  gap: number,
  stop: Stop,
): Found | null {
  return solver.withModel(dataOf(solver, model, true), (is: HighsModel) => {
    is.options.set({
      ...options(stop),
      mip_rel_gap: gap,
      ...(stop.nodes === null ? {} : { mip_max_nodes: stop.nodes }),
    });
    is.setSolution({ colValue: start });
    is.run();
    if (is.info.get('primal_solution_status') !== solver.constants.solutionStatus.feasible) return null;
    return {
      values: is.getSolution().colValue,
      nodes: Number(is.info.get('mip_node_count')),
      bound: Number(is.info.get('mip_dual_bound')),
    };
  });
}

const options = ({ seconds, seed }: Stop) => ({
  output_flag: false,
  random_seed: seed,
  ...(seconds === null ? {} : { time_limit: Math.max(0.05, seconds) }),
});

function dataOf(solver: Highs, model: Model, whole: boolean): ModelData {
  const { columns, rows, worth, high, offset } = model;
  const endless = (is: number): number =>
    is === Infinity ? solver.infinity : is === -Infinity ? -solver.infinity : is;
  const starts = new Int32Array(rows.length + 1);
  for (const [r, one] of rows.entries()) starts[r + 1] = starts[r]! + one.columns.length;
  const indices = new Int32Array(starts[rows.length]!);
  const values = new Float64Array(starts[rows.length]!);
  for (const [r, one] of rows.entries()) {
    indices.set(one.columns, starts[r]!);
    values.set(one.values, starts[r]!);
  }
  return {
    numCols: columns.length,
    numRows: rows.length,
    sense: solver.constants.objectiveSense.maximize,
    offset,
    colCost: Float64Array.from(worth),
    colLower: new Float64Array(columns.length),
    colUpper: Float64Array.from(high),
    rowLower: rows.map(({ low }) => endless(low)),
    rowUpper: rows.map((one) => endless(one.high)),
    matrix: { format: 'csr', numRows: rows.length, numCols: columns.length, starts, indices, values },
    ...(whole ? { integrality: Int32Array.from(columns, ({ is }) => (is === 'most' ? 0 : 1)) } : {}),
  };
}
