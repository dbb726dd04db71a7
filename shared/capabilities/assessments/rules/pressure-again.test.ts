/** Pressures of somebody who stood up more than once, and readings that are alike. Limits: the ward's rules, with their sources. */
import { describe, expect, it } from 'vitest';
import type { Reading } from '../values.ts';
import { at, judge } from './pressure.testkit.ts';

const taken = (posture: 'lying' | 'standing', systolic: number, when: number, more: object = {}): Reading =>
  ({ kind: 'pressure', posture, systolic, diastolic: 70, at: at(when), ...more }) as Reading;
const lying = (systolic: number, when: number, heartRate?: number) =>
  taken('lying', systolic, when, heartRate === undefined ? {} : { heartRate });
/** Standing up at `rose`, measured `minute` later. */
const standing = (systolic: number, rose: number, minute = 1, heartRate?: number) =>
  taken('standing', systolic, rose + minute, { minute, ...(heartRate === undefined ? {} : { heartRate }) });

// What follows: design, row "what it does" (common practice, no source).
describe('a pressure set measured twice', () => {
  const first = [lying(130, 0), standing(126, 5), standing(128, 5, 3)];
  it('that fell the second time only is to be tried once more, as the first fall it is', () => {
    const fell = judge([...first, standing(105, 15), standing(108, 15, 3)], { demanded: true });
    expect(fell.follows.stage).toBe('retry-once');
    const again = [standing(105, 15), standing(108, 15, 3), standing(124, 25), standing(126, 25, 3)];
    expect(judge([...first, ...again], { demanded: true }).follows.stage).toBe('cleared-with-caution');
  });
});

// Lying systolic from 160 and its limit of 30: Shaw et al. 2017 (from memory), as the ward's rules say.
describe('a lying pressure that is high', () => {
  it('is the highest of all that was measured from, whichever standing it belongs to', () => {
    const between = [lying(150, 0), standing(150, 5), lying(170, 10), standing(165, 15)];
    expect(judge(between).lyingHigh).toMatchObject({ lyingSystolic: 170, reached: false });
    const after = [...between, lying(140, 20), standing(150, 25)];
    expect(judge(after).lyingHigh).toMatchObject({ lyingSystolic: 170, reached: false });
  });
  it('has its fall in a standing reading of which nobody said the minute, and not in one of the first seconds', () => {
    const noMinute = taken('standing', 135, 5);
    expect(judge([lying(170, 0), noMinute]).lyingHigh).toEqual({
      lyingSystolic: 170,
      limit: 30,
      reached: true,
      words: 'lying systolic is high (170): by the limit of 30 this is a fall',
    });
    const atOnce = [lying(170, 0), standing(135, 5, 0.25), standing(160, 5)];
    expect(judge(atOnce).lyingHigh).toMatchObject({
      reached: false,
      words: 'lying systolic is high (170): by the limit of 30 this is not a fall',
    });
  });
});

describe('of two readings that are alike the first is named', () => {
  it('the lowest standing pressure', () => {
    expect(judge([lying(100, 0), standing(85, 5), standing(85, 5, 3)]).standingLow).toMatchObject({
      systolic: 85,
      minute: 1,
    });
    expect(judge([lying(100, 0), standing(85, 5), standing(84, 5, 3)]).standingLow).toMatchObject({
      systolic: 84,
      minute: 3,
    });
  });
  it('the rise of the heart rate', () => {
    const rates = (one: number, three: number) =>
      judge([lying(120, 0, 70), standing(120, 5, 1, one), standing(120, 5, 3, three)]).heartRateRise;
    expect(rates(105, 105)).toMatchObject({ by: 35, minute: 1 });
    expect(rates(105, 106)).toMatchObject({ by: 36, minute: 3 });
    expect(rates(99, 99)).toBeNull();
  });
  it('the rise of the pressure', () => {
    // The first standing up has no reading at rest before it: the first after it is all there is.
    const readings = [standing(145, 0), lying(120, 10), standing(130, 15), lying(125, 20), standing(150, 25)];
    expect(judge(readings).pressureRise).toMatchObject({ by: 25, standingSystolic: 145 });
  });
});
