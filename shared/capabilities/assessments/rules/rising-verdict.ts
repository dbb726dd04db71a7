/** What is asked of the pressures on rising, and what is answered. */
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import type { PressureSet, RisingReading } from './pressure-series.ts';

export interface RisingFollows {
  /**
   * `retry-once`: a fall without symptoms and no second try yet; standing counts with the caution
   * until then. `not-judged`: no pressure stands for or against standing.
   */
  readonly stage: 'cleared' | 'cleared-with-caution' | 'retry-once' | 'not-cleared' | 'not-judged';
  /** Minutes of seated rest before the one retry; null when none follows. */
  readonly sitMinutes: number | null;
  readonly caution: 'PRESSURE DROP' | null;
  readonly peopleMore: 0 | 1;
  readonly tellPrescriber: boolean;
  /** What to do, in order, in plain words. */
  readonly words: readonly string[];
}

export type RisingRule =
  | 'systolic-fall'
  | 'diastolic-fall'
  | 'initial-fall'
  | 'seated-systolic-fall'
  | 'seated-diastolic-fall'
  | 'fall-on-sitting'
  | 'later-fall';

export interface RisingFired {
  readonly rule: RisingRule;
  readonly what: 'systolic' | 'diastolic';
  /** mmHg. */
  readonly by: number;
  readonly limit: number;
  readonly source: string;
  /** Minutes standing; null when nobody said, or on sitting. */
  readonly minute: number | null;
  readonly from: RisingReading;
  readonly to: RisingReading;
  readonly words: string;
}

export interface RisingVerdict {
  /** `incomplete`: nothing fell, but a reading the set demands is missing, so it is not a "no". */
  readonly fall: 'yes' | 'no' | 'incomplete' | 'not-taken';
  /** Every reading of a pressure set is there. */
  readonly complete: boolean;
  /** Readings the set demands and that were not taken: "lying", "standing 3 min". */
  readonly missing: readonly string[];
  /** Every pressure there is, in order of time. */
  readonly readings: readonly RisingReading[];
  readonly fired: readonly RisingFired[];
  /** The largest falls (mmHg, never below 0), each at its own reading. */
  readonly worst: {
    readonly systolicFall: number;
    readonly systolicMinute: number | null;
    readonly diastolicFall: number;
    readonly diastolicMinute: number | null;
  } | null;
  /** A fall that was gone at a later reading of the same standing up, in words. It counts all the same. */
  readonly passing: string | null;
  /** Shown beside the verdict when lying pressure is high: whether the larger limit is reached too. */
  readonly lyingHigh: { lyingSystolic: number; limit: number; reached: boolean; words: string } | null;
  /** Heart-rate rise (per minute) at or over the limit. Shown, never as a diagnosis. */
  readonly heartRateRise: { by: number; minute: number | null; words: string } | null;
  readonly pressureRise: { by: number; standingSystolic: number; words: string } | null;
  readonly standingLow: { systolic: number; minute: number | null; limit: number; words: string } | null;
  readonly symptoms: readonly string[];
  /** Why Stand is not cleared on these readings; empty when nothing here stands against it. */
  readonly standNotCleared: readonly string[];
  /** What follows for the stage, the caution, the people and the prescriber. */
  readonly follows: RisingFollows;
}

export interface RisingInput {
  readonly readings: readonly Reading[];
  /** Undefined: not asked. Empty: asked and none. */
  readonly symptoms: readonly string[] | undefined;
  /** True for an assessment of the depth "full with pressure set". */
  readonly demanded: boolean;
  readonly set: PressureSet;
  readonly rules: RulesDocument['rising'];
}
