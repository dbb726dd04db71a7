/** A Stand that nobody wrote down, and what the pressures on rising say of one that was. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { stageRecord, type Reading } from '../values.ts';
import { assessment, hours, upTo } from './assessment.testkit.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import type { Assessment } from './judge-stage.ts';
import { judge, of, says, swapped, word } from './stages.testkit.ts';
import { workOut } from './work-out.ts';

const pressure = (posture: 'lying' | 'seated' | 'standing', systolic: number, at: number): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 60,
  at: toIso(hours(at)),
});
/** From the start at 0 hours to the side of the bed at half past; nothing is written of Stand. */
const toEdge = (extra: Partial<Assessment>) =>
  assessment(
    upTo('edge', { upright: { at: toIso(hours(0.25)) }, edge: { at: toIso(hours(0.5)) } }),
    {},
    { depth: 'full-with-pressure', risingSymptoms: [], ...extra },
  ).data;
const standOf = (data: Assessment) =>
  workOut(data, {
    protocol: DEFAULT_PROTOCOL,
    rules: DEFAULT_RULES,
    oxygenTarget: null,
    oxygenFlowBefore: null,
    mayNotBear: new Set(),
    mayNotPush: new Set(),
    armsPushed: { left: null, right: null },
  }).judged.find((j) => j.stage.shows === 'stand');

describe('a Stand that nobody wrote down', () => {
  const low = [pressure('lying', 120, 0.5), pressure('standing', 85, 0.75)];
  it.each<[string, Partial<Assessment>, number]>([
    ['low on the feet, is of that pressure', { readings: low }, 0.75],
    [
      'low on the feet and laid down, is of the pressure on the feet',
      { readings: [...low, pressure('lying', 118, 1)] },
      0.75,
    ],
    ['dizzy without a pressure, is of the last stage written down', { risingSymptoms: ['dizzy'] }, 0.5],
  ])('given a person %s, and a record as a nurse could have written it', (_, extra, at) => {
    const stand = standOf(toEdge(extra))!;
    expect(stand.judged.outcome).toBe('not-met');
    expect(stand.at).toBe(hours(at));
    expect(stageRecord.parse(stand.record)).toMatchObject({
      outcome: 'not-tested',
      reason: 'stopped-before',
      how: 'free',
    });
  });
  it('is not there when nobody rose', () => {
    expect(standOf(toEdge({ readings: [pressure('lying', 120, 0)] }))).toBeUndefined();
  });
});

describe('a Stand that was written down', () => {
  it('as met in a check with the pressure set, is not cleared without a pressure on the feet', () => {
    const check = assessment(
      upTo('stand'),
      {},
      { depth: 'full-with-pressure', risingSymptoms: [], readings: [pressure('lying', 120, 0)] },
    );
    expect(word(check)).toBe('Edge');
    expect(judge(check).cleared.has('stand')).toBe(false);
  });
  it('as not tested, with no leg it applies to, takes back the walk seen before it', () => {
    const noLeg = swapped(
      'stand',
      of('rises', 'not-tested'),
      of('leg-bears', 'not-applicable', 'left'),
      of('leg-bears', 'not-applicable', 'right'),
    );
    const walked = assessment(upTo('walk'), { at: 0, id: 'walked' });
    const check = assessment(
      upTo('stand', { stand: { outcome: 'not-tested', reason: 'other', findings: noLeg } }),
      { at: 2, id: 'no-leg' },
    );
    expect(word(walked)).toBe('Walk');
    expect(word(walked, check)).toBe('Edge');
    const carries = DEFAULT_PROTOCOL.stages
      .find((s) => s.shows === 'stand')!
      .parts.find((p) => p.shows === 'leg-bears')!.says;
    expect(says(walked, check)).toContain(
      `tier/stage-not-met: Stand not met: ${carries}: there is no leg it applies to`,
    );
  });
});
