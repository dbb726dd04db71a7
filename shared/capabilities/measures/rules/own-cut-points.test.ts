/** What a ward may change in reading a measure, and what is said beside every one. */
import { describe, expect, it } from 'vitest';
import { judgeMeasure, MEASURES_STANDING_LINE } from './judge-measure.ts';
import { limits, rises, speed, upAndGo } from './measures.testkit.ts';

describe('a ward that set its own cut points', () => {
  const own = (key: keyof typeof limits, value: number) => ({
    ...limits,
    [key]: { ...limits[key], value, source: 'our ward' },
  });
  it('reads by them, and names its own source', () => {
    expect(judgeMeasure(upAndGo(12), undefined, own('upAndGoFrom', 14))).toMatchObject({
      says: 'Under the cut point for risk of falling (14 s).',
      source: 'our ward',
    });
    expect(judgeMeasure(rises(13), undefined, own('fiveRisesAbove', 12)).says).toBe('Slow: over 12 s.');
    expect(judgeMeasure(speed(0.45), undefined, own('householdBelow', 0.5)).says).toContain('at home only');
  });
});

it('a reading says beside it that it is no diagnosis and frees nothing', () => {
  expect(MEASURES_STANDING_LINE).toContain('Not a diagnosis');
  expect(MEASURES_STANDING_LINE).toContain('frees nothing and changes no plan');
  expect(MEASURES_STANDING_LINE).toContain('clinician at the bedside come first');
});
