import { describe, expect, it } from 'vitest';
import type { Fact } from '../../corrections/facts.ts';
import type { Reading } from '../values.ts';
import { assessment, fact, hours, notMet, tierInput, upTo } from './assessment.testkit.ts';
import { DEFAULT_PROTOCOL, protocolLookup } from './protocol.ts';
import { judgeTier } from './tier.ts';

const judge = (facts: readonly Fact[], at?: number) => judgeTier(tierInput(facts, at));
const word = (facts: readonly Fact[], at?: number) => judge(facts, at).view.word;
const rules = (facts: readonly Fact[]) => judge(facts).view.because.map((b) => b.rule);

const stood = (lying: number, one: number, three: number): Reading[] =>
  (
    [
      ['lying', lying, 5],
      ['standing', one, 1],
      ['standing', three, 3],
    ] as const
  ).map(([posture, systolic, minute]) => ({
    kind: 'pressure',
    posture,
    systolic,
    diastolic: 60,
    minute,
    at: new Date(hours(0) + (posture === 'lying' ? 0 : minute * 60_000)).toISOString(),
  }));

const lost = (stages: Parameters<typeof assessment>[0]) =>
  assessment(stages, { at: 3 }, { protocol: { id: 'gone', version: 4 } });

const full = (readings: Reading[], risingSymptoms: ('dizzy' | 'faint')[] = [], at = 0) =>
  assessment(upTo('stand'), { at }, { depth: 'full-with-pressure', readings, risingSymptoms });

const onOxygen = (litresPerMinute: number, at: number) =>
  assessment(
    upTo('edge'),
    { at },
    {
      readings: [{ kind: 'oxygen', saturation: 96, litresPerMinute, at: new Date(hours(at)).toISOString() }],
    },
  );

