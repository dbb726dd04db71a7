/** The readings of a pressure set in the order in which they were taken, and what is not there. */
import type { EpochMs } from '../../../kernel/times.ts';
import { toEpoch } from '../../../kernel/times.ts';
import type { Reading } from '../values.ts';
import type { Protocol } from './protocol.ts';

type Pressure = Extract<Reading, { kind: 'pressure' }>;
export type PressureSet = Protocol['pressureSet'];

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

/** Minutes standing that the set demands and that were not measured in that one standing up. */
function missingMinutes(standing: readonly RisingReading[], series: number, set: PressureSet): number[] {
  const there = standing.filter((r) => r.series === series);
  return set.standingMinutes.filter(
    (minute) => !there.some((r) => r.minute !== null && Math.abs(r.minute - minute) <= set.within),
  );
}

export const isWhole = (standing: readonly RisingReading[], series: number, set: PressureSet): boolean =>
  missingMinutes(standing, series, set).length === 0;

/**
 * Readings of a pressure set that are not there, in words. The minutes standing must all be of one
 * standing up: one minute of the first and another of the second are no whole set. A fall is
 * measured from a reading at rest, so one is missing also when the set does not ask for a lying one.
 */
export function missingReadings(readings: readonly Reading[], set: PressureSet): string[] {
  const taken = pressuresOf(readings);
  const standing = standingOf(taken);
  const missing: string[] = [];
  if (!taken.some((r) => r.posture === 'lying')) {
    if (set.lying) missing.push('lying');
    else if (!taken.some((r) => r.posture === 'seated')) missing.push('lying or seated');
  }
  const last = standing.at(-1)?.series ?? 0;
  let fewest = missingMinutes(standing, last, set);
  for (let series = last - 1; series > 0; series -= 1) {
    const here = missingMinutes(standing, series, set);
    if (here.length < fewest.length) fewest = here;
  }
  return [...missing, ...fewest.map((minute) => `standing ${minute} min`)];
}

export const sayMinute = (minute: number | null): string =>
  minute === null ? 'standing' : `${minute} min standing`;
/** "130/80 lying", "110/78 at 1 min standing". */
export const sayReading = (r: RisingReading): string =>
  `${r.systolic}/${r.diastolic} ${r.posture === 'standing' ? `at ${sayMinute(r.minute)}` : r.posture}`;
