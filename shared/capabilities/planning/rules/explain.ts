/**
 * Why a visit is not in a plan, and what would place it: one constraint at a time is taken away and
 * the rest of the plan left as it is. And why one that is placed is where it is. Pure.
 */
import type { DayProblem, Placement } from '../problem.ts';
import type { BoundBy, Frees, Placed, PlacedWhy, Unplaced } from '../proposal.ts';
import { feasibleOf, itemsById, timesOf, type Feasible } from './feasible.ts';
import { groundOf } from './ground.ts';
import { Occupied } from './occupied.ts';
import { isOutside } from './worth.ts';

const MOST_FREES = 4;

export function explainUnplaced(
  problem: DayProblem,
  feasible: readonly Feasible[],
  plan: readonly Placement[],
): Unplaced[] {
  const placed = new Set(plan.map(({ visit }) => visit));
  const state = occupiedBy(problem, feasible, plan);
  return feasible
    .filter(({ visit }) => !placed.has(visit.visit))
    .map((one): Unplaced => {
      const { bound, frees } = why(problem, feasible, plan, state, one);
      return { visit: one.visit.visit, bound, frees: frees.slice(0, MOST_FREES) };
    });
}

function occupiedBy(
  problem: DayProblem,
  feasible: readonly Feasible[],
  plan: readonly Placement[],
): Occupied {
  const state = new Occupied(groundOf(problem, feasible));
  for (const one of plan) state.put(one);
  return state;
}

function why(
  problem: DayProblem,
  feasible: readonly Feasible[],
  plan: readonly Placement[],
  state: Occupied,
  one: Feasible,
): { bound: BoundBy; frees: Frees[] } {
  if (one.none) return { bound: one.none, frees: freesAlone(problem, one) };
  if (!state.ready(one)) return { bound: 'waits-for-another', frees: [] };
  const room = state.best(one);
  if (room) return { bound: room.worth > 0 ? 'not-tried' : 'not-worth', frees: [] };
  const at = (start: number) => ({ from: start, until: start + one.visit.length });
  const frees: Frees[] = [];
  const people = state.best(one, { people: true }, true);
  if (people) frees.push({ by: 'one-more-person', at: at(people.placement.start) });
  const items = state.best(one, { items: true }, true);
  if (items) frees.push({ by: 'one-more-item', at: at(items.placement.start) });
  const own = state.best(one, { own: true }, true);
  frees.push(...insteadOf(feasible, plan, state, one));
  // With no single one enough: people come first, for they can be sent anywhere.
  const bound = people
    ? 'people-with-others'
    : items
      ? 'item-with-others'
      : own
        ? 'own-visits'
        : state.best(one, { people: true, items: true }, true)
          ? 'people-with-others'
          : 'own-visits';
  return { bound, frees };
}

/** Asks with one visit out of the plan, and puts it back. */
function leavingOut<T>(state: Occupied, { visit }: Placement, ask: () => T): T {
  const room = state.take(visit);
  const answer = ask();
  if (room) state.putAt(room);
  return answer;
}

/** What weighs least and would make room by itself, nothing waiting for it. */
function insteadOf(
  feasible: readonly Feasible[],
  plan: readonly Placement[],
  state: Occupied,
  one: Feasible,
): Frees[] {
  const awaited = new Set(
    feasible
      .filter(({ visit }) => plan.some((p) => p.visit === visit.visit))
      .flatMap(({ visit }) => [...visit.after]),
  );
  const weight = (p: Placement): number =>
    feasible.find(({ visit }) => visit.visit === p.visit)!.visit.weight;
  const other = plan
    .filter((p) => !awaited.has(p.visit) && !one.visit.after.includes(p.visit))
    .toSorted((a, b) => weight(a) - weight(b))
    .find((p) => leavingOut(state, p, () => state.best(one, {}, true)) !== null);
  return other ? [{ by: 'instead-of', visit: other.visit }] : [];
}

/** Of one that has no start even alone: which single thing in the way is it. */
function freesAlone(problem: DayProblem, { visit, none }: Feasible): Frees[] {
  const items = itemsById(problem);
  if (none === 'no-item-fits') return [];
  if (none === 'nobody-on' || none === 'item-not-free') {
    const at = timesOf(problem, visit)[0]!;
    const slots = { from: at, until: at + visit.length };
    return [{ by: none === 'nobody-on' ? 'one-more-person' : 'one-more-item', at: slots }];
  }
  const frees: Frees[] = [];
  const reasons = new Set(problem.blocked.filter((b) => b.stay === visit.stay).map((b) => b.why));
  for (const reason of reasons) {
    const without = {
      ...problem,
      blocked: problem.blocked.filter((b) => b.stay !== visit.stay || b.why !== reason),
    };
    const [start] = feasibleOf(without, visit, items).starts;
    if (start)
      frees.push({ by: 'blocked', why: reason, at: { from: start.at, until: start.at + visit.length } });
  }
  const open = { ...visit, windows: [{ from: 0, until: problem.grid.slots }] };
  const [start] = feasibleOf(problem, open, items).starts;
  if (start) frees.push({ by: 'window', at: { from: start.at, until: start.at + visit.length } });
  return frees;
}

/** Each placement with what put it there. */
export function explainPlaced(
  problem: DayProblem,
  feasible: readonly Feasible[],
  plan: readonly Placement[],
): Placed[] {
  const state = occupiedBy(problem, feasible, plan);
  return plan.map((p) => {
    const one = feasible.find(({ visit }) => visit.visit === p.visit)!;
    return { ...p, why: leavingOut(state, p, () => whyThere(problem, one, p, state)) };
  });
}

function whyThere(problem: DayProblem, one: Feasible, p: Placement, others: Occupied): PlacedWhy[] {
  const { visit } = one;
  const before = problem.previous.find((q) => q.visit === p.visit);
  const reasons: PlacedWhy[] = [];
  if (before?.start === p.start) reasons.push(before.pinned ? 'pinned' : 'as-before');
  if (p.start === one.first) reasons.push('first-possible');
  else if (visit.around !== null && Math.abs(p.start - visit.around) <= 4) reasons.push('spread');
  else if (visit.seenLast) reasons.push('seen-last');
  else if (earlier(others.best(one, { people: true }, true), others.best(one, {}, true)))
    reasons.push('waits-for-people');
  else if (earlier(others.best(one, { items: true }, true), others.best(one, {}, true)))
    reasons.push('waits-for-item');
  const crew = problem.staff.flatMap((who, s) => (p.crew.includes(who.staff) ? [s] : []));
  if (crew.some((s) => problem.staff[s]!.bays.length > 0 && !isOutside(problem, s, visit)))
    reasons.push('own-bay');
  return reasons;
}

const earlier = (a: { placement: Placement } | null, b: { placement: Placement } | null): boolean =>
  a !== null && (b === null || a.placement.start < b.placement.start);
