/**
 * What is possible for one visit by itself: at which slots it may begin, who of those on could go, which
 * sets of equipment are free. What is impossible here is never handed to the solver. Pure.
 */
import type { BoundBy } from '../proposal.ts';
import type { DayProblem, NeededVisit, PlannedItem, PlannedStaff, Slots } from '../problem.ts';

export interface Start {
  readonly at: number;
  /** Positions in `problem.staff`. */
  readonly staff: readonly number[];
  /** Positions in `visit.sets`; [null] where no equipment is needed. */
  readonly sets: readonly (number | null)[];
}
export interface Feasible {
  readonly visit: NeededVisit;
  readonly starts: readonly Start[];
  /** First slot that its windows and the blocked times allow; from here its debt counts. Null: none. */
  readonly first: number | null;
  /** Why there is no start at all. */
  readonly none: BoundBy | null;
}

export const within = (from: number, until: number, all: readonly Slots[]): boolean =>
  all.some((one) => one.from <= from && until <= one.until);
export const touches = (from: number, until: number, all: readonly Slots[]): boolean =>
  all.some((one) => one.from < until && from < one.until);

/** Which slots a person could be sent in: on, no break, not promised. */
const freeStaff = (one: PlannedStaff, from: number, until: number): boolean =>
  within(from, until, one.on) && !touches(from, until, one.breaks) && !touches(from, until, one.taken);

/** The starts that windows and blocked times leave, whoever there is. */
export function timesOf(problem: DayProblem, visit: NeededVisit): number[] {
  const shut = problem.blocked
    .filter((b) => b.stay === visit.stay && (b.visits === null || b.visits.includes(visit.visit)))
    .map(({ at }) => at);
  const times: number[] = [];
  for (let at = 0; at + visit.length <= problem.grid.slots; at++) {
    const until = at + visit.length;
    if (within(at, until, visit.windows) && !touches(at, until, shut)) times.push(at);
  }
  return times;
}

export function feasibleOf(problem: DayProblem, visit: NeededVisit, items: ItemsById): Feasible {
  const times = timesOf(problem, visit);
  const first = times[0] ?? null;
  const none = (why: BoundBy): Feasible => ({ visit, starts: [], first, none: why });
  if (first === null) return none('no-time');
  if (visit.sets?.length === 0) return none('no-item-fits');
  const staffed = times
    .map((at) => ({ at, staff: whoCan(problem, visit, at) }))
    .filter(({ staff }) => isCrew(problem, visit, staff));
  if (staffed.length === 0) return none('nobody-on');
  const starts = staffed
    .map((one) => ({ ...one, sets: setsAt(visit, items, one.at) }))
    .filter(({ sets }) => sets.length > 0);
  return starts.length === 0 ? none('item-not-free') : { visit, starts, first, none: null };
}

export const feasibleVisits = (problem: DayProblem): Feasible[] => {
  const items = itemsById(problem);
  return problem.visits.map((visit) => feasibleOf(problem, visit, items));
};

export type ItemsById = ReadonlyMap<string, PlannedItem>;
export const itemsById = ({ items }: DayProblem): ItemsById =>
  new Map(items.map((one) => [one.item as string, one]));

function whoCan({ staff }: DayProblem, visit: NeededVisit, at: number): number[] {
  return staff.flatMap((one, s) =>
    visit.crew.includes(one.role) && freeStaff(one, at, at + visit.length) ? [s] : [],
  );
}

/** Whether enough of these can go, one of them in a role that may lead. */
export const isCrew = ({ staff }: DayProblem, visit: NeededVisit, some: readonly number[]): boolean =>
  some.length >= visit.people && some.some((s) => visit.lead.includes(staff[s]!.role));

function setsAt(visit: NeededVisit, items: ItemsById, at: number): (number | null)[] {
  if (visit.sets === null) return [null];
  return visit.sets.flatMap((set, k) =>
    set.every((id) => within(at, at + visit.length, items.get(id)?.free ?? [])) ? [k] : [],
  );
}

/** Slots that have to lie between the end of the one and the begin of the other, of one stay. */
export const restBetween = (before: NeededVisit, after: NeededVisit): number =>
  Math.max(before.restAfter, after.restBefore);

/** Slots an item is out of use after a visit before another person may have it. */
export const cleaningAfter = (item: PlannedItem, visit: NeededVisit): number =>
  visit.isolation ? item.cleaningAfterIsolation : item.cleaning;
