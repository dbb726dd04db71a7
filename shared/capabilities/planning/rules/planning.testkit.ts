/** Small problems said in a few words. Everybody is on all day and may do everything unless said otherwise. */
import type { ItemId } from '../../aids/values.ts';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import {
  dayProblem,
  type DayProblem,
  type KeptPlacement,
  type NeededVisit,
  type Placement,
  type PlannedItem,
  type PlannedStaff,
  type PlannedVisitId,
  type Slots,
} from '../problem.ts';

export const SLOTS = 8;
export const slots = (from: number, until: number): Slots => ({ from, until });
export const id = (name: string): PlannedVisitId => name as PlannedVisitId;

/** A visit named like its stay, unless the stay is given. */
export function visit(
  name: string,
  is: Partial<Omit<NeededVisit, 'stay' | 'sets'>> & Loose = {},
): NeededVisit {
  return {
    visit: name,
    stay: name,
    bay: 'A',
    isolation: false,
    kind: 'goal',
    activity: 'chair',
    aid: 'none',
    firstTimeUp: false,
    people: 1,
    lead: ['aide', 'nurse'],
    crew: ['aide', 'nurse'],
    length: 1,
    windows: [slots(0, SLOTS)],
    restBefore: 0,
    restAfter: 0,
    after: [],
    sets: null,
    weight: 10,
    debt: 0,
    around: null,
    seenLast: false,
    ...is,
  } as NeededVisit;
}
interface Loose {
  readonly stay?: string;
  readonly sets?: readonly (readonly string[])[] | null;
}

export const who = (staff: string, is: Partial<PlannedStaff> = {}): PlannedStaff => ({
  staff: staff as StaffId,
  role: 'aide',
  on: [slots(0, SLOTS)],
  breaks: [],
  taken: [],
  bays: [],
  ...is,
});
export const piece = (item: string, is: Partial<PlannedItem> = {}): PlannedItem => ({
  item: item as ItemId,
  aid: 'sling-lift',
  free: [slots(0, SLOTS)],
  cleaning: 0,
  cleaningAfterIsolation: 0,
  ...is,
});
export const stop = (
  stay: string,
  from: number,
  until: number,
  why: DayProblem['blocked'][number]['why'] = 'meal',
  visits: readonly string[] | null = null,
): DayProblem['blocked'][number] => ({
  stay: stay as StayId,
  at: slots(from, until),
  why,
  visits: visits as PlannedVisitId[] | null,
});
export const at = (
  name: string,
  start: number,
  crew: readonly string[] = ['ana'],
  items: readonly string[] = [],
): Placement => ({ visit: id(name), start, crew: crew as StaffId[], items: items as ItemId[] });
export const kept = (p: Placement, pinned = false): KeptPlacement => ({ ...p, pinned });

export function problem(is: Partial<DayProblem>): DayProblem {
  return dayProblem.parse({
    grid: { start: 0, slots: SLOTS },
    visits: [],
    blocked: [],
    staff: [who('ana'), who('ben')],
    items: [],
    weights: { version: 1, otherBay: 0, seenLast: 0, spread: 0, fairness: 0, moved: 0, otherCrew: 0 },
    previous: [],
    ...is,
  });
}
