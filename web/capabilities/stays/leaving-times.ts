/** Days that are asked for most when somebody says when a person leaves, on the ward's clock. */
import { HOUR, type EpochMs } from '@footboard/shared/kernel/times';
import { localDate, resolveLocal } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { Fault } from '../entry/check.ts';

/** Late in the morning of the days to come, and this afternoon. Ours, no source: a tap, not a rule. */
const MORNING = '11:00';
const AFTERNOON = '16:00';
const DAYS = [
  { day: 'today', ahead: 0, time: AFTERNOON },
  { day: 'tomorrow', ahead: 1, time: MORNING },
  { day: 'after', ahead: 2, time: MORNING },
] as const;
export type LeavingDay = (typeof DAYS)[number]['day'];

/** The date `days` after the ward's today. Counted on the calendar, so that a clock change moves nothing. */
export function dateAhead(zone: string, now: EpochMs, days: number): string {
  const noonUtc = Date.parse(`${localDate(zone, now)}T12:00:00Z`);
  return new Date(noonUtc + days * 24 * HOUR).toISOString().slice(0, 10);
}

/** Those of them that are still ahead, each as it would be typed. */
export const leavingTimes = (zone: string, now: EpochMs) =>
  DAYS.map(({ day, ahead, time }) => ({ day, time, local: `${dateAhead(zone, now, ahead)}T${time}` })).filter(
    ({ local }) => {
      const at = instantOf(zone, local);
      return typeof at === 'number' && at > now;
    },
  );

/** What was typed on the ward's clock as an instant; or what is wrong with it. Of a repeated hour the first counts: it is an expectation. */
export function instantOf(zone: string, local: string): EpochMs | Fault {
  const resolved = resolveLocal(zone, local, 'first');
  return 'at' in resolved
    ? resolved.at
    : { pointer: '/at', detail: resolved.detail, remedy: resolved.remedy };
}
