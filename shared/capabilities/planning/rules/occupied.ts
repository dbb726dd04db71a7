/**
 * A plan while it is put together: who and what is taken when, and where one more visit would go.
 * Used by the greedy plan and to say why something is not in a plan. Pure but for its own state.
 */
import type { DayProblem, Placement, Slots } from '../problem.ts';
import {
  cleaningAfter,
  isCrew,
  itemsById,
  restBetween,
  touches,
  type Feasible,
  type ItemsById,
  type Start,
} from './feasible.ts';
import { costsOfStart, isOutside } from './worth.ts';

/** What is left out of account when one asks what keeps a visit out. */
export interface Ignoring {
  readonly own?: boolean;
  readonly people?: boolean;
  readonly items?: boolean;
}
export interface Room {
  readonly placement: Placement;
  /** What the plan gains by it, fairness aside. */
  readonly worth: number;
}
interface Held {
  readonly one: Feasible;
  readonly placement: Placement;
  readonly until: number;
}

/** What stays the same however the visits are placed: worked out once for plans tried by the thousand. */
export interface Ground {
  readonly problem: DayProblem;
  readonly feasible: ReadonlyMap<string, Feasible>;
  readonly items: ItemsById;
  readonly staff: ReadonlyMap<string, number>;
  /** What it is worth that a visit begins there, whoever goes; by its starts in order. */
  readonly worth: ReadonlyMap<Feasible, readonly number[]>;
}
export function groundOf(problem: DayProblem, feasible: readonly Feasible[]): Ground {
  const before = new Map(problem.previous.map(({ visit, start }) => [visit, start]));
  const worthAt = ({ visit, first }: Feasible, at: number): number => {
    const costs = costsOfStart(problem, visit, first!, at);
    const kept = before.get(visit.visit) === at ? problem.weights.moved : 0;
    return visit.weight - costs.debt - costs.spread - costs.seenLast + kept;
  };
  return {
    problem,
    feasible: new Map(feasible.map((one) => [one.visit.visit as string, one])),
    items: itemsById(problem),
    staff: new Map(problem.staff.map(({ staff }, s) => [staff, s])),
    worth: new Map(feasible.map((one) => [one, one.starts.map(({ at }) => worthAt(one, at))])),
  };
}

function addTo(all: Map<string, Held[]>, key: string, held: Held): void {
  const there = all.get(key);
  if (there) there.push(held);
  else all.set(key, [held]);
}

export class Occupied {
  readonly #ground: Ground;
  readonly #problem: DayProblem;
  readonly #held = new Map<string, Held>();
  readonly #ofStay = new Map<string, Held[]>();
  readonly #ofItem = new Map<string, Held[]>();
  readonly #busy: Slots[][];
  readonly #work: number[];

  constructor(ground: Ground) {
    this.#ground = ground;
    this.#problem = ground.problem;
    this.#busy = this.#problem.staff.map(() => []);
    this.#work = this.#problem.staff.map(() => 0);
  }

  get plan(): Placement[] {
    return [...this.#held.values()]
      .map(({ placement }) => placement)
      .toSorted((a, b) => a.start - b.start || (a.visit < b.visit ? -1 : 1));
  }
  has(visit: string): boolean {
    return this.#held.has(visit);
  }

  put(placement: Placement): void {
    const one = this.#ground.feasible.get(placement.visit)!;
    const until = placement.start + one.visit.length;
    const held = { one, placement, until };
    this.#held.set(placement.visit, held);
    addTo(this.#ofStay, one.visit.stay, held);
    for (const item of placement.items) addTo(this.#ofItem, item, held);
    for (const who of placement.crew) {
      const s = this.#ground.staff.get(who);
      if (s === undefined) continue;
      this.#busy[s]!.push({ from: placement.start, until });
      this.#work[s]! += one.visit.length;
    }
  }

  /** The best place for it; null: none. At the same worth the earlier one. `earliest`: the first there is. */
  best(one: Feasible, ignoring: Ignoring = {}, earliest = false): Room | null {
    let best: Room | null = null;
    const worth = this.#ground.worth.get(one)!;
    for (const [i, start] of one.starts.entries()) {
      // Whoever goes only takes away from it.
      if (best && worth[i]! <= best.worth + 1e-9) continue;
      const room = this.#roomAt(one, start, worth[i]!, ignoring);
      if (room && (!best || room.worth > best.worth + 1e-9)) best = room;
      if (best && earliest) return best;
    }
    return best;
  }

  /** What comes first is in the plan. */
  ready({ visit }: Feasible): boolean {
    return visit.after.every((id) => this.#held.has(id));
  }

  #roomAt(one: Feasible, { at, staff, sets }: Start, worth: number, ignoring: Ignoring): Room | null {
    const { visit } = one;
    const until = at + visit.length;
    if (!ignoring.own && !this.#stayAllows(one, at, until)) return null;
    const set = ignoring.items ? sets[0] : sets.find((k) => k === null || this.#itemsFree(one, k, at, until));
    if (set === undefined) return null;
    const free = ignoring.people ? staff : staff.filter((s) => !touches(at, until, this.#busy[s]!));
    const crew = this.#crew(one, free, at);
    if (!crew) return null;
    return {
      placement: {
        visit: visit.visit,
        start: at,
        crew: crew.of.map((s) => this.#problem.staff[s]!.staff),
        items: set === null ? [] : [...visit.sets![set]!],
      },
      worth: worth - crew.cost,
    };
  }

  #stayAllows({ visit }: Feasible, at: number, until: number): boolean {
    for (const { one, placement, until: end } of this.#ofStay.get(visit.stay) ?? []) {
      const later = placement.start >= until + restBetween(visit, one.visit);
      const earlier = at >= end + restBetween(one.visit, visit);
      if (!later && !earlier) return false;
      if (visit.after.includes(one.visit.visit) && !earlier) return false;
      if (one.visit.after.includes(visit.visit) && !later) return false;
    }
    return true;
  }

  #itemsFree({ visit }: Feasible, set: number, at: number, until: number): boolean {
    return visit.sets![set]!.every((id) => {
      const item = this.#ground.items.get(id)!;
      for (const { one, placement, until: end } of this.#ofItem.get(id) ?? []) {
        const other = one.visit.stay !== visit.stay;
        const free =
          at >= end + (other ? cleaningAfter(item, one.visit) : 0) ||
          placement.start >= until + (other ? cleaningAfter(item, visit) : 0);
        if (!free) return false;
      }
      return true;
    });
  }

  /** Those of their own bay first, then who has done least; one of them may lead. */
  #crew({ visit }: Feasible, free: readonly number[], at: number): { of: number[]; cost: number } | null {
    if (!isCrew(this.#problem, visit, free)) return null;
    const { weights, staff, previous } = this.#problem;
    const before = previous.find((p) => p.visit === visit.visit && p.start === at);
    const cost = (s: number): number =>
      (isOutside(this.#problem, s, visit) ? weights.otherBay : 0) +
      (before && !before.crew.includes(staff[s]!.staff) ? weights.otherCrew : 0);
    const order = free.toSorted((a, b) => cost(a) - cost(b) || this.#work[a]! - this.#work[b]! || a - b);
    const lead = order.find((s) => visit.lead.includes(staff[s]!.role))!;
    const of = [lead, ...order.filter((s) => s !== lead)].slice(0, visit.people);
    return { of, cost: of.reduce((sum, s) => sum + cost(s), 0) };
  }
}
