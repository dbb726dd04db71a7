/** Pressures lying, seated and standing by the minute, and what is made of them by the default set and limits. */
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { DEFAULT_PROTOCOL } from './protocol.ts';
import { judgeRising, type RisingInput } from './pressure.ts';

export type Pair = readonly [systolic: number, diastolic: number];
export const CLOCK = Date.UTC(2026, 2, 3, 9, 0);
export const at = (minutes: number) => new Date(CLOCK + minutes * 60_000).toISOString();
export const taken = (
  posture: 'lying' | 'seated' | 'standing',
  [systolic, diastolic]: Pair,
  when: number,
): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic,
  at: at(when),
});
export const lying = (of: Pair, when = 0) => taken('lying', of, when);
export const seated = (of: Pair, when: number) => taken('seated', of, when);
/** Standing up at `rose`, measured `minute` later. */
export const standing = (minute: number, of: Pair, rose = 10): Reading =>
  ({
    ...taken('standing', of, rose + minute),
    minute,
  }) as Reading;

export const judge = (readings: readonly Reading[], extra: Partial<RisingInput> = {}) =>
  judgeRising({
    readings,
    symptoms: [],
    demanded: false,
    set: DEFAULT_PROTOCOL.pressureSet,
    rules: DEFAULT_RULES.rising,
    ...extra,
  });
export const demanded = { demanded: true };

export const FELL = [lying([130, 80]), standing(1, [108, 78]), standing(3, [112, 78])];
export const again = (one: Pair, three: Pair | null): Reading[] => [
  standing(1, one, 20),
  ...(three ? [standing(3, three, 20)] : []),
];
