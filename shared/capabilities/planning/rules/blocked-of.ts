/** When nobody may come to a person, or not to get them up, with the reason. Pure. */
import type { Period } from '../../wards/context.ts';
import type { Blocked, NeededVisit } from '../problem.ts';
import { touched, type Grid } from './grid.ts';
import type { PlanInput, PlanStay } from './plan-input.ts';
import { wallWindows } from './windows.ts';

export function blockedOf(
  { stay }: PlanStay,
  { t, calendar, rules, ward }: PlanInput,
  grid: Grid,
  visits: readonly NeededVisit[],
): Blocked[] {
  const goals = visits.filter(({ kind }) => kind === 'goal').map(({ visit }) => visit);
  const at = (period: Period, why: Blocked['why'], of: Blocked['visits']): Blocked[] => {
    const slots = touched(period, grid);
    return slots && (of === null || of.length > 0) ? [{ stay: stay.stay, at: slots, why, visits: of }] : [];
  };
  const nights: Period[] = [];
  for (let from = grid.start; from < grid.end; from = calendar.night(from).until) {
    const { is, until } = calendar.night(from);
    if (is) nights.push({ from, to: until });
  }
  // Whatever keeps everybody in bed; passing its review time frees nobody.
  const held = stay.holds.some(({ scope }) => scope !== 'walking' && scope !== 'standing');
  const notNow = stay.mayStart?.word === 'not-now';
  return [
    ...(held || notNow ? at({ from: grid.start, to: grid.end }, 'hold', goals) : []),
    ...(stay.away
      ? at({ from: grid.start, to: Math.max(t, stay.away.dueBack ?? grid.end) }, 'off-ward', null)
      : []),
    ...(stay.leaving ? at({ from: stay.leaving.at, to: grid.end }, 'off-ward', null) : []),
    ...(stay.visit && stay.visit.until > t
      ? at({ from: stay.visit.from, to: stay.visit.until }, 'appointment', null)
      : []),
    ...wallWindows(rules.planning.meals.value, ward.zone, grid).flatMap((p) => at(p, 'meal', goals)),
    ...wallWindows(rules.planning.rest.value, ward.zone, grid).flatMap((p) => at(p, 'rest', goals)),
    ...nights.flatMap((p) => at(p, 'night', goals)),
  ];
}
