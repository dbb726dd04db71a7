/**
 * A plan while it is put together: who and what is taken when, and where one more visit would go.
 * Used by the greedy plan and to say why something is not in a plan. Pure but for its own state.
 */
import { MOST_SLOTS, type DayProblem, type Placement } from '../problem.ts';
import { cleaningAfter, restBetween, type Feasible } from './feasible.ts';
import { among, bitsOf, type Asked, type Ground, type StartAsked } from './ground.ts';
import { above } from './worth.ts';

/** A visit may begin in the last slot and be this long. */
const SLOTS = MOST_SLOTS + 16;
/** Worth that differs by less is the same. */
const SAME = 1e-9;

/** What is left out of account when one asks what keeps a visit out. */
export interface Ignoring {
  readonly own?: boolean;
  readonly people?: boolean;
  readonly items?: boolean;
}
/** Where a visit goes, or would go. */
export interface Room {
  readonly one: Feasible;
  readonly placement: Placement;
  readonly until: number;
  /** Positions in `problem.staff`. */
  readonly crew: readonly number[];
  /** What the plan gains by it, fairness aside. */
  readonly worth: number;
}

function addTo(all: Map<string, Room[]>, key: string, held: Room): void {
  const there = all.get(key);
  if (there) there.push(held);
  else all.set(key, [held]);
}

function takeFrom(all: Map<string, Room[]>, key: string, held: Room): void {
  const there = all.get(key)!;
  there.splice(there.indexOf(held), 1);
}

export class Occupied {
  readonly #ground: Ground;
  readonly #problem: DayProblem;
  readonly #held = new Map<string, Room>();
  readonly #ofStay = new Map<string, Room[]>();
  readonly #ofItem = new Map<string, Room[]>();
  /** Who is at a visit, by slot. */
  readonly #busy = { low: new Int32Array(SLOTS), high: new Int32Array(SLOTS) };
  readonly #work: Float64Array;
  #worth = 0;

  constructor(ground: Ground) {
    this.#ground = ground;
    this.#problem = ground.problem;
    this.#work = new Float64Array(this.#problem.staff.length);
  }

