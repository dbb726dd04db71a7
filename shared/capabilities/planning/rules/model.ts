/**
 * The day plan as a mixed-integer programme over the 15-minute grid (docs/planning.md writes it out):
 * y says that a visit begins at a slot with a set of equipment, x that a person goes to the visit that
 * begins there. Only what is possible for a visit by itself becomes a variable. Solver-neutral. Pure.
 */
import type { DayProblem, Placement } from '../problem.ts';
import { keepable } from './check-plan.ts';
import { feasibleVisits, type Feasible } from './feasible.ts';
import { put, row, type OfVisit, type Row } from './model-parts.ts';
import { itemRows, stayRows } from './model-rows.ts';
import { costsOfStart, isOutside } from './worth.ts';

/** A column: a start with a set (y), a person at a start (x), or the most that anybody does. */
export type Column =
  | { readonly is: 'y'; readonly v: number; readonly at: number; readonly set: number | null }
  | { readonly is: 'x'; readonly v: number; readonly at: number; readonly s: number }
  | { readonly is: 'most' };
export interface Model {
  readonly problem: DayProblem;
  readonly feasible: readonly Feasible[];
  readonly columns: readonly Column[];
  /** To be maximised. */
  readonly worth: readonly number[];
  readonly high: readonly number[];
  readonly rows: readonly Row[];
  /** Worth that no column carries: what is lost before anything is placed. */
  readonly offset: number;
  readonly pinned: readonly Placement[];
}

export function modelOf(problem: DayProblem): Model {
  const feasible = feasibleVisits(problem);
  const pinned = keepable(problem);
  const columns: Column[] = [];
  const worth: number[] = [];
  const high: number[] = [];
  const add = (column: Column, is: number, most = 1): number => {
    worth.push(is);
    high.push(most);
    return columns.push(column) - 1;
  };
  const mean = problem.staff.length === 0 ? 0 : problem.weights.fairness / problem.staff.length;
  const visits = feasible.map((one, v): OfVisit => {
    const of: OfVisit = { ys: [], xs: [] };
    const before = problem.previous.find(({ visit }) => visit === one.visit.visit);
    for (const { at, staff, sets } of one.starts) {
      const costs = costsOfStart(problem, one.visit, one.first!, at);
      const kept = before?.start === at;
      const is = one.visit.weight - costs.debt - costs.spread - costs.seenLast;
      for (const set of sets) {
        const c = add({ is: 'y', v, at, set }, is + (kept ? problem.weights.moved : 0));
        of.ys.push({ c, at, set });
      }
      for (const s of staff) {
        const otherCrew = kept && !before.crew.includes(problem.staff[s]!.staff);
        const cost =
          (isOutside(problem, s, one.visit) ? problem.weights.otherBay : 0) +
          (otherCrew ? problem.weights.otherCrew : 0) -
          mean * one.visit.length;
        of.xs.push({ c: add({ is: 'x', v, at, s }, -cost), at, s });
      }
    }
    return of;
  });
  const most = add({ is: 'most' }, -problem.weights.fairness, problem.grid.slots);
  const rows = [
    ...visitRows(problem, feasible, visits, pinned),
    ...staffRows(problem, feasible, visits, most),
    ...itemRows(problem, feasible, visits),
    ...stayRows(feasible, visits, problem.grid.slots),
  ];
  const offset = -problem.weights.moved * problem.previous.length;
  return { problem, feasible, columns, worth, high, rows, offset, pinned };
}

function visitRows(
  problem: DayProblem,
  feasible: readonly Feasible[],
  visits: readonly OfVisit[],
  pinned: readonly Placement[],
): Row[] {
  const rows: Row[] = [];
  for (const [v, { visit, starts }] of feasible.entries()) {
    const of = visits[v]!;
    const { ys, xs } = of;
    if (ys.length === 0) continue;
    const once = row(0, 1);
    for (const { c } of ys) put(once, c, 1);
    rows.push(once);
    for (const { at } of starts) {
      const people = row(0, 0);
      const leads = row(0, Infinity);
      let others = false;
      for (const { c, s } of xs.filter((x) => x.at === at)) {
        put(people, c, 1);
        if (visit.lead.includes(problem.staff[s]!.role)) put(leads, c, 1);
        else others = true;
      }
      for (const { c } of ys.filter((y) => y.at === at)) {
        put(people, c, -visit.people);
        put(leads, c, -1);
      }
      rows.push(people);
      if (others) rows.push(leads);
      if (visit.people > 1) rows.push(...onceEach(of, at));
    }
    const pin = pinned.find((p) => p.visit === visit.visit);
    if (pin) rows.push(...pinRows(problem, pin, visits[v]!, visit.sets ?? []));
  }
  return rows;
}

/** Each of a pair goes once: implied by whole numbers, and without it the relaxation lets one count twice. */
function onceEach({ ys, xs }: OfVisit, at: number): Row[] {
  return xs
    .filter((x) => x.at === at)
    .map(({ c }) => {
      const one: Row = { ...row(-Infinity, 0), tightens: true };
      put(one, c, 1);
      for (const y of ys) if (y.at === at) put(one, y.c, -1);
      return one;
    });
}

/** Exactly as it was: its start with its set, and each of its crew. */
function pinRows(
  { staff }: DayProblem,
  pin: Placement,
  of: OfVisit,
  sets: readonly (readonly string[])[],
): Row[] {
  const same = pin.items.toSorted().join(' ');
  const start = of.ys.find(
    ({ at, set }) => at === pin.start && (set === null ? '' : sets[set]!.toSorted().join(' ')) === same,
  );
  const crew = of.xs.filter(({ at, s }) => at === pin.start && pin.crew.includes(staff[s]!.staff));
  return [...(start ? [start] : []), ...crew].map(({ c }) => ({
    low: 1,
    high: 1,
    columns: [c],
    values: [1],
  }));
}

/** Nobody in two places at once; and how much each does, for fairness. */
function staffRows(
  { staff, grid, weights }: DayProblem,
  feasible: readonly Feasible[],
  visits: readonly OfVisit[],
  most: number,
): Row[] {
  const rows: Row[] = [];
  const busy = staff.map(() => Array.from({ length: grid.slots }, () => row(0, 1)));
  const does = staff.map(() => row(0, Infinity));
  for (const [v, { xs }] of visits.entries()) {
    const { length } = feasible[v]!.visit;
    for (const { c, at, s } of xs) {
      for (let slot = at; slot < at + length; slot++) put(busy[s]![slot]!, c, 1);
      put(does[s]!, c, -length);
    }
  }
  for (const [s, slots] of busy.entries()) {
    rows.push(...slots.filter(({ columns }) => columns.length > 1));
    if (weights.fairness === 0 || does[s]!.columns.length === 0) continue;
    put(does[s]!, most, 1);
    rows.push(does[s]!);
  }
  return rows;
}
