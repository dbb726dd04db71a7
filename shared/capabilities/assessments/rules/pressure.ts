/**
 * Blood pressure on rising. Says which rule fired on which readings, the worst fall and when; a
 * reading that is missing is named, never filled in. Not a diagnosis: the clinician decides.
 */
import type { EpochMs } from '../../../kernel/times.ts';
import { toEpoch } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import type { Protocol } from './protocol.ts';

type Pressure = Extract<Reading, { kind: 'pressure' }>;

/** A reading at 15 s, give or take the time it takes to read it, is an initial one (minutes). */
const INITIAL_UP_TO = 0.4;

export type RisingRule =
  | 'systolic-fall'
  | 'diastolic-fall'
  | 'initial-fall'
  | 'seated-systolic-fall'
  | 'seated-diastolic-fall'
  | 'later-fall';

export interface RisingVerdict {
  /** `incomplete`: nothing fell, but a reading the set demands is missing, so it is not a "no". */
  readonly fall: 'yes' | 'no' | 'incomplete' | 'not-taken';
  /** Every reading of a pressure set is there. */
  readonly complete: boolean;
  /** Readings the set demands and that were not taken: "lying", "standing 3 min". */
  readonly missing: readonly string[];
  readonly fired: readonly {
    rule: RisingRule;
    words: string;
    minute: number | null;
    limit: number;
    source: string;
  }[];
  /** The largest falls (mmHg, never below 0), each at its own reading. */
  readonly worst: {
    systolicFall: number;
    systolicMinute: number | null;
    diastolicFall: number;
    diastolicMinute: number | null;
  } | null;
  /** Shown beside the verdict when lying pressure is high: whether the larger limit is reached too. */
  readonly lyingHigh: { lyingSystolic: number; limit: number; reached: boolean; words: string } | null;
  /** Heart-rate rise (per minute) at or over the limit. Shown, never as a diagnosis. */
  readonly heartRateRise: { by: number; minute: number | null; words: string } | null;
  readonly pressureRise: { by: number; standingSystolic: number; words: string } | null;
  readonly standingLow: { systolic: number; minute: number | null; limit: number; words: string } | null;
  readonly symptoms: readonly string[];
  /** Why Stand is not cleared on these readings; empty when nothing here stands against it. */
  readonly standNotCleared: readonly string[];
}

export interface RisingInput {
  readonly readings: readonly Reading[];
  /** Undefined: not asked. Empty: asked and none. */
  readonly symptoms: readonly string[] | undefined;
  /** True for an assessment of the depth "full with pressure set". */
  readonly demanded: boolean;
  readonly set: Protocol['pressureSet'];
  readonly rules: RulesDocument['rising'];
}

const at = (r: Pressure): EpochMs => toEpoch(r.at);
const when = (minute: number | null): string => (minute === null ? 'standing' : `${minute} min standing`);

/** The reading a fall is measured from: the last one before the first standing reading. */
function basis(
  readings: readonly Pressure[],
  posture: 'lying' | 'seated',
  firstUp: EpochMs,
): Pressure | null {
  const all = readings.filter((r) => r.posture === posture).toSorted((a, b) => at(a) - at(b));
  return all.findLast((r) => at(r) <= firstUp) ?? all.at(0) ?? null;
}

/** Readings of a pressure set that are not there, in words. */
export function missingReadings(readings: readonly Reading[], set: Protocol['pressureSet']): string[] {
  const pressures = readings.filter((r) => r.kind === 'pressure');
  const missing: string[] = [];
  if (set.lying && !pressures.some((r) => r.posture === 'lying')) missing.push('lying');
  for (const minute of set.standingMinutes) {
    const there = pressures.some(
      (r) => r.posture === 'standing' && r.minute !== undefined && Math.abs(r.minute - minute) <= set.within,
    );
    if (!there) missing.push(`standing ${minute} min`);
  }
  return missing;
}

