/** A board with an accepted day plan for one person in bed 1, and what it shows of it. */
import { toIso } from '../../../kernel/times.ts';
import { addRecord, emptyBoard, foldBoard, viewBoard, type BoardState } from './board.ts';
import { begun, check, hours, setUpWard, WARD, WardLog, type Told } from './history.testkit.ts';

const DAY = '2026-10-24';
export const visit = (end: string, start: number, more: object = {}) => ({
  visit: `stay-1-${end}`,
  stay: 'stay-1',
  kind: end === 'c' ? 'check' : 'goal',
  start: toIso(hours(start)),
  minutes: 30,
  crew: ['staff-aide'],
  items: [],
  ...more,
});
export const accepted = (at: number, placements: object[], more: object = {}): Told => ({
  type: 'day-plan-accepted',
  at,
  role: 'charge-nurse',
  payload: {
    day: DAY,
    placements,
    hash: 'a'.repeat(64),
    weightsVersion: 1,
    how: 'solver',
    gap: null,
    edited: false,
    ...more,
  },
});

export const LIFT: Told = {
  type: 'item-added',
  payload: {
    item: 'i1',
    is: {
      label: 'Lift 1',
      kind: 'floor-lift',
      model: 'Model A',
      powered: true,
      safeLoadKg: 200,
      barLoadKg: 180,
      attachment: 'loops',
      covers: [],
      style: null,
      fitsFromKg: null,
      fitsToKg: null,
      worksWithModels: [],
      worksWithItems: [],
      inspectionDue: null,
      home: 'Store room',
    },
  },
};

export type Entered = Told & { readonly on?: 'ward' | 'item' };

/** One person in bed 1, checked as far as walking half an hour after arrival; then what is told. */
export function given(...told: readonly Entered[]): BoardState {
  const log = new WardLog();
  setUpWard(log);
  for (const [staff, role] of [
    ['staff-aide', 'aide'],
    ['staff-nurse', 'nurse'],
  ]) {
    const payload = { staff, role, name: { ref: `name-${staff}` } };
    log.add(`ward/${WARD}`, { type: 'staff-member-added', payload });
  }
  log.add('stay/stay-1', begun());
  log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
  const all: readonly Entered[] = [check('walk', 0.5), ...told];
  for (const { on, ...one } of all) {
    const ofWard = on === 'ward' || one.type === 'day-plan-accepted';
    log.add(on === 'item' ? 'item/i1' : ofWard ? `ward/${WARD}` : 'stay/stay-1', one);
  }
  const state = emptyBoard(WARD);
  const { missing } = foldBoard(state, log.events);
  for (const stay of missing) addRecord(state, log.record(stay));
  return state;
}
export const stayAt = (state: BoardState, t: number) => viewBoard(state, hours(t)).board.beds[0]!.stay!;
export const plannedAt = (state: BoardState, t: number) =>
  (stayAt(state, t).planned ?? []).map(({ visit: id, stopped }) => [id, stopped?.words ?? null]);
export const dayAt = (state: BoardState, t: number) => viewBoard(state, hours(t)).board.dayPlan;
