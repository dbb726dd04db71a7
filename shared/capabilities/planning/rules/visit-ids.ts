/** Ids of what a day asks for: made from the stay, so that the same need has the same id when it is asked again. */
import type { PlannedVisitId } from '../problem.ts';

export const idOf = (stay: string, end: string): PlannedVisitId =>
  `${stay.slice(0, 56)}-${end}` as PlannedVisitId;

/** Which time up of the day it is; null for a check. */
export function nthOf(visit: string): number | null {
  const found = /-g(\d+)$/.exec(visit);
  return found ? Number(found[1]) : null;
}

/** The first check of somebody who is expected and has no stay yet. */
export const isArrival = (visit: string): boolean => visit.endsWith('-a');
