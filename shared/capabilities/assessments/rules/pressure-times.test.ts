/** Whether the times of a standing pressure fit the minutes said of it, and which standing up outlasts the first seconds. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { missingReadings, outlastsInitial, pressuresOf, type PressureSet } from './pressure-series.ts';
import { at } from './pressure.testkit.ts';

const limits = DEFAULT_RULES.rising;
const measuring = (...standingMinutes: number[]): PressureSet => ({
  lying: true,
  standingMinutes,
  within: 0.5,
  source: 'invented for this test',
});
const lying = (when: number): Reading =>
  ({ kind: 'pressure', posture: 'lying', systolic: 130, diastolic: 70, at: at(when) }) as Reading;
/** Standing, with the minute that was said of it, or none. */
const standing = (when: number, minute?: number): Reading =>
  ({
    kind: 'pressure',
    posture: 'standing',
    systolic: 126,
    diastolic: 70,
    at: at(when),
    ...(minute === undefined ? {} : { minute }),
  }) as Reading;
const MISFITS = (minute: number) => [`standing ${minute} min (its time does not fit)`];

describe('the minute said of a standing pressure', () => {
  it('does not fit when the rest is of the very time of rising', () => {
    const together = [lying(20), standing(20, 10)];
    expect(missingReadings(together, measuring(10), limits)).toEqual(MISFITS(10));
    expect(missingReadings([lying(10), standing(20, 10)], measuring(10), limits)).toEqual([]);
  });

  it('may be of a rising long before the first reading, when nobody said a minute of that', () => {
    const noMinuteFirst = [lying(0), standing(20), standing(21, 10)];
    expect(missingReadings(noMinuteFirst, measuring(10), limits)).toEqual([]);
  });

  it('is held against the minute of the first reading, where one was said', () => {
    const apart = [lying(0), standing(12, 1), standing(20, 3)];
    expect(missingReadings(apart, measuring(3), limits)).toEqual(MISFITS(3));
    expect(missingReadings([lying(0), standing(12, 1), standing(14, 3)], measuring(3), limits)).toEqual([]);
  });
});

describe('a standing up that outlasts the first seconds', () => {
  const outlasts = (...readings: Reading[]) =>
    outlastsInitial(pressuresOf(readings), measuring(1, 3), limits);
  const whole = [standing(6, 1), standing(8, 3)];

  it('is one whole one, whatever another lacks', () => {
    expect(outlasts(lying(0), ...whole)).toBe(true);
    expect(outlasts(lying(0), ...whole, lying(15), standing(21, 1))).toBe(true);
  });

  it('is none that lacks a minute, though measured late enough', () => {
    expect(outlasts(lying(0), standing(8, 3))).toBe(false);
    expect(outlasts(...whole)).toBe(false);
  });
});
