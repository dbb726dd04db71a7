/**
 * Offsets of a time zone from UTC, from the IANA tz database (through temporal-polyfill). A stretch
 * with one offset is looked up once and kept; inside it a wall clock is plain arithmetic, cheap
 * enough for every row of a board.
 */
import { Temporal } from 'temporal-polyfill';
import { ELAPSED_DAY, MINUTE, type EpochMs } from '../../../kernel/times.ts';

/** [from, to): one offset, in milliseconds east of UTC. */
interface Stretch {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly offset: number;
}

const known = new Map<string, Stretch[]>();

function stretchAt(zone: string, at: EpochMs): Stretch {
  let stretches = known.get(zone);
  if (!stretches) known.set(zone, (stretches = []));
  for (const s of stretches) if (at >= s.from && at < s.to) return s;
  const here = Temporal.Instant.fromEpochMilliseconds(Math.floor(at) + 1).toZonedDateTimeISO(zone);
  const previous = here.getTimeZoneTransition('previous');
  const next = Temporal.Instant.fromEpochMilliseconds(Math.floor(at))
    .toZonedDateTimeISO(zone)
    .getTimeZoneTransition('next');
  const stretch: Stretch = {
    from: previous ? previous.epochMilliseconds : -Infinity,
    to: next ? next.epochMilliseconds : Infinity,
    offset: offsetOf(zone, at),
  };
  stretches.push(stretch);
  return stretch;
}

const offsetOf = (zone: string, at: EpochMs): number =>
  Temporal.Instant.fromEpochMilliseconds(Math.floor(at)).toZonedDateTimeISO(zone).offsetNanoseconds / 1e6;

export const offsetAt = (zone: string, at: EpochMs): number => stretchAt(zone, at).offset;

/** A wall clock as milliseconds, as if it were UTC. */
export type Wall = number;
export const wallAt = (zone: string, at: EpochMs): Wall => at + offsetAt(zone, at);

/** Every instant that shows this wall clock: none in a skipped hour, two in a repeated one, else one. */
export function instantsOf(zone: string, wall: Wall): readonly EpochMs[] {
  const early = wall - offsetAt(zone, wall - ELAPSED_DAY);
  const late = wall - offsetAt(zone, wall + ELAPSED_DAY);
  const found = [early, late].filter((at) => wallAt(zone, at) === wall);
  return found.length === 2 && found[0] === found[1] ? [found[0]!] : found.toSorted((a, b) => a - b);
}

/**
 * The instant of a wall clock for a boundary: the first of two; one that a change skips is read by
 * the offset before it, so that it comes as long after midnight as on any other day (RFC 5545, 3.3.5).
 */
export function boundaryAt(zone: string, wall: Wall): EpochMs {
  return instantsOf(zone, wall)[0] ?? wall - offsetAt(zone, wall - ELAPSED_DAY);
}

/** True when the clock shows this hour twice, so that it needs its offset beside it. */
export const isRepeated = (zone: string, at: EpochMs): boolean =>
  instantsOf(zone, wallAt(zone, at)).length > 1;

const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
export function sayOffset(offset: number): string {
  const minutes = Math.abs(offset) / MINUTE;
  return `UTC${offset < 0 ? '-' : '+'}${two(minutes / 60)}:${two(minutes % 60)}`;
}
