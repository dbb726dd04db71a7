/**
 * Instants on the ward's clock, through the browser's own time zone rules (no library on the wall).
 * In the hour that a clock change repeats the offset is written beside the time.
 */
import { speaks } from '../i18n/language.ts';
import { remembered } from './remembered.ts';
import { say } from './say.ts';

const MINUTE = 60_000;
/** How a language writes dates. English in the order of most of the world, day before month. */
const LOCALE = { en: 'en-GB', de: 'de-DE' } as const;
const formats = new Map<string, Intl.DateTimeFormat>();

function format(zone: string, kind: 'time' | 'offset' | 'day'): Intl.DateTimeFormat {
  const key = `${speaks.value} ${zone} ${kind}`;
  let known = formats.get(key);
  if (!known) {
    const options: Intl.DateTimeFormatOptions =
      kind === 'time'
        ? { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }
        : kind === 'offset'
          ? { timeZoneName: 'shortOffset', hour: '2-digit', hourCycle: 'h23' }
          : { weekday: 'short', day: 'numeric', month: 'short' };
    known = new Intl.DateTimeFormat(LOCALE[speaks.value], { ...options, timeZone: zone });
    formats.set(key, known);
  }
  return known;
}

/** Written once a minute of the clock: a ward's change asks for hundreds, and each is dear. */
const writtenTimes = remembered<string>(800);
const written = (kind: string, at: number, zone: string, write: () => string): string =>
  writtenTimes(`${speaks.value} ${kind} ${zone} ${Math.floor(at / MINUTE)}`, write);

const clockOnly = (at: number, zone: string): string => format(zone, 'time').format(at);

/** True when the ward's clock shows this time twice: the same reading half an hour or an hour away. */
const repeated = (at: number, zone: string): boolean =>
  [-60, -30, 30, 60].some((minutes) => clockOnly(at + minutes * MINUTE, zone) === clockOnly(at, zone));

/** "14:05", or "01:40 (UTC+1)" in a repeated hour. */
export const wardTime = (at: number, zone: string): string =>
  written('time', at, zone, () => timeWithOffset(at, zone));

function timeWithOffset(at: number, zone: string): string {
  const time = clockOnly(at, zone);
  if (!repeated(at, zone)) return time;
  const offset = format(zone, 'offset')
    .formatToParts(at)
    .find((part) => part.type === 'timeZoneName')
    ?.value.replace('GMT', 'UTC')
    .replace(/^UTC$/, 'UTC+0');
  return offset ? `${time} (${offset})` : time;
}

/** "Wed 25 Nov", "Mi 25. Nov". */
export const wardDate = (at: number, zone: string): string =>
  written('date', at, zone, () => format(zone, 'day').format(at).replace('.,', '').replace(',', ''));

const weekday = (at: number, zone: string): string =>
  written('weekday', at, zone, () =>
    format(zone, 'day')
      .formatToParts(at)
      .find((part) => part.type === 'weekday')!
      .value.replace('.', ''),
  );

/** The time alone on the same date as `now`, else with its date. */
export const wardMoment = (at: number, zone: string, now: number): string =>
  wardDate(at, zone) === wardDate(now, zone)
    ? wardTime(at, zone)
    : `${wardDate(at, zone)} ${wardTime(at, zone)}`;

/** As short as it is clear: the time alone today, with the weekday within six days, else with the date. */
export function wardDayTime(at: number, zone: string, now: number): string {
  const moment = wardMoment(at, zone, now);
  if (Math.abs(at - now) > 6 * 24 * 60 * MINUTE || moment === wardTime(at, zone)) return moment;
  return `${weekday(at, zone)} ${wardTime(at, zone)}`;
}

/** Elapsed time in one unit, rounded down so that nothing looks older or fresher than its unit says: "now", "12 min", "3 h", "2 days". */
export function elapsed(ms: number): string {
  const minutes = Math.floor(ms / MINUTE);
  if (minutes < 1) return say('now');
  if (minutes < 60) return say('minutes', { n: minutes });
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return say('hours', { n: hours });
  return say('days', { n: Math.floor(hours / 24) });
}

/** "just now", "12 min ago", "3 h ago". An instant ahead of the clock is "just now". */
export const ago = (at: number, now: number): string => {
  const passed = Math.max(0, now - at);
  return passed < MINUTE ? say('just-now') : say('ago', { time: elapsed(passed) });
};
