/** Checks under one document after checks under another, or under one that cannot be read. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Reading, StageRecord } from '../values.ts';
import { assessment, fact, hours, tierInput, upTo } from './assessment.testkit.ts';
import { checkUnder, LONG, SHORT } from './own-protocol.testkit.ts';
import { protocolLookup, type Protocol } from './protocol.ts';
import { judgeTier } from './tier.ts';

const protocols = protocolLookup([LONG, SHORT].map((document) => ({ ...document, document })));
const judge = (...facts: Fact[]) => judgeTier({ ...tierInput(facts), protocols });
const under = (
  protocol: Protocol,
  last: string,
  at: number,
  says: Record<string, Partial<StageRecord>> = {},
  role: Role = 'nurse',
) => fact('assessment-recorded', checkUnder(protocol, last, hours(at), says), { at, role });

describe('a stage not met under one document', () => {
  it('takes back what was cleared beyond it under another, by what the stages mean', () => {
    const went = under(LONG, 'go', 1);
    const fell = under(SHORT, 'side', 3, {
      side: { outcome: 'not-met', findings: [{ part: 'sits-alone', result: 'not-met' }] },
    });
    const { seen } = judge(went, fell);
    expect(['upright', 'edge', 'stand', 'turn', 'walk'].map((s) => seen.stages.get(s)?.outcome)).toEqual([
      'met',
      'not-met',
      'taken-back',
      'taken-back',
      'taken-back',
    ]);
    expect(seen.stages.get('walk')?.reasons).toEqual(['to be cleared again: At the side was not met since']);
  });
});

describe('the document that a tier is told in', () => {
  const byAide = (at: number) => assessment(upTo('upright'), { at, role: 'aide' });
  const untested = under(SHORT, 'look', 0, {
    look: { outcome: 'not-tested', reason: 'refused', findings: [] },
  });
  it("is that of the last check by someone qualified, not of an aide's since", () => {
    expect(judge(under(LONG, 'rise', 1), byAide(2)).view).toMatchObject({
      word: 'On the feet',
      protocol: { id: 'long' },
    });
  });
  it("is that of the first aide's check while nobody qualified has checked, and the tier is not known", () => {
    const { view, seen } = judge(untested, byAide(1), under(SHORT, 'side', 2, {}, 'aide'));
    expect(view.word).toBe('Not known');
    expect(seen.protocol?.id).toBe('footboard-default');
    expect(judge(untested).seen.protocol).toBeNull();
  });
});

describe('pressures of a check under a document that cannot be read', () => {
  const pressure = (posture: 'lying' | 'standing', systolic: number, minute: number): Reading => ({
    kind: 'pressure',
    posture,
    systolic,
    diastolic: 70,
    minute,
    at: toIso(hours(1 + (posture === 'standing' ? (5 + minute) / 60 : 0))),
  });
  it('say of a fall what follows from it, and ask for no whole set', () => {
    const readings = [pressure('lying', 130, 5), pressure('standing', 105, 1)];
    const gone = { protocol: { id: 'gone', version: 1 }, readings, risingSymptoms: [] };
    const { view, pressureDrop } = judge(assessment(upTo('stand'), { at: 1, id: 'fell' }, gone));
    expect(pressureDrop?.fact).toBe('fell');
    const said = view.because.find((b) => b.rule === 'rising/fell')!.words;
    expect(said).toContain('A fall without symptoms: sit for 2 min, then stand and measure once more');
    expect(said).not.toContain('incomplete');
  });
});

describe('a check under a document that cannot be read, after a walk', () => {
  const walked = assessment(upTo('walk'), { at: 1, id: 'walked' });
  const gone = { protocol: { id: 'gone', version: 1 } };
  const taken = toIso(hours(3));
  const wordsOf = (...facts: Fact[]) => judge(...facts).view.because.map((b) => b.words);
  const unread = (extra: object, says: Record<string, Partial<StageRecord>> = {}, role: Role = 'nurse') =>
    assessment(upTo('walk', says), { at: 3, id: 'unread', role }, { ...gone, ...extra });

  it('with nothing against it, clears nothing and takes nothing back', () => {
    expect(judge(walked, unread({})).view.word).toBe('Walk');
  });
  it.each<[string, Fact]>([
    [
      'a pressure too low to stand with',
      unread({
        readings: [
          { kind: 'pressure', posture: 'standing', systolic: 82, diastolic: 50, minute: 1, at: taken },
        ],
      }),
    ],
    [
      'a sign that says not now',
      unread({
        readings: [{ kind: 'pressure', posture: 'lying', systolic: 80, diastolic: 50, minute: 5, at: taken }],
      }),
    ],
    ['a symptom on rising', unread({ risingSymptoms: ['dizzy'] })],
    ['a symptom in a stage', unread({}, { stand: { symptom: true } })],
    ['a part not met', unread({}, { edge: { findings: [{ part: 'sits-unheld', result: 'not-met' }] } })],
    [
      'a sign that an aide took',
      unread({ readings: [{ kind: 'heart-rate', perMinute: 160, at: taken }] }, {}, 'aide'),
    ],
  ])('with %s, takes everything back and says so', (_what, check) => {
    expect(judge(walked, check).view.notch).toBe(0);
    expect(wordsOf(walked, check)).toContain(
      'Protocol gone version 1 is not known here: what was found in it stands against moving, so nothing stays cleared',
    );
  });
});