describe('tier', () => {
  // Design section 4, "ask first": more oxygen since the last check (common practice, no source).
  it('says that more oxygen was given than at the check before, from the earlier reading', () => {
    const said = (...facts: Fact[]) => judge(facts).view.because.filter((b) => b.rule === 'start/ask-first');
    expect(said(onOxygen(2, 1), assessment(upTo('edge'), { at: 2 }), onOxygen(4, 3))).toMatchObject([
      { words: expect.stringContaining('more oxygen than at the last check (2 to 4 litres a minute)') },
    ]);
    expect(said(onOxygen(4, 1), onOxygen(4, 3))).toEqual([]);
    expect(said(onOxygen(4, 3))).toEqual([]);
  });
  it('is not known before anything is assessed here', () => {
    const j = judge([]);
    expect(j.view).toMatchObject({ word: 'Not known', notch: null, at: null });
    expect(j.cleared.size).toBe(0);
  });

  // The order of stages: common practice, no source.
  it.each([
    ['clear', 'Supported', 0],
    ['upright', 'Upright', 0.2],
    ['edge', 'Edge', 0.4],
    ['stand', 'Stand', 0.6],
    ['turn', 'Turn', 0.8],
    ['walk', 'Walk', 1],
  ])('cleared up to %s is %s', (last, expected, notch) => {
    expect(judge([assessment(upTo(last))]).view).toMatchObject({ word: expected, notch });
  });

  it('stays before a stage with any part not met, and says which', () => {
    const j = judge([assessment(upTo('turn', { turn: notMet('side-steps') }))]);
    expect(j.view.word).toBe('Stand');
    expect(j.view.because.map((b) => b.words).join('\n')).toContain('Two side-steps');
  });
  it('takes a stage recorded as met with a required part not met as not met', () => {
    const bad = assessment(
      upTo('edge', { edge: { findings: [{ part: 'sits-hands-free', result: 'not-met' }] } }),
    );
    expect(word([bad])).toBe('Upright');
  });
  it('one heel that does not hold keeps nobody at the start: the one-leg route stays open', () => {
    const oneHeel = assessment(
      upTo('edge', {
        upright: {
          findings: [
            { part: 'heel-held', side: 'left', result: 'met' },
            { part: 'heel-held', side: 'right', result: 'not-met' },
          ],
        },
      }),
    );
    expect(word([oneHeel])).toBe('Edge');
  });
  it('not tested neither lowers nor raises', () => {
    const first = assessment(upTo('stand'), { at: 0 });
    const later = assessment(
      { clear: {}, upright: {}, edge: { outcome: 'not-tested', reason: 'refused' } },
      { at: 5 },
    );
    expect(word([first, later])).toBe('Stand');
    expect(word([later])).toBe('Upright');
  });
  it('a later finding not met takes back what was cleared beyond it, until it is cleared again', () => {
    const walked = assessment(upTo('walk'), { at: 0 });
    const failed = assessment(upTo('stand', { stand: notMet('rises') }), { at: 6 });
    const edgeAgain = assessment(upTo('stand'), { at: 12 });
    expect(word([walked, failed], 5)).toBe('Walk');
    expect(word([walked, failed], 6)).toBe('Edge');
    expect(word([walked, failed, edgeAgain], 13)).toBe('Stand');
  });
  it('ends the same in whatever order the facts arrive, a late one too', () => {
    const failed = assessment(upTo('stand', { stand: notMet('rises') }), { at: 6 });
    const lateWalk = assessment(upTo('walk'), { at: 2 });
    expect(word([failed, lateWalk])).toBe('Edge');
    expect(word([lateWalk, failed])).toBe('Edge');
  });
  it('a check by someone who may only make it safer lowers and never raises', () => {
    const nurse = assessment(upTo('edge'), { at: 0 });
    expect(word([nurse, assessment(upTo('walk'), { at: 1, role: 'aide' })])).toBe('Edge');
    expect(
      word([nurse, assessment(upTo('upright', { upright: notMet('back-raised') }), { at: 1, role: 'aide' })]),
    ).toBe('Supported');
    expect(word([assessment(upTo('walk'), { role: 'aide' })])).toBe('Not known');
  });
  it('the nurse watching an ordinary move changes no tier', () => {
    const a = assessment(upTo('edge'), { id: 'a1' });
    const confirmed = fact('plan-confirmed', { task: 'walk', assessment: 'a1' }, { at: 3 });
    expect(judge([a, confirmed]).view).toEqual(judge([a]).view);
  });

  describe('two checks of the same time that disagree', () => {
    const yes = assessment(upTo('turn'), { at: 1, id: 'yes' });
    const no = assessment(upTo('stand', { stand: notMet('rises') }), { at: 1, id: 'no', role: 'therapist' });
    it.each([
      ['yes first', 'a', 'b'],
      ['no first', 'b', 'a'],
    ])('the safer stands and the conflict shows (%s)', (_, yesId, noId) => {
      const pair = [
        { ...yes, id: yesId },
        { ...no, id: noId },
      ] as Fact[];
      const j = judge(pair);
      expect(j.view.word).toBe('Edge');
      expect(j.conflicts).toMatchObject([{ question: 'tier/stand', safer: noId, other: yesId }]);
    });
    it('a later check by a qualified author settles it', () => {
      const j = judge([yes, no, assessment(upTo('walk'), { at: 2 })]);
      expect(j.view.word).toBe('Walk');
      expect(j.conflicts).toEqual([]);
    });
    it('a time known only about is of the same time within a quarter of an hour', () => {
      const about = assessment(upTo('turn'), { at: 1.2, precision: 'about' });
      expect(word([no, about])).toBe('Edge');
      const exact = assessment(upTo('turn'), { at: 1.2 });
      expect(word([no, exact])).toBe('Turn');
    });
  });

  describe('secured', () => {
    const secured = upTo('stand', { stand: { how: 'secured', securedWith: 'standing-aid', people: 2 } });
    it('counts for the tier and is kept', () => {
      const j = judge([assessment(secured)]);
      expect(j.view).toMatchObject({ word: 'Stand', secured: true });
      expect(j.cleared.has('stand')).toBe(true);
      expect(j.clearedFree.has('stand')).toBe(false);
    });
    it('ends when the same stage is cleared free', () => {
      const j = judge([assessment(secured, { at: 0 }), assessment(upTo('stand'), { at: 5 })]);
      expect(j.view.secured).toBe(false);
      expect(j.clearedFree.has('stand')).toBe(true);
    });
    it('a free rise without push against resistance on a bearing leg counts as secured', () => {
      const weak = upTo('stand', {
        upright: {
          findings: (['left', 'right'] as const).flatMap((side) => [
            { part: 'heel-held', side, result: 'met' as const },
            { part: 'sole-pushes', side, result: 'not-met' as const },
          ]),
        },
      });
      const j = judge([assessment(weak)]);
      expect(j.view).toMatchObject({ word: 'Stand', secured: true });
      expect(j.view.because.map((b) => b.rule)).toContain('tier/free-rise-needs-strength');
    });
  });

  describe('one leg', () => {
    const oneLeg = { stand: { oneLeg: 'left' as const } };
    it('clears Stand as one leg', () => {
      expect(judge([assessment(upTo('stand', oneLeg))]).view).toMatchObject({
        word: 'Stand',
        oneLeg: 'left',
      });
    });
    it('goes on only with a therapist', () => {
      expect(word([assessment(upTo('walk', oneLeg))])).toBe('Stand');
      expect(rules([assessment(upTo('walk', oneLeg))])).toContain('tier/one-leg-needs-therapist');
      expect(word([assessment(upTo('walk', oneLeg), { role: 'therapist' })])).toBe('Walk');
    });
    it('is not cleared on a leg that may bear nothing by order', () => {
      const order = fact('order-changed', {
        order: { about: 'weight-bearing', limb: 'left-leg', bears: 'none' },
      });
      expect(word([order, assessment(upTo('stand', oneLeg), { at: 1 })])).toBe('Edge');
      expect(word([order, assessment(upTo('stand', { stand: { oneLeg: 'right' } }), { at: 1 })])).toBe(
        'Stand',
      );
    });
  });

  describe('pressure on rising', () => {
    it('a fall without symptoms clears Stand with a pressure drop', () => {
      const j = judge([full(stood(130, 108, 126))]);
      expect(j.view.word).toBe('Stand');
      expect(j.pressureDrop).toMatchObject({ value: true });
    });
    it.each([
      ['symptoms', full(stood(130, 128, 126), ['dizzy'])],
      ['standing systolic under 90', full(stood(105, 89, 95))],
      ['a missing reading', full(stood(130, 128, 126).slice(0, 2))],
    ])('%s: Stand is not cleared', (_, f) => {
      expect(word([f])).toBe('Edge');
    });
    it('a drop lasts until a whole pressure set shows none', () => {
      const drop = full(stood(130, 108, 126), [], 0);
      const short = assessment(upTo('stand'), { at: 4 }, { readings: stood(130, 128, 126).slice(0, 2) });
      expect(judge([drop, short]).pressureDrop).not.toBeNull();
      expect(judge([drop, full(stood(130, 128, 126), [], 8)]).pressureDrop).toBeNull();
    });
  });

  it('readings that say "not now" keep the start from being cleared', () => {
    const low = assessment(
      upTo('walk'),
      {},
      { readings: [{ kind: 'breathing', perMinute: 34, at: new Date(hours(0)).toISOString() }] },
    );
    expect(word([low])).toBe('Supported');
    expect(
      judge([low])
        .view.because.map((b) => b.words)
        .join(),
    ).toContain('breathing rate 34');
  });

  it.each([
    ['clinicians-plan', { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'p1' } }, null],
    // The staged check guards more than a comfort plan: anyone may go back to it.
    ['comfort', { scope: 'comfort' }, 'Walk'],
  ] as const)('under %s there is no tier', (_, data, byAnyone) => {
    const a = assessment(upTo('walk'));
    const fenced = fact('scope-set', data, { at: 1 });
    expect(judge([a, fenced]).view).toMatchObject({ word: null, notch: null });
    expect(word([a, fenced, fact('scope-set', { scope: 'staged' }, { at: 2, role: 'aide' })])).toBe(byAnyone);
    expect(word([a, fenced, fact('scope-set', { scope: 'staged' }, { at: 2 })])).toBe('Walk');
  });

  it('an assessment under a protocol that cannot be found lowers when it failed and never raises', () => {
    const known = assessment(upTo('turn'), { at: 0 });
    expect(word([lost(upTo('walk'))])).toBe('Not known');
    expect(word([known, lost(upTo('walk'))])).toBe('Turn');
    expect(word([known, lost(upTo('edge', { edge: notMet('comes-to-edge') }))])).toBe('Supported');
  });

  it("reads a ward's own protocol, and what a stage means from it", () => {
    const own = structuredClone(DEFAULT_PROTOCOL);
    own.id = 'own';
    own.version = 2;
    own.stages = own.stages.filter((s) => s.id !== 'turn');
    own.stages.forEach((s) => {
      s.id = `our-${s.id}`;
    });
    const f = assessment(
      {},
      {},
      {
        protocol: { id: 'own', version: 2 },
        stages: own.stages.slice(0, 4).map((s) => ({
          stage: s.id,
          outcome: 'met',
          how: 'free',
          people: 0,
          findings: [],
          symptom: false,
          at: new Date(hours(0)).toISOString(),
        })),
      },
    );
    const j = judgeTier({
      ...tierInput([f]),
      protocols: protocolLookup([{ id: 'own', version: 2, document: own }]),
    });
    expect(j.view).toMatchObject({ word: 'Stand', notch: 3 / 4, protocol: { id: 'own', version: 2 } });
    expect([...j.cleared]).toEqual(['clear', 'upright', 'edge', 'stand']);
  });

  it('remembers whether the person ever walked here', () => {
    expect(judge([assessment(upTo('turn'))]).everWalked).toBe(false);
    expect(judge([assessment(upTo('walk'))]).everWalked).toBe(true);
  });
});
