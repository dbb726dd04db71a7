/** The rows of the model that bind visits to each other: equipment, rest of a stay, order. Pure. */
import type { DayProblem, NeededVisit } from '../problem.ts';
import { cleaningAfter, itemsById, restBetween, type Feasible } from './feasible.ts';
import { put, row, type At, type OfVisit, type Row } from './model-parts.ts';

/** One with its columns and how many slots from its start it holds what the row speaks of. */
interface Holds {
  readonly at: readonly At[];
  readonly length: number;
}
/** At every slot at most one of these holds it. Slots at which only one visit could are left out. */
function atMostOne(all: readonly Holds[], slots: number): Row[] {
  const rows: Row[] = [];
  for (let slot = 0; slot < slots; slot++) {
    const one = row(0, 1);
    let visits = 0;
    for (const { at, length } of all) {
      const now = at.filter((a) => a.at <= slot && slot < a.at + length);
      if (now.length > 0) visits++;
      for (const { c } of now) put(one, c, 1);
    }
    if (visits > 1) rows.push(one);
  }
  return rows;
}

/**
 * An item is with one visit at a time, and after it is cleaned before another person has it. Between
 * two visits of the same stay no cleaning is owed: where their rest is shorter than the cleaning, the
 * row of the item holds only the rest, and a row of the visit keeps the others away.
 */
export function itemRows(
  problem: DayProblem,
  feasible: readonly Feasible[],
  visits: readonly OfVisit[],
): Row[] {
  const rows: Row[] = [];
  const slots = problem.grid.slots;
  for (const item of itemsById(problem).values()) {
    const uses = feasible.flatMap(({ visit }, v) => {
      const at = visits[v]!.ys.filter(({ set }) => set !== null && visit.sets![set]!.includes(item.item));
      return at.length === 0 ? [] : [{ visit, at, cleaning: cleaningAfter(item, visit) }];
    });
    const rest = (one: NeededVisit): number =>
      Math.min(
        Infinity,
        ...uses
          .filter(({ visit }) => visit.stay === one.stay && visit.visit !== one.visit)
          .map(({ visit }) => restBetween(one, visit)),
      );
    const holds = uses.map((use) => ({
      ...use,
      length: use.visit.length + Math.min(use.cleaning, rest(use.visit)),
    }));
    rows.push(...atMostOne(holds, slots));
    for (const use of holds.filter(({ visit, cleaning, length }) => length < visit.length + cleaning)) {
      const others = uses.filter(({ visit }) => visit.stay !== use.visit.stay);
      rows.push(
        ...atMostOne(
          [
            { at: use.at, length: use.visit.length + use.cleaning },
            ...others.map(({ at, visit }) => ({ at, length: visit.length })),
          ],
          slots,
        ),
      );
    }
  }
  return rows;
}

type Placeable = { readonly visit: NeededVisit; readonly at: readonly At[] };

/** From the start of the one until the other may begin. */
const apart = (a: NeededVisit, b: NeededVisit): number => a.length + restBetween(a, b);

/** One visit of a stay at once, rest between two, and what comes first is over before. */
export function stayRows(feasible: readonly Feasible[], visits: readonly OfVisit[], slots: number): Row[] {
  const rows: Row[] = [];
  const placeable = feasible.map(({ visit }, v): Placeable => ({ visit, at: visits[v]!.ys }));
  for (const stay of new Set(placeable.map(({ visit }) => visit.stay))) {
    const all = placeable.filter(({ visit }) => visit.stay === stay);
    const ordered = orderOf(all);
    for (const [i, a] of all.entries()) {
      for (const id of a.visit.after)
        rows.push(
          ...afterRows(
            a,
            all.find(({ visit }) => visit.visit === id),
          ),
        );
      for (const b of all.slice(i + 1)) {
        // Of two in a fixed order the rows of the order keep the rest as well.
        if (ordered(a.visit, b.visit) || ordered(b.visit, a.visit)) continue;
        const both = [
          { at: a.at, length: apart(a.visit, b.visit) },
          { at: b.at, length: apart(b.visit, a.visit) },
        ];
        rows.push(...atMostOne(both, slots));
      }
    }
  }
  return rows;
}

/** Whether the one always comes after the other, straight or by others between whose rest is as long. */
function orderOf(all: readonly Placeable[]): (then: NeededVisit, first: NeededVisit) => boolean {
  const ordered = (then: NeededVisit, first: NeededVisit): boolean =>
    then.after.includes(first.visit) ||
    all.some(
      ({ visit: mid }) =>
        then.after.includes(mid.visit) &&
        ordered(mid, first) &&
        apart(first, mid) + apart(mid, then) >= apart(first, then),
    );
  return ordered;
}

/** By every slot, it has begun only if what comes first began long enough before. */
function afterRows(then: Placeable, first: Placeable | undefined): Row[] {
  const slots = [...new Set(then.at.map(({ at }) => at))];
  return slots.map((slot) => {
    const one = row(-Infinity, 0);
    for (const { c, at } of then.at) if (at <= slot) put(one, c, 1);
    for (const { c, at } of first?.at ?? []) {
      if (at + apart(first!.visit, then.visit) <= slot) put(one, c, -1);
    }
    return one;
  });
}
