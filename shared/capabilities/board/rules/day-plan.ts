/** The accepted plan of the ward day on the board: each person's visits beside their row, and the day in numbers. Pure. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { AcceptedPlan } from '../../planning/rules/accepted.ts';
import { plannedOf, type PlannedOfStay } from '../../planning/rules/planned.ts';
import { isArrival } from '../../planning/rules/visit-ids.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import { localDate, sayTime } from '../../wards/rules/calendar.ts';
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
  { t, ward, plan, calendar }: { t: EpochMs; ward: WardState; plan: AcceptedPlan; calendar: WardCalendar },
  note: (at: EpochMs) => void,
): { readonly view: StayView; readonly planned: PlannedOfStay } {
  const say = (at: EpochMs): string => sayTime(calendar.zone, at);
  const planned = plannedOf(view, facts, { t, ward, plan, say }, note);
  const { visits } = planned;
  return { view: visits.length === 0 ? view : { ...view, planned: [...visits] }, planned };
}

/** Expected arrivals have no row: their first check counts until its time is over. */
export function dayPlanOf(
  plan: AcceptedPlan | null,
  rows: readonly PlannedOfStay[],
  t: EpochMs,
  note: (at: EpochMs) => void,
): NonNullable<BoardView['dayPlan']> | null {
  if (!plan) return null;
  const sum = (of: (row: PlannedOfStay) => number): number => rows.reduce((all, row) => all + of(row), 0);
  const arrivals = plan.placements.filter(({ visit, start }) => isArrival(visit) && start > t);
  for (const { start } of arrivals) note(start);
  return {
    at: plan.at,
    by: plan.by,
    ahead: sum(({ visits, taken }) => visits.length + taken) + arrivals.length,
    held: sum(({ visits }) => visits.filter(({ stopped }) => stopped !== null).length),
    passed: sum(({ passed }) => passed),
    unplaced: plan.unplaced?.length ?? null,
  };
}
