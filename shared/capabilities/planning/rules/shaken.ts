/**
 * A plan made better by taking a few visits out and putting them in again elsewhere, many times (ruin
 * and recreate: Schrimpf et al. 2000, simulated annealing: Kirkpatrick et al. 1983; both from memory).
 * It says nothing of how good a plan can be: the solver begins from what comes out here. Every plan on
 * the way keeps every hard rule, since only what `Occupied` allows is put in. Pure.
 */
import { randomOf, type Random } from '../../../kernel/random.ts';
import type { DayProblem, Placement } from '../problem.ts';
import { keepable } from './check-plan.ts';
import type { Feasible } from './feasible.ts';
import { fill } from './greedy.ts';
import { groundOf, Occupied } from './occupied.ts';
import { worthOf } from './worth.ts';

/** At most so many visits are taken out at once, and two at least. */
const MOST_OUT = 12;
/** A loss of this share of a visit's mean weight is taken now and then at the beginning, none at the end. */
const WARM = 0.07;

/**
 * @param seed the same for the same plan, as long as `done` says the same
 * @param done share of the search that is over, asked before each try; 1 or more ends it
 */
export function shaken(
  problem: DayProblem,
  feasible: readonly Feasible[],
  from: readonly Placement[],
  seed: number,
  done: () => number,
): Placement[] {
  const random = randomOf(seed);
  const placeable = feasible.filter(({ none }) => none === null);
  const pinned = new Set<string>(keepable(problem).map(({ visit }) => visit));
  const mean = placeable.reduce((sum, { visit }) => sum + visit.weight, 0) / Math.max(1, placeable.length);
  const ground = groundOf(problem, feasible);
  const first = new Map(feasible.map(({ visit, first: at }) => [visit.visit, at ?? undefined]));
  const valueOf = (plan: readonly Placement[]): number =>
    worthOf(problem, plan, ({ visit }) => first.get(visit)).value;
  let now: readonly Placement[] = from;
  let value = valueOf(from);
  let best = now;
  let most = value;
  for (let over = done(); over < 1 && placeable.length > 0; over = done()) {
    const out = takenOut(problem, placeable, now, random);
    const state = new Occupied(ground);
    for (const one of now) if (!out.has(one.visit) || pinned.has(one.visit)) state.put(one);
    const wish = new Map(placeable.map((one) => [one, (wishOf(one) * (0.3 + random.next())) as number]));
    fill(
      state,
      placeable
        .filter(({ visit }) => !state.has(visit.visit))
        .toSorted((a, b) => wish.get(b)! - wish.get(a)!),
      false,
    );
    const next = state.plan;
    const is = valueOf(next);
    const warmth = Math.max(0.002 * mean, WARM * mean * (1 - over));
    if (is > value || random.next() < Math.exp((is - value) / warmth)) {
      now = next;
      value = is;
    }
    if (is > most + 1e-9) {
      best = next;
      most = is;
    }
  }
  return [...best];
}

const wishOf = ({ visit }: Feasible): number => visit.weight / (visit.people * visit.length);

/** A few visits that are near each other in time, or of one person, or any; and what comes after them. */
function takenOut(
  { staff, grid }: DayProblem,
  placeable: readonly Feasible[],
  plan: readonly Placement[],
  random: Random,
): Set<string> {
  const many = 2 + Math.floor(random.next() * (MOST_OUT - 1));
  const kind = random.next();
  const around = random.next() * grid.slots;
  const who = staff[Math.floor(random.next() * staff.length)]?.staff;
  const draw = new Map(plan.map((one) => [one, random.next()]));
  const far = (one: Placement): number =>
    kind < 0.4
      ? Math.abs(one.start - around)
      : kind < 0.7 && who !== undefined && !one.crew.includes(who)
        ? 1 + draw.get(one)!
        : draw.get(one)!;
  const out = new Set<string>(
    plan
      .toSorted((a, b) => far(a) - far(b))
      .slice(0, many)
      .map(({ visit }) => visit),
  );
  // In the order of the chain: what waits for something that waits is found in a later round.
  for (let grew = true; grew;) {
    grew = false;
    for (const { visit } of placeable) {
      if (out.has(visit.visit) || !visit.after.some((id) => out.has(id))) continue;
      out.add(visit.visit);
      grew = true;
    }
  }
  return out;
}
