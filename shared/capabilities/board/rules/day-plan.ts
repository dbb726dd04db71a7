/** The accepted plan of the ward day on the board: each person's visits beside their row, and the day in numbers. Pure. */
import { MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { ItemState } from '../../aids/rules/item-state.ts';
import type { ItemId } from '../../aids/values.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { AcceptedPlan } from '../../planning/rules/accepted.ts';
import { plannedOf, type PlannedOfStay } from '../../planning/rules/planned.ts';
import { isArrival } from '../../planning/rules/visit-ids.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import { localDate, sayTime } from '../../wards/rules/calendar.ts';
import { rulesOf } from '../../wards/rules/ward-state.ts';
import type { BoardView, StayView } from '../view.ts';

/**
 * The plan of the ward day that `t` lies in; null where none is accepted by then. `note` is told when it
 * begins to count; the end of a ward day is an instant that every board names.
 */
export function planInForce(
  { dayPlan, zone }: WardState,
  calendar: WardCalendar,
  t: EpochMs,
  note: (at: EpochMs) => void = () => undefined,
): AcceptedPlan | null {
  if (!dayPlan) return null;
  if (dayPlan.at > t) {
    note(dayPlan.at);
    return null;
  }
  return dayPlan.day === localDate(zone, calendar.wardDay(t).from) ? dayPlan : null;
}

export function withPlanned(
  view: StayView,
  facts: readonly Fact[],
  input: {
    readonly t: EpochMs;
    readonly ward: WardState;
    readonly items: ReadonlyMap<ItemId, ItemState>;
    readonly plan: AcceptedPlan;
    readonly calendar: WardCalendar;
  },
  note: (at: EpochMs) => void,
): { readonly view: StayView; readonly planned: PlannedOfStay } {
  const { t, ward, items, plan, calendar } = input;
  const say = (at: EpochMs): string => sayTime(calendar.zone, at);
  const today = localDate(ward.zone, calendar.wardDay(t).from);
  const rules = rulesOf(ward).aids;
  const planned = plannedOf(view, facts, { t, ward, items, today, rules, plan, say }, note);
  const { visits } = planned;
  return { view: visits.length === 0 ? view : { ...view, planned: [...visits] }, planned };
}

/** Expected arrivals have no row: what is planned for them stands beside the beds until its time is over. */
function arrivalsOf(
  { placements }: AcceptedPlan,
  { notExpected }: Pick<WardState, 'notExpected'>,
  t: EpochMs,
  note: (at: EpochMs) => void,
): NonNullable<NonNullable<BoardView['dayPlan']>['arrivals']> {
  return placements
    .filter(({ visit, stay }) => isArrival(visit) && !notExpected.has(stay))
    .flatMap(({ visit, stay, start, minutes, crew }) => {
      const until = start + minutes * MINUTE;
      if (until <= t) return [];
      note(until);
      return [{ visit, expected: stay, from: start, until, crew: [...crew] }];
    })
    .toSorted((a, b) => a.from - b.from || (a.visit < b.visit ? -1 : 1));
}

export function dayPlanOf(
  plan: AcceptedPlan | null,
  rows: readonly PlannedOfStay[],
  ward: Pick<WardState, 'notExpected'>,
  t: EpochMs,
  note: (at: EpochMs) => void,
): NonNullable<BoardView['dayPlan']> | null {
  if (!plan) return null;
  const sum = (of: (row: PlannedOfStay) => number): number => rows.reduce((all, row) => all + of(row), 0);
  const arrivals = arrivalsOf(plan, ward, t, note);
  return {
    at: plan.at,
    by: plan.by,
    ahead: sum(({ visits, taken }) => visits.length + taken) + arrivals.length,
    held: sum(({ visits }) => visits.filter(({ stopped }) => stopped !== null).length),
    passed: sum(({ passed }) => passed),
    ...(arrivals.length > 0 ? { arrivals } : {}),
    unplaced: plan.unplaced?.length ?? null,
  };
}
