/** That the random checks of the properties are what they should be tried with: each outcome of a pressure set comes up. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { judgeRising, type RisingVerdict } from '../../assessments/rules/pressure.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { checks } from './random-checks.testkit.ts';

const verdicts: readonly RisingVerdict[] = fc
  .sample(checks, { numRuns: 600, seed: 20_261_201 })
  .map((one) => {
    const { readings, risingSymptoms, depth } = one.payload as PayloadOf<typeof assessmentRecorded>;
    return judgeRising({
      readings,
      symptoms: risingSymptoms,
      demanded: depth === 'full-with-pressure',
      set: DEFAULT_PROTOCOL.pressureSet,
      rules: DEFAULT_RULES.rising,
    });
  });
const met = (which: (v: RisingVerdict) => boolean) => verdicts.filter(which).length;

describe('random checks of the properties', () => {
  it.each<[string, (v: RisingVerdict) => boolean]>([
    ['no pressures at all', (v) => v.readings.length === 0],
    ['a whole set without a fall', (v) => v.complete && v.fall === 'no'],
    ['a whole set with a fall', (v) => v.complete && v.fall === 'yes'],
    ['a set that lacks a reading', (v) => v.readings.length > 0 && v.fall === 'incomplete'],
    ['a reading whose time does not fit', (v) => v.missing.some((m) => m.includes('does not fit'))],
    ['symptoms on rising', (v) => v.symptoms.length > 0 && v.readings.length > 0],
    ['low on standing', (v) => v.standingLow !== null],
    ['a second standing up', (v) => v.readings.some((r) => r.series === 2)],
    ['a fall in the first seconds', (v) => v.fired.some((f) => f.rule === 'initial-fall')],
    ['a fall from seated', (v) => v.fired.some((f) => f.rule.startsWith('seated'))],
    ['a high pressure lying', (v) => v.lyingHigh !== null],
    ['cleared with a caution', (v) => v.follows.stage === 'cleared-with-caution'],
    ['once more after sitting', (v) => v.follows.stage === 'retry-once'],
  ])('have among them: %s', (_, which) => {
    expect(met(which)).toBeGreaterThanOrEqual(5);
  });
});
