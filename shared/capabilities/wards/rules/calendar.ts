/** The ward's clock: ward days, nights, and times of day entered and said, right across clock changes. */
import { ELAPSED_DAY, HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Period, WardCalendar, WardState } from '../context.ts';
import { rulesOf } from './ward-state.ts';
import { boundaryAt, instantsOf, isRepeated, offsetAt, sayOffset, wallAt, type Wall } from './zone.ts';

type Clock = Pick<WardState, 'zone' | 'wardDayFrom' | 'nightFrom' | 'nightTo'> &
  Partial<Pick<WardState, 'rules'>>;

/** '07:30' as milliseconds from midnight on the wall clock. */
const timeOfDay = (clock: string): number => {
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return hour * HOUR + minute * MINUTE;
};
const midnightOf = (wall: Wall): Wall => Math.floor(wall / ELAPSED_DAY) * ELAPSED_DAY;

/** Remembers the stretches it was asked for, newest first; a board asks for the same few again and again. */
function remember<T extends Period>(find: (at: EpochMs) => T): (at: EpochMs) => T {
  const kept: T[] = [];
  return (at) => {
    for (const period of kept) if (at >= period.from && at < period.to) return period;
    const period = find(at);
    kept.unshift(period);
    if (kept.length > 64) kept.pop();
    return period;
  };
}

/**
 * The ward day runs from one `wardDayFrom` to the next on the ward's clock; the night from
 * `nightFrom` to `nightTo` (the same time twice means that there is none); a shift from one of the
 * roster's times to the next. A boundary that a clock change skips is read by the offset before the
 * change; one that it repeats falls at the first (RFC 5545, 3.3.5).
 */
export function wardCalendar(ward: Clock): WardCalendar {
  const { zone } = ward;
  const dayFrom = timeOfDay(ward.wardDayFrom);
  const nightFrom = timeOfDay(ward.nightFrom);
  const nightTo = timeOfDay(ward.nightTo);
  const shiftsFrom = rulesOf({ rules: ward.rules ?? null }).roster.shiftsFrom.value.map(timeOfDay);

  /** [from, to) around `at` between the boundaries at these times of day. */
  const around = (at: EpochMs, times: readonly number[]): Period & { readonly startsAt: number } => {
    const midnight = midnightOf(wallAt(zone, at));
    let start = { at: -Infinity, time: 0 };
    let to = Infinity;
    for (let day = -2; day <= 2; day++) {
      for (const time of times) {
        const boundary = boundaryAt(zone, midnight + day * ELAPSED_DAY + time);
        if (boundary <= at) {
          if (boundary >= start.at) start = { at: boundary, time };
        } else if (boundary < to) to = boundary;
      }
    }
    return { from: start.at, to, startsAt: start.time };
  };

  const days = remember((at): Period => {
    const { from, to } = around(at, [dayFrom]);
    return { from, to };
  });
  const nights = remember((at) => {
    const none = nightFrom === nightTo;
    const { from, to, startsAt } = around(at, [nightFrom, nightTo]);
    return { from, to, answer: { is: !none && startsAt === nightFrom, until: to } };
  });
  const shifts = remember((at): Period => {
    const { from, to } = around(at, shiftsFrom);
    return { from, to };
  });
  return { zone, wardDay: days, night: (at) => nights(at).answer, shift: shifts };
}

const LOCAL = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})$/;

/** What the ward's clock meant, or why it cannot say. `no-such-time`: a date or time outside the calendar. */
export type ResolvedLocal =
  | { at: EpochMs }
  | { refused: 'skipped-hour' | 'repeated-hour' | 'no-such-time'; detail: string; remedy: string };

/** The instant of a time on the ward's clock, `local` like '2026-10-25T01:40'. */
export function resolveLocal(zone: string, local: string, repeated?: 'first' | 'second'): ResolvedLocal {
  const parts = LOCAL.exec(local);
  const wall = parts ? Date.parse(`${local}:00Z`) : Number.NaN;
  if (Number.isNaN(wall) || new Date(wall).toISOString().slice(0, 16) !== local) {
    return {
      refused: 'no-such-time',
      detail: `${local} is not a date and time of the calendar`,
      remedy: 'write the date and time like 2026-10-25T01:40',
    };
  }
  const [first, second] = instantsOf(zone, wall);
  const clock = local.slice(11);
  if (first === undefined) {
    const gapEnd = boundaryAt(zone, wall);
    return {
      refused: 'skipped-hour',
      detail: `${clock} did not happen on ${local.slice(0, 10)}: the clocks went forward`,
      remedy: `enter the time after the change (${sayTime(zone, gapEnd)} is the same moment on the new clock)`,
    };
  }
  if (second === undefined) return { at: first };
  if (repeated) return { at: repeated === 'first' ? first : second };
  return {
    refused: 'repeated-hour',
    detail: `${clock} happened twice on ${local.slice(0, 10)}: the clocks went back`,
    remedy: `say which: the first (${sayOffset(offsetAt(zone, first))}) or the second (${sayOffset(offsetAt(zone, second))})`,
  };
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** '08:40'; in an hour that the clock shows twice, '01:40 (UTC+02:00)'. */
export function sayTime(zone: string, at: EpochMs): string {
  const clock = new Date(wallAt(zone, at)).toISOString().slice(11, 16);
  return isRepeated(zone, at) ? `${clock} (${sayOffset(offsetAt(zone, at))})` : clock;
}

/** '25 Oct 08:40', with the offset where sayTime gives it. */
export function sayDayTime(zone: string, at: EpochMs): string {
  const wall = new Date(wallAt(zone, at));
  return `${wall.getUTCDate()} ${MONTHS[wall.getUTCMonth()]} ${sayTime(zone, at)}`;
}

/** The date on the ward's clock, '2026-10-25'. */
export const localDate = (zone: string, at: EpochMs): string =>
  new Date(wallAt(zone, at)).toISOString().slice(0, 10);
