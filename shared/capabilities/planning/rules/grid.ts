/** The rest of the ward day in slots of 15 minutes, and periods as slots of it. Pure. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { Period, WardCalendar } from '../../wards/context.ts';
import { MOST_SLOTS, type Slots } from '../problem.ts';
import { SLOT } from './people-on.ts';

export interface Grid {
  readonly start: EpochMs;
  readonly end: EpochMs;
  readonly slots: number;
}

/**
 * From the quarter hour that begins next (counted from the start of the ward day) to the beginning of
 * the night; by night to the end of the ward day.
 */
export function gridFrom(t: EpochMs, calendar: WardCalendar): Grid {
  const day = calendar.wardDay(t);
  const start = day.from + Math.ceil((t - day.from) / SLOT) * SLOT;
  const night = calendar.night(t);
  const until = night.is ? day.to : Math.min(day.to, night.until);
  // At the very end of a day there is one slot left rather than none.
  const slots = Math.min(MOST_SLOTS, Math.max(1, Math.floor((until - start) / SLOT)));
  return { start, end: start + slots * SLOT, slots };
}

const cut = (from: number, until: number, { slots }: Grid): Slots | null => {
  const [a, b] = [Math.max(0, from), Math.min(slots, until)];
  return a < b ? { from: a, until: b } : null;
};
/** Every slot that the period touches. */
export const touched = ({ from, to }: Period, grid: Grid): Slots | null =>
  cut(Math.floor((from - grid.start) / SLOT), Math.ceil((to - grid.start) / SLOT), grid);
/** The slots that lie whole in it. */
export const inside = ({ from, to }: Period, grid: Grid): Slots | null =>
  cut(Math.ceil((from - grid.start) / SLOT), Math.floor((to - grid.start) / SLOT), grid);
