/**
 * What the pressures and the answers on rising say of Stand, when Stand itself was left out or written down as not
 * tested. Not cleared: symptoms, a standing systolic under 90, a reading missing from a pressure set. Common practice,
 * no source (design, pressure on rising).
 */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Reading } from '../values.ts';
import { assessment, hours, tierInput, upTo } from './assessment.testkit.ts';
import { judgeTier } from './tier.ts';

const MINUTES = 1 / 60;
const pressure = (posture: 'lying' | 'standing', systolic: number, minute: number): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 60,
  minute,
  at: toIso(hours(24 + (posture === 'lying' ? 0 : minute * MINUTES))),
});
const LYING = pressure('lying', 120, 5);
const NOT_TESTED = { outcome: 'not-tested', reason: 'stopped-before' } as const;
const walked = assessment(upTo('walk'), { id: 'walked' });
const leftOut = upTo('edge');
const notTested = upTo('stand', { stand: NOT_TESTED });
const judge = (...facts: Fact[]) => judgeTier(tierInput(facts));
type Says = Parameters<typeof assessment>[2];
const later = (stages: ReturnType<typeof upTo>, says: Says, role: 'nurse' | 'aide' = 'nurse') =>
  assessment(stages, { at: 24, id: 'later', role }, says);

describe.each([
  ['written down as not tested', notTested],
  ['left out', leftOut],
])('a walker, in a later check with Stand %s', (_, stages) => {
  it.each<[string, Says, string]>([
    [
      'dizzy with a standing pressure of 82',
      { readings: [LYING, pressure('standing', 82, 1)], risingSymptoms: ['dizzy'] },
      'symptoms on rising (dizzy); systolic 82 at 1 min standing (limit 90)',
    ],
    [
      'at a standing pressure of 82, no symptom',
      { readings: [LYING, pressure('standing', 82, 1)], risingSymptoms: [] },
      'systolic 82 at 1 min standing (limit 90)',
    ],
    ['dizzy, with no pressure taken', { risingSymptoms: ['dizzy'] }, 'symptoms on rising (dizzy)'],
    [
      'with a pressure set of which the third minute is missing',
      {
        depth: 'full-with-pressure',
        readings: [LYING, pressure('standing', 118, 1)],
        risingSymptoms: [],
      },
      'the pressure set is incomplete: standing 3 min missing',
    ],
  ])('%s: has not cleared Stand, nor what lies beyond', (__, says, why) => {
    const { view, cleared, seen } = judge(walked, later(stages, says));
    expect(view.word).toBe('Edge');
    expect([...cleared]).toEqual(['clear', 'upright', 'edge']);
    expect(view.because).toContainEqual({
      rule: 'tier/stage-not-met',
      facts: ['later'],
      words: `Stand not met: ${why}`,
    });
    expect(seen.stages.get('walk')).toMatchObject({
      outcome: 'taken-back',
      reasons: ['to be cleared again: Stand was not met since'],
    });
  });

  it('dizzy, told by an aide: has not cleared Stand', () => {
    expect(judge(walked, later(stages, { risingSymptoms: ['dizzy'] }, 'aide')).view.word).toBe('Edge');
  });

  it.each<[string, Says]>([
    ['nothing asked', {}],
    ['asked, and no symptom', { risingSymptoms: [] }],
    ['a pressure set in which nobody stood', { depth: 'full-with-pressure', readings: [LYING] }],
    ['a pressure set without any reading', { depth: 'full-with-pressure' }],
    [
      'good pressures and no symptom',
      { readings: [LYING, pressure('standing', 118, 1)], risingSymptoms: [] },
    ],
  ])('with %s: loses nothing', (__, says) => {
    expect(judge(walked, later(stages, says)).view.word).toBe('Walk');
  });
});

describe('the time at which Stand was not met', () => {
  const at = (stages: ReturnType<typeof upTo>, says: Says) =>
    judge(walked, later(stages, says)).seen.stages.get('stand')?.at;

  it('is that of the last standing pressure, when Stand was left out', () => {
    const readings = [LYING, pressure('standing', 82, 1 / 4), pressure('standing', 80, 1 / 2)];
    expect(at(leftOut, { readings })).toBe(hours(24 + MINUTES / 2));
  });
  it('is that of the last stage written down, when nobody measured', () => {
    expect(at(leftOut, { risingSymptoms: ['dizzy'] })).toBe(hours(24));
  });
  it('is its own, when Stand was written down', () => {
    expect(at(notTested, { readings: [LYING, pressure('standing', 82, 1 / 4)] })).toBe(hours(24));
  });
});

describe('a check in which nothing was tested', () => {
  const untested = { clear: NOT_TESTED, upright: NOT_TESTED, edge: NOT_TESTED, stand: NOT_TESTED };
  const dizzy = later(untested, { risingSymptoms: ['dizzy'] });

  it('takes Stand back, and is no check that the tier could stand on', () => {
    const { view, assessment: last } = judge(walked, dizzy);
    expect(view.word).toBe('Edge');
    expect(last?.id).toBe('walked');
    expect(judge(dizzy).view.word).toBe('Not known');
  });
  it('of somebody held safe, forgets nothing of how they were held', () => {
    const held = { how: 'secured', securedWith: 'sling', people: 3 } as const;
    const inSling = assessment(upTo('stand', { stand: held }));
    expect(judge(inSling, dizzy).seen.stages.get('stand')).toMatchObject({
      outcome: 'not-met',
      securedWith: 'sling',
      people: 3,
    });
  });
});
