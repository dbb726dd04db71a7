/** The readings of a pressure set in the order in which they were taken, and what is not there. */
import type { EpochMs } from '../../../kernel/times.ts';
import { MINUTE, toEpoch } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import type { Protocol } from './protocol.ts';

type Pressure = Extract<Reading, { kind: 'pressure' }>;
export type PressureSet = Protocol['pressureSet'];
export type RisingLimits = RulesDocument['rising'];

/** One pressure as it was taken: posture, minutes in it, mmHg, and when. */
export interface RisingReading {
  readonly posture: Pressure['posture'];
  /** Minutes in that posture; null when nobody said. */
  readonly minute: number | null;
  readonly systolic: number;
  readonly diastolic: number;
  readonly heartRate: number | null;
  readonly at: EpochMs;
  /** Which time of standing up it belongs to, from 1; 0 for a reading at rest. */
  readonly series: number;
}

/** Pressures in order of time; those of one instant stay in the order in which they were written down. */
export function pressuresOf(readings: readonly Reading[]): readonly RisingReading[] {
  const inOrder = readings
    .filter((r) => r.kind === 'pressure')
    .map((r) => ({
      posture: r.posture,
      minute: r.minute ?? null,
      systolic: r.systolic,
      diastolic: r.diastolic,
      heartRate: r.heartRate ?? null,
      at: toEpoch(r.at),
    }))
    .toSorted((a, b) => a.at - b.at);
  let series = 0;
  let minutes = new Set<number | null>();
  let rested = true;
  return inOrder.map((r) => {
    if (r.posture !== 'standing') {
      rested = true;
      return { ...r, series: 0 };
    }
    // Rest in between, or the same minute measured again, is a new standing up. Minutes out of order are not:
    // figures are often written down later than they were taken.
    if (rested || (r.minute !== null && minutes.has(r.minute))) {
      series += 1;
      minutes = new Set();
      rested = false;
    }
    minutes.add(r.minute);
    return { ...r, series };
  });
}

export const standingOf = (taken: readonly RisingReading[]): readonly RisingReading[] =>
  taken.filter((r) => r.series > 0);

/** How far a reading's own time may lie from the minute said of it. Common practice, no source. */
const TIME_FITS = 5 * MINUTE;

/** Why the reading's own time cannot be that of the minute said: its others, or a rest, say another rising. */
function fitsItsTime(r: RisingReading, taken: readonly RisingReading[]): boolean {
  const rose = r.at - (r.minute ?? 0) * MINUTE;
  const first = taken.find((other) => other.series === r.series)!;
  const rested = taken.findLast((other) => other.series === 0 && other.at <= first.at);
  if (rested && rose < rested.at - TIME_FITS) return false;
  if (first.minute === null) return rose <= first.at + TIME_FITS;
  return Math.abs(rose - (first.at - first.minute * MINUTE)) <= TIME_FITS;
}

/** Minutes standing that the set demands and that were not measured in that one standing up, in words. */
function missingMinutes(taken: readonly RisingReading[], series: number, set: PressureSet): string[] {
  const there = taken.filter((r) => r.series > 0 && r.series === series);
  return set.standingMinutes.flatMap((minute) => {
    const said = there.filter((r) => r.minute !== null && Math.abs(r.minute - minute) <= set.within);
    if (said.some((r) => fitsItsTime(r, taken))) return [];
    return [`standing ${minute} min${said.length > 0 ? ' (its time does not fit)' : ''}`];
  });
}

/** Whether every minute standing that the set demands was measured in that one standing up. */
export const isWhole = (taken: readonly RisingReading[], series: number, set: PressureSet): boolean =>
  missingMinutes(taken, series, set).length === 0;

/** The reading at rest that this standing up lacks, in words: it counts before it, and not long before. */
function missingRest(
  taken: readonly RisingReading[],
  series: number,
  set: PressureSet,
  limits: RisingLimits,
): string[] {
  const what = set.lying ? 'lying' : 'lying or seated';
  const atRest = taken.filter((r) => r.posture === 'lying' || (r.posture === 'seated' && !set.lying));
  if (atRest.length === 0) return [what];
  const up = taken.find((r) => r.series > 0 && r.series === series)?.at;
  if (up === undefined) return [];
  const last = atRest.findLast((r) => r.at <= up);
  if (!last) return [`${what} before standing`];
  const within = limits.restingWithinMinutes.value;
  return up - last.at <= within * MINUTE ? [] : [`${what} before standing (at most ${within} min)`];
}

/** What each standing up lacks, the last one first; of somebody who did not stand up, what that lacks. */
function missingByStanding(taken: readonly RisingReading[], set: PressureSet, limits: RisingLimits) {
  const last = taken.reduce((most, r) => Math.max(most, r.series), 0);
  const standings = Array.from({ length: Math.max(last, 1) }, (_, i) => Math.max(last, 1) - i);
  return standings.map((series) => ({
    series,
    missing: [...missingRest(taken, series, set, limits), ...missingMinutes(taken, series, set)],
  }));
}

/**
 * Readings of a pressure set that are not there, in words. They must all be of one standing up: one
 * minute of the first and another of the second are no whole set. A fall is measured from a reading at
 * rest, so one is missing also when the set does not ask for a lying one; and one taken only afterwards,
 * or long before, shows no "no": that the person rested before rising is what the source asks for (CDC,
 * Measuring Orthostatic Blood Pressure, 2017: lie 5 min, then stand).
 */
export function missingReadings(
  readings: readonly Reading[],
  set: PressureSet,
  limits: RisingLimits,
): readonly string[] {
  const [last, ...earlier] = missingByStanding(pressuresOf(readings), set, limits).map((s) => s.missing);
  return earlier.reduce((fewest, here) => (here.length < fewest.length ? here : fewest), last!);
}

/** Judged by the limits of the first seconds, which let a larger fall pass. */
export const isInitial = (r: RisingReading, limits: RisingLimits): boolean =>
  r.minute !== null && r.minute * 60 <= limits.initialWithinSeconds.value;

/** Whether one whole standing up was measured beyond the first seconds: less shows no fall gone. */
export const outlastsInitial = (
  taken: readonly RisingReading[],
  set: PressureSet,
  limits: RisingLimits,
): boolean =>
  missingByStanding(taken, set, limits).some(
    ({ series, missing }) =>
      missing.length === 0 && taken.some((r) => r.series === series && !isInitial(r, limits)),
  );

export const sayMinute = (minute: number | null): string =>
  minute === null ? 'standing' : `${minute} min standing`;
/** "130/80 lying", "110/78 at 1 min standing". */
export const sayReading = (r: RisingReading): string =>
  `${r.systolic}/${r.diastolic} ${r.posture === 'standing' ? `at ${sayMinute(r.minute)}` : r.posture}`;