export function judgeRising(input: RisingInput): RisingVerdict {
  const { rules, set } = input;
  const pressures = input.readings.filter((r) => r.kind === 'pressure');
  const standing = pressures.filter((r) => r.posture === 'standing').toSorted((a, b) => at(a) - at(b));
  const firstUp = standing[0] ? at(standing[0]) : Number.POSITIVE_INFINITY;
  const lying = basis(pressures, 'lying', firstUp);
  const seated = lying ? null : basis(pressures, 'seated', firstUp);
  const from = lying ?? seated;
  const missing = missingReadings(input.readings, set);
  const latest = Math.max(...set.standingMinutes) + set.within;

  const fired: RisingVerdict['fired'][number][] = [];
  const fire = (
    rule: RisingRule,
    what: 'systolic' | 'diastolic',
    fall: number,
    limit: { value: number; source: string },
    minute: number | null,
  ) => {
    if (fall >= limit.value) {
      fired.push({
        rule,
        words: `${what} fell ${fall} from ${lying ? 'lying' : 'seated'} at ${when(minute)} (limit ${limit.value})`,
        minute,
        limit: limit.value,
        source: limit.source,
      });
    }
  };

  let worst:
    | { -readonly [K in keyof NonNullable<RisingVerdict['worst']>]: NonNullable<RisingVerdict['worst']>[K] }
    | null = null;
  let rate: RisingVerdict['heartRateRise'] = null;
  let rise: RisingVerdict['pressureRise'] = null;
  let low: RisingVerdict['standingLow'] = null;
  for (const r of standing) {
    const minute = r.minute ?? null;
    if (r.systolic < rules.standingSystolicBelow.value && (!low || r.systolic < low.systolic)) {
      const limit = rules.standingSystolicBelow.value;
      low = {
        systolic: r.systolic,
        minute,
        limit,
        words: `systolic ${r.systolic} at ${when(minute)} (limit ${limit})`,
      };
    }
    if (!from) continue;
    const systolic = from.systolic - r.systolic;
    const diastolic = from.diastolic - r.diastolic;
    worst ??= { systolicFall: 0, systolicMinute: null, diastolicFall: 0, diastolicMinute: null };
    if (systolic > worst.systolicFall)
      Object.assign(worst, { systolicFall: systolic, systolicMinute: minute });
    if (diastolic > worst.diastolicFall) {
      Object.assign(worst, { diastolicFall: diastolic, diastolicMinute: minute });
    }
    const initial = minute !== null && minute <= INITIAL_UP_TO;
    const later = minute !== null && minute > latest;
    const falls = [
      ['systolic', systolic, lying ? rules.systolicFall : rules.seatedSystolicFall],
      ['diastolic', diastolic, lying ? rules.diastolicFall : rules.seatedDiastolicFall],
    ] as const;
    for (const [what, fall, limit] of falls) {
      if (initial) {
        const early = what === 'systolic' ? rules.initialSystolicFall : rules.initialDiastolicFall;
        // The source says "more than" for the initial fall; at the limit itself the stricter reading is taken.
        fire('initial-fall', what, fall, early, minute);
      } else if (later) fire('later-fall', what, fall, limit, minute);
      else fire(lying ? `${what}-fall` : `seated-${what}-fall`, what, fall, limit, minute);
    }
    if (r.heartRate !== undefined && from.heartRate !== undefined) {
      const by = r.heartRate - from.heartRate;
      if (by >= rules.heartRateRise.value && (!rate || by > rate.by)) {
        rate = { by, minute, words: `heart rate rose ${by} at ${when(minute)}` };
      }
    }
    const up = -systolic;
    if (up >= rules.systolicRise.value && (!rise || up > rise.by)) {
      const high = r.systolic >= rules.standingHighFrom.value;
      rise = {
        by: up,
        standingSystolic: r.systolic,
        words: `systolic rose ${up} on standing, to ${r.systolic}${high ? ', high' : ''}`,
      };
    }
  }

  const highLimit = rules.systolicFallWhenLyingHigh.value;
  const reached = (worst?.systolicFall ?? 0) >= highLimit;
  const lyingHigh =
    lying && worst && lying.systolic >= rules.lyingHighFrom.value
      ? {
          lyingSystolic: lying.systolic,
          limit: highLimit,
          reached,
          words: `lying systolic is high (${lying.systolic}): by the limit of ${highLimit} this is ${reached ? '' : 'not '}a fall`,
        }
      : null;

  const symptoms = input.symptoms ?? [];
  const standNotCleared = [
    ...(symptoms.length
      ? [`symptoms on rising (${symptoms.map((s) => s.replaceAll('-', ' ')).join(', ')})`]
      : []),
    ...(low ? [low.words] : []),
    ...(input.demanded && missing.length
      ? [`the pressure set is incomplete: ${missing.join(', ')} missing`]
      : []),
    ...(input.demanded && input.symptoms === undefined ? ['symptoms on rising were not asked'] : []),
  ];
  const taken = from !== null && standing.length > 0;
  return {
    fall: fired.length ? 'yes' : input.demanded && missing.length ? 'incomplete' : taken ? 'no' : 'not-taken',
    complete: missing.length === 0,
    missing,
    fired,
    worst,
    lyingHigh,
    heartRateRise: rate,
    pressureRise: rise,
    standingLow: low,
    symptoms,
    standNotCleared,
  };
}