  get plan(): Placement[] {
    return [...this.#held.values()]
      .map(({ placement }) => placement)
      .toSorted((a, b) => a.start - b.start || (a.visit < b.visit ? -1 : 1));
  }
  /** The same as the value of `worthOf`, kept up to date as visits come and go. */
  get value(): number {
    const { weights, previous } = this.#problem;
    return this.#worth - weights.fairness * above(this.#work) - weights.moved * previous.length;
  }
  has(visit: string): boolean {
    return this.#held.has(visit);
  }

  put(placement: Placement): void {
    const asked = this.#ground.asked.get(placement.visit)!;
    const crew = placement.crew.flatMap((who) => this.#ground.staff.get(who) ?? []);
    this.putAt(this.#room(asked, placement.start, crew, placement.items));
  }

  /** Where `best` found room for it, or where it was when it was taken out, as long as nothing else came there. */
  putAt(room: Room): void {
    const { one, placement } = room;
    this.#held.set(placement.visit, room);
    addTo(this.#ofStay, one.visit.stay, room);
    for (const item of placement.items) addTo(this.#ofItem, item, room);
    this.#count(room, 1);
  }

  /**
   * Takes it out again, and answers where it was; null: it was not in the plan. Only from a plan that
   * keeps the rules: who was at two visits at once would be free of both.
   */
  take(visit: string): Room | null {
    const room = this.#held.get(visit);
    if (!room) return null;
    this.#held.delete(visit);
    takeFrom(this.#ofStay, room.one.visit.stay, room);
    for (const item of room.placement.items) takeFrom(this.#ofItem, item, room);
    this.#count(room, -1);
    return room;
  }

  #count({ one, placement, until, crew, worth }: Room, by: 1 | -1): void {
    this.#worth += by * worth;
    for (const s of crew) this.#work[s]! += by * one.visit.length;
    const { low, high } = bitsOf(crew);
    for (let at = placement.start; at < until; at++) {
      this.#busy.low[at] = by === 1 ? this.#busy.low[at]! | low : this.#busy.low[at]! & ~low;
      this.#busy.high[at] = by === 1 ? this.#busy.high[at]! | high : this.#busy.high[at]! & ~high;
    }
  }

  #room(asked: Asked, start: number, crew: readonly number[], items: Placement['items']): Room {
    const { one } = asked;
    let worth = asked.worth[start]!;
    for (const s of crew) worth -= this.#costOf(asked, s, start);
    const placement = {
      visit: one.visit.visit,
      start,
      crew: crew.map((s) => this.#problem.staff[s]!.staff),
      items: [...items],
    };
    return { one, placement, until: start + one.visit.length, crew, worth };
  }

  /** The best place for it; null: none. At the same worth the earlier one. `earliest`: the first there is. */
  best(one: Feasible, ignoring: Ignoring = {}, earliest = false): Room | null {
    let best: Room | null = null;
    const asked = this.#ground.asked.get(one.visit.visit)!;
    for (const start of earliest ? asked.inTime : asked.byWorth) {
      // Whoever goes only takes away from it.
      if (best && asked.worth[start.at]! < best.worth - SAME) break;
      const room = this.#roomAt(asked, start, ignoring);
      if (!room) continue;
      if (earliest) return room;
      const more = best ? room.worth - best.worth : Infinity;
      if (more > SAME || (more >= -SAME && start.at < best!.placement.start)) best = room;
    }
    return best;
  }

  /** What comes first is in the plan. */
  ready({ visit }: Feasible): boolean {
    return visit.after.length === 0 || visit.after.every((id) => this.#held.has(id));
  }

  #roomAt(asked: Asked, start: StartAsked, ignoring: Ignoring): Room | null {
    const { one } = asked;
    const { at } = start;
    const until = at + one.visit.length;
    if (!ignoring.own && !this.#stayAllows(one, at, until)) return null;
    const crew = this.#crew(asked, start, ignoring.people === true);
    if (!crew) return null;
    const set = ignoring.items ? start.sets[0] : this.#freeSet(one, start, until);
    if (set === undefined) return null;
    return this.#room(asked, at, crew, set === null ? [] : one.visit.sets![set]!);
  }

  #freeSet(one: Feasible, { at, sets }: StartAsked, until: number): number | null | undefined {
    for (const set of sets) if (set === null || this.#itemsFree(one, set, at, until)) return set;
    return undefined;
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

  #costOf({ outside, previous }: Asked, s: number, at: number): number {
    if (previous?.start !== at || previous.crew.includes(this.#problem.staff[s]!.staff)) return outside[s]!;
    return outside[s]! + this.#problem.weights.otherCrew;
  }

  /** One who may lead, and another: those of their own bay first, then who has done least. Null: too few. */
  #crew(asked: Asked, { at, who, staff }: StartAsked, busyToo: boolean): number[] | null {
    const { length, people } = asked.one.visit;
    let { low, high } = who;
    for (let slot = at, until = busyToo ? at : at + length; slot < until; slot++) {
      low &= ~this.#busy.low[slot]!;
      high &= ~this.#busy.high[slot]!;
    }
    const lead = this.#first(asked, at, staff, low & asked.leads.low, high & asked.leads.high);
    if (lead < 0) return null;
    if (people === 1) return [lead];
    const alone = bitsOf([lead]);
    const other = this.#first(asked, at, staff, low & ~alone.low, high & ~alone.high);
    return other < 0 ? null : [lead, other];
  }

  /** Who of those in these bits goes first; -1: nobody. */
  #first(asked: Asked, at: number, staff: readonly number[], low: number, high: number): number {
    if (low === 0 && high === 0) return -1;
    let first = -1;
    let least = Infinity;
    for (const s of staff) {
      if (!among(s, low, high)) continue;
      const cost = this.#costOf(asked, s, at);
      if (cost > least || (cost === least && this.#work[s]! >= this.#work[first]!)) continue;
      first = s;
      least = cost;
    }
    return first;
  }
}
