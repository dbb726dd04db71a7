/** What stays the same of a day however its visits are placed, worked out once. Pure. */
import { MOST_SLOTS, type DayProblem, type Placement } from '../problem.ts';
import { itemsById, type Feasible, type ItemsById, type Start } from './feasible.ts';
import { costsOfStart, isOutside } from './worth.ts';

/** Some of the staff, one bit each by position in `problem.staff` (at most 60). */
export interface Bits {
  readonly low: number;
  readonly high: number;
}
const WORD = 32;
export function bitsOf(staff: readonly number[]): Bits {
  let [low, high] = [0, 0];
  for (const s of staff) {
    if (s < WORD) low |= 1 << s;
    else high |= 1 << (s - WORD);
  }
  return { low, high };
}
/** Whether this one is among those of the bits. */
export const among = (s: number, low: number, high: number): boolean =>
  ((s < WORD ? low >>> s : high >>> (s - WORD)) & 1) === 1;

export interface StartAsked extends Start {
  readonly who: Bits;
}

/** One visit of the day with what is asked of it thousands of times. */
export interface Asked {
  readonly one: Feasible;
  /** What it is worth that it begins at a slot, whoever goes; by slot. */
  readonly worth: Float64Array;
  readonly inTime: readonly StartAsked[];
  /** Its starts, what is worth most first; at the same worth the earlier one. */
  readonly byWorth: readonly StartAsked[];
  /** What it costs that this one goes, by position in `problem.staff`. */
  readonly outside: Float64Array;
  readonly leads: Bits;
  readonly previous: Placement | undefined;
}

/** What stays the same however the visits are placed: worked out once for plans tried by the thousand. */
export interface Ground {
  readonly problem: DayProblem;
  readonly asked: ReadonlyMap<string, Asked>;
  readonly items: ItemsById;
  readonly staff: ReadonlyMap<string, number>;
}
export function groundOf(problem: DayProblem, feasible: readonly Feasible[]): Ground {
  const { staff, weights } = problem;
  const before = new Map(problem.previous.map((one) => [one.visit as string, one]));
  const asked = (one: Feasible): Asked => {
    const { visit, first } = one;
    const previous = before.get(visit.visit);
    const worth = Float64Array.from({ length: MOST_SLOTS + 1 }, (_, at) => {
      const costs = costsOfStart(problem, visit, first ?? at, at);
      const kept = previous?.start === at ? weights.moved : 0;
      return visit.weight - costs.debt - costs.spread - costs.seenLast + kept;
    });
    const outside = Float64Array.from(staff, (_, s) => (isOutside(problem, s, visit) ? weights.otherBay : 0));
    const inTime = one.starts.map((start) => ({ ...start, who: bitsOf(start.staff) }));
    const byWorth = inTime.toSorted((a, b) => worth[b.at]! - worth[a.at]! || a.at - b.at);
    const leads = bitsOf(staff.flatMap(({ role }, s) => (visit.lead.includes(role) ? [s] : [])));
    return { one, worth, inTime, byWorth, outside, leads, previous };
  };
  return {
    problem,
    asked: new Map(feasible.map((one) => [one.visit.visit as string, asked(one)])),
    items: itemsById(problem),
    staff: new Map(staff.map((one, s) => [one.staff, s])),
  };
}
