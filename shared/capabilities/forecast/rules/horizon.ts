/** The stretch that is forecast, cut into quarters of an hour, on the ward's clock. */
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Period, WardCalendar } from '../../wards/context.ts';
import { localDate, resolveLocal } from '../../wards/rules/calendar.ts';
import { boundaryAt, wallAt } from '../../wards/rules/zone.ts';
import { SLOT_MINUTES } from './scenario.ts';

const SLOT = SLOT_MINUTES * MINUTE;
const DAY_MINUTES = 24 * 60;
export const SLOTS_OF_DAY = DAY_MINUTES / SLOT_MINUTES;

export interface Horizon {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly slots: number;
}

/** With less than this left of the ward day, the next one is looked at too: its first peak is near. */
const LEAST = 3 * HOUR;

/** From the quarter hour that runs at `t` until the ward day ends. */
export function horizonOf(calendar: WardCalendar, t: EpochMs): Horizon {
  const day = calendar.wardDay(t);
  const from = day.from + Math.floor((t - day.from) / SLOT) * SLOT;
  const to = day.to - t < LEAST ? calendar.wardDay(day.to).to : day.to;
  return { from, to, slots: Math.ceil((to - from) / SLOT) };
}

export const slotStart = ({ from }: Horizon, slot: number): EpochMs => from + slot * SLOT;
export const minutesInto = ({ from }: Horizon, at: EpochMs): number => (at - from) / MINUTE;

/** Which quarter of the wall clock's day an instant lies in, from 00:00; an hour shown twice counts as one. */
export const quarterOf = (zone: string, at: EpochMs): number =>
  Math.floor(((((wallAt(zone, at) / MINUTE) % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES) / SLOT_MINUTES);

/** Daily stretches like '12:00-12:45' that touch the horizon, oldest first. A time that a clock change skips is read as RFC 5545 says. */
export function stretchesIn(zone: string, daily: readonly string[], { from, to }: Horizon): Period[] {
  const found: Period[] = [];
  for (let noon = from - 24 * HOUR; noon <= to + 24 * HOUR; noon += 12 * HOUR) {
    const date = localDate(zone, noon);
    for (const stretch of daily) {
      const [begin = '', end = ''] = stretch.split('-');
      const period = { from: instant(zone, `${date}T${begin}`), to: instant(zone, `${date}T${end}`) };
      if (period.from < to && period.to > from && !found.some((one) => one.from === period.from))
        found.push(period);
    }
  }
  return found.toSorted((a, b) => a.from - b.from);
}

function instant(zone: string, local: string): EpochMs {
  const resolved = resolveLocal(zone, local, 'first');
  return 'at' in resolved ? resolved.at : boundaryAt(zone, Date.parse(`${local}:00Z`));
}
