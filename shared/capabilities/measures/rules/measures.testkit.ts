/** Measures in a few words, what is said of each by the default limits, and by whose age and sex. */
import { DEFAULT_RULES } from '../../wards/rules/default-rules.ts';
import type { Measure, ReadBy } from '../values.ts';
import { judgeMeasure } from './judge-measure.ts';

export const limits = DEFAULT_RULES.walking;
export const judged = (measure: Measure, by?: ReadBy) => judgeMeasure(measure, by, limits);
export const says = (measure: Measure, by?: ReadBy) => judged(measure, by).says;
export const man = (age: number): ReadBy => ({ age, sex: 'male' });
export const woman = (age: number): ReadBy => ({ age, sex: 'female' });
export const someone = (sex: 'male' | 'female', age: number): ReadBy => ({ age, sex });

export const stands = (count: number, usedArms = false): Measure => ({
  kind: 'chair-stands',
  stands: count,
  usedArms,
});
/** Ten metres at that speed. */
export const speed = (metresPerSecond: number, over: object = {}): Measure & { kind: 'gait-speed' } => ({
  kind: 'gait-speed',
  metres: 10,
  seconds: 10 / metresPerSecond,
  pace: 'usual',
  start: 'walking',
  turn: false,
  support: 'none',
  ...over,
});
export const sixMinutes = (metres: number, over: object = {}): Measure => ({
  kind: 'six-minute-walk',
  metres,
  support: 'none',
  ...over,
});
export const rises = (seconds: number | null, usedArms = false): Measure => ({
  kind: 'five-rises',
  seconds,
  usedArms,
});
export const upAndGo = (
  seconds: number | null,
  support: 'none' | 'frame' | 'crutches' | 'two-sticks' = 'none',
): Measure => ({ kind: 'up-and-go', seconds, support });
