import type { Period, WardCalendar } from '@footboard/shared/capabilities/wards/context';
import { boundaryAt } from '@footboard/shared/capabilities/wards/rules/zone';

/** The ward day that began on this date: whatever the hour it begins at, 23:59 of the date lies in it. */
export const wardDayOf = (calendar: WardCalendar, date: string): Period =>
  calendar.wardDay(boundaryAt(calendar.zone, Date.parse(`${date}T23:59:00Z`)));
