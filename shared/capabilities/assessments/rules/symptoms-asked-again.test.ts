/**
 * Which later check answers what an earlier one saw of symptoms and of a low standing pressure, asked by
 * itself: one that asked the same. Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { assessment, fact, hours, notMet, tierInput, upTo } from './assessment.testkit.ts';
import type { Assessment } from './judge-stage.ts';
import { checkUnder, LONG, SHORT } from './own-protocol.testkit.ts';
import type { Protocol } from './protocol-document.ts';
import { protocolLookup } from './protocol.ts';
import { afterSymptoms } from './start-after-symptoms.ts';
import { judgeTier } from './tier.ts';

const reasons = (facts: readonly Fact[], own: readonly Protocol[] = []) => {
  const protocols = protocolLookup(own.map((document) => ({ id: document.id, version: 1, document })));
  const tier = judgeTier({ ...tierInput(facts), protocols });
  return afterSymptoms({ facts, rules: DEFAULT_RULES, protocols, tier });
};
const said = (...args: Parameters<typeof reasons>) => reasons(...args).map((r) => [r.words, ...r.facts]);
const AT_START = 'A symptom at the start of the last check';

describe('given a symptom at the start of a check', () => {
  const ill = assessment({ clear: { symptom: true } }, { at: 1, id: 'ill' });
  it.each<[string, Fact]>([
    ['did not come to the start', assessment({ edge: {} }, { at: 2 })],
    [
      'left the start untested',
      assessment({ clear: { outcome: 'not-tested', reason: 'asleep' }, edge: {} }, { at: 2 }),
    ],
  ])('when a later one %s, then it still asks first', (_, later) => {
    expect(said([ill, later])).toEqual([[AT_START, 'ill']]);
  });
  it('when a later one was free of it there, then nothing asks', () => {
    expect(said([ill, assessment({ clear: {}, edge: { symptom: true } }, { at: 2 })])).toEqual([]);
  });
  it('when the symptom came later in the check, then it was none at the start', () => {
    expect(said([assessment({ edge: { symptom: true } }, { at: 1 })])).toEqual([]);
  });
  it('when an older document has another stage before the start, then the start is the one that asks', () => {
    // Published before the stage that clears the start had to be the first.
    const older: Protocol = {
      ...LONG,
      id: 'older',
      stages: [{ ...LONG.stages[1]!, id: 'before', word: null }, ...LONG.stages],
    };
    const under = (stage: string) =>
      fact('assessment-recorded', checkUnder(older, 'look', hours(1), { [stage]: { symptom: true } }), {
        at: 1,
        id: stage,
      });
    expect(said([under('look')], [older])).toEqual([[AT_START, 'look']]);
    expect(said([under('before')], [older])).toEqual([]);
  });
});

describe('given standing was cleared, and then symptoms on rising under a document without standing', () => {
  const stood = (at: number) => assessment(upTo('stand'), { at, id: 'stood' });
  const dizzy = (at: number) => {
    const data: Assessment = { ...checkUnder(SHORT, 'side', hours(at)), risingSymptoms: ['dizzy'] };
    return fact('assessment-recorded', data, { at, id: 'dizzy' });
  };
  const SYMPTOMS = 'symptoms on rising at the last check (dizzy); Stand not cleared since';
  it.each<[string, readonly Fact[], readonly string[][]]>([
    ['since, then it asks first', [stood(1), dizzy(2)], [[SYMPTOMS, 'dizzy']]],
    ['at the same time, then the safer of the two stands', [stood(1), dizzy(1)], [[SYMPTOMS, 'dizzy']]],
    ['before it, then standing has answered them', [dizzy(1), stood(2)], []],
  ])('when they came %s', (_, facts, expected) => {
    expect(said(facts, [SHORT])).toEqual(expected);
  });
});

describe('given several standing pressures in one check', () => {
  const standing = (systolic: number, minute: number): Reading => ({
    kind: 'pressure',
    posture: 'standing',
    systolic,
    diastolic: 35,
    minute,
    at: toIso(hours(1 + minute / 60)),
  });
  it.each<[string, readonly Reading[], number, number]>([
    ['the lowest is named, though it came last', [standing(88, 1), standing(82, 3)], 82, 3],
    ['of two as low the one taken first is', [standing(82, 1), standing(82, 3)], 82, 1],
  ])('%s', (_, readings, lowest, minute) => {
    const check = assessment(
      upTo('stand', { stand: notMet('stands') }),
      { at: 1 },
      { readings: [...readings] },
    );
    expect(reasons([check]).map((r) => [r.words, r.takenAt])).toEqual([
      [expect.stringContaining(`standing systolic ${lowest} mmHg`), hours(1 + minute / 60)],
    ]);
  });
});
