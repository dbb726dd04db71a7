import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import {
  allMet,
  assessment,
  hours,
  notMet,
  tierInput,
  upTo,
} from '../../assessments/rules/assessment.testkit.ts';
import { judgeTier } from '../../assessments/rules/tier.ts';
import type { Finding } from '../../assessments/values.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Limb, WeightBearing } from '../../orders/values.ts';
import { bearsAsAWhole, capabilityOf } from './capability.ts';
import type { PlanInput } from './types.ts';

const orders = (legs: Partial<Record<Limb, WeightBearing>> = {}): PlanInput['orders'] => ({
  activity: null,
  weightBearing: new Map(
    Object.entries(legs).map(([limb, bears]) => [
      limb as Limb,
      { value: { about: 'weight-bearing', limb: limb as Limb, bears }, fact: 'o1' as never, at: hours(0) },
    ]),
  ),
  precautions: new Map(),
  brace: null,
});
const capability = (
  facts: readonly Fact[],
  {
    at = 1,
    legs = {},
    weight = null,
  }: { at?: number; legs?: Partial<Record<Limb, WeightBearing>>; weight?: PlanInput['weight'] } = {},
) => {
  const input = tierInput(facts, at);
  return capabilityOf({ ...input, tier: judgeTier(input), orders: orders(legs), weight });
};
const withFindings = (stage: string, change: (f: Finding) => Finding) => ({
  findings: allMet(stage).map(change),
});

const says = (waitsForHelp: 'yes' | 'no' | 'varies', at: number) =>
  assessment(upTo('walk'), { at }, { cooperation: { waitsForHelp, followsInstructions: 'yes' } });

describe('capability', () => {
  it('never seen standing counts as bearing nothing, whatever the order allows', () => {
    const c = capability([assessment(upTo('edge'))], { legs: { 'left-leg': 'unrestricted' } });
    expect(c.weightBearing).toEqual({ 'left-leg': 'none', 'right-leg': 'none' });
    expect(c.bears).toBe('none');
  });
  it.each([
    [{}, 'unrestricted', 'full'],
    [{ 'left-leg': 'limited' }, 'limited', 'partial'],
    [{ 'left-leg': 'none' }, 'none', 'partial'],
    [{ 'left-leg': 'none', 'right-leg': 'limited' }, 'none', 'none'],
  ] as const)('seen standing on both legs, with orders %j', (legs, left, bears) => {
    const c = capability([assessment(upTo('stand'))], { legs });
    expect(c.weightBearing['left-leg']).toBe(left);
    expect(c.bears).toBe(bears);
  });
  // references: one leg none with the other good = partial, both none = none (ours, practice)
  it.each([
    ['unrestricted', 'unrestricted', 'full'],
    ['unrestricted', 'limited', 'partial'],
    ['unrestricted', 'none', 'partial'],
    ['limited', 'limited', 'partial'],
    ['limited', 'none', 'none'],
    ['none', 'none', 'none'],
  ] as const)('%s and %s bear %s as a whole, either way round', (a, b, whole) => {
    expect(bearsAsAWhole(a, b)).toBe(whole);
    expect(bearsAsAWhole(b, a)).toBe(whole);
  });
  it('one leg: the other bears nothing, and the move is towards the one that does', () => {
    const c = capability([assessment(upTo('stand', { stand: { oneLeg: 'right' } }))]);
    expect(c.weightBearing).toEqual({ 'left-leg': 'none', 'right-leg': 'unrestricted' });
    expect(c).toMatchObject({ bears: 'partial', strongerSide: 'right' });
  });
  it('a leg that was seen not to bear bears nothing until it is seen to, whatever standing was told since', () => {
    const rightNot = allMet('stand').map((f) =>
      f.part === 'leg-bears' && f.side === 'right' ? { ...f, result: 'not-met' as const } : f,
    );
    const onLeft = assessment(upTo('stand', { stand: { oneLeg: 'left', findings: rightNot } }), { at: 0 });
    const stood = (findings: Finding[]) =>
      capability([onLeft, assessment(upTo('stand', { stand: { findings } }), { at: 0.5 })]);
    expect(stood([])).toMatchObject({
      weightBearing: { 'left-leg': 'unrestricted', 'right-leg': 'none' },
      bears: 'partial',
    });
    expect(stood(allMet('stand')).bears).toBe('full');
  });
  it('standing met with not a word on either leg is both legs', () => {
    const c = capability([assessment(upTo('stand', { stand: { findings: [] } }))]);
    expect(c.weightBearing).toEqual({ 'left-leg': 'unrestricted', 'right-leg': 'unrestricted' });
  });
  it('says each thing it knows once, and nothing else', () => {
    expect(capability([assessment(upTo('walk'))]).because.map((b) => b.rule)).toEqual([
      'capability/weight-bearing',
      'capability/worst-of-the-window',
      'capability/assists',
    ]);
    expect(capability([]).because.map((b) => b.rule)).toEqual([
      'capability/not-seen-standing',
      'capability/not-recorded',
      'capability/assists',
    ]);
  });
  it('standing lost again is bearing nothing again', () => {
    const facts = [
      assessment(upTo('stand'), { at: 0 }),
      assessment(upTo('stand', { stand: notMet('rises') }), { at: 0.5 }),
    ];
    expect(capability(facts).bears).toBe('none');
  });

  it('the worst answer of the last 24 h decides, and the answer changes when it drops out', () => {
    const facts = [says('no', 0), says('varies', 6), says('yes', 12)];
    expect(capability(facts, { at: 13 })).toMatchObject({ waitsForHelp: 'no', nextChange: hours(23) });
    expect(capability(facts, { at: 23.5 })).toMatchObject({ waitsForHelp: 'no', nextChange: hours(24) });
    expect(capability(facts, { at: 24 })).toMatchObject({ waitsForHelp: 'varies', nextChange: hours(30) });
    expect(capability(facts, { at: 30 })).toMatchObject({ waitsForHelp: 'yes', nextChange: null });
  });
  it('an answer is in the last 24 h up to the millisecond, and out of them at the hour', () => {
    const facts = [says('no', 0), says('yes', 1)];
    const at = (ms: number) => capability(facts, { at: 24 + ms / HOUR });
    expect(at(-1)).toMatchObject({ waitsForHelp: 'no', nextChange: hours(24) });
    expect(at(0)).toMatchObject({ waitsForHelp: 'yes', nextChange: null });
    const follows = (which: 'yes' | 'no', hour: number) =>
      assessment(
        upTo('walk'),
        { at: hour },
        { cooperation: { waitsForHelp: 'yes', followsInstructions: which } },
      );
    const both = [follows('no', 0), follows('yes', 1)];
    expect(capability(both, { at: 24 - 1 / HOUR }).followsInstructions).toBe('no');
    expect(capability(both, { at: 24 }).followsInstructions).toBe('yes');
  });
  it('the worst of the window is said, with the entries that gave it', () => {
    const worst = capability([says('no', 0), says('yes', 1)], { at: 2 }).because.find(
      (b) => b.rule === 'capability/worst-of-the-window',
    );
    expect(worst?.words).toBe(
      'Waits for help: no; follows instructions: yes (the worst of the last 24 h decides)',
    );
    expect(worst?.facts).toHaveLength(1);
  });
  it('an old answer stands until there is a newer one; none at all is not known', () => {
    const no = assessment(
      upTo('walk'),
      {},
      { cooperation: { waitsForHelp: 'no', followsInstructions: 'no' } },
    );
    expect(capability([no], { at: 90 })).toMatchObject({ waitsForHelp: 'no', followsInstructions: 'no' });
    const { cooperation: _, ...silent } = assessment(upTo('walk')).data;
    expect(capability([{ ...no, data: silent }])).toMatchObject({
      waitsForHelp: 'not known',
      assists: 'not',
    });
  });
  it('sitting balance is that of the same ward day', () => {
    const facts = [assessment(upTo('edge'), { at: 0 })];
    // The day of these tests turns at 07:00, 23 h after hour 0.
    expect(capability(facts, { at: 22.9 })).toMatchObject({ sittingBalance: true, nextChange: hours(23) });
    expect(capability(facts, { at: 23 })).toMatchObject({ sittingBalance: false, nextChange: null });
  });
  it('sitting balance counts from the first moment of the ward day', () => {
    // 07:00, when the day of these tests turns, and a minute before.
    expect(capability([assessment(upTo('edge'), { at: -1 })]).sittingBalance).toBe(true);
    expect(capability([assessment(upTo('edge'), { at: -1 - 1 / 60 })]).sittingBalance).toBe(false);
  });
  it('an arm or a grip that was tested on one side only counts for that side', () => {
    const only = (side: 'left' | 'right', result: Finding['result']) => ({
      findings: allMet('upright')
        .filter((f) => !['arm-pushes', 'grip'].includes(f.part) || f.side === side)
        .map((f) => (['arm-pushes', 'grip'].includes(f.part) ? { ...f, result } : f)),
    });
    const seen = (side: 'left' | 'right', result: Finding['result']) =>
      capability([assessment(upTo('upright', { upright: only(side, result) }))]);
    for (const side of ['left', 'right'] as const) {
      expect(seen(side, 'met')).toMatchObject({ armStrength: 'one', grip: 'one' });
      expect(seen(side, 'not-met')).toMatchObject({ armStrength: 'none', grip: 'none' });
    }
  });
  it('grip and arms: both, one, none, and not known when never tested', () => {
    const upright = (sidesOff: string[]) =>
      capability([
        assessment(
          upTo('upright', {
            upright: withFindings('upright', (f) =>
              f.part === 'grip' && sidesOff.includes(f.side ?? '') ? { ...f, result: 'not-met' } : f,
            ),
          }),
        ),
      ]).grip;
    expect(upright([])).toBe('both');
    expect(upright(['left'])).toBe('one');
    expect(upright(['left', 'right'])).toBe('none');
    expect(capability([assessment(upTo('clear'))])).toMatchObject({
      grip: 'not known',
      armStrength: 'not known',
    });
  });
  it('not tested leaves the earlier finding standing', () => {
    const later = withFindings('upright', (f) =>
      f.part === 'grip' ? { ...f, result: 'not-tested', reason: 'pain' } : f,
    );
    const facts = [assessment(upTo('upright')), assessment(upTo('upright', { upright: later }), { at: 0.5 })];
    expect(capability(facts).grip).toBe('both');
  });
  it('assists: alone to the edge fully, upright partly, else not; not following never', () => {
    expect(capability([assessment(upTo('edge'))]).assists).toBe('fully');
    expect(capability([assessment(upTo('edge', { edge: { people: 1 } }))]).assists).toBe('partly');
    expect(capability([assessment(upTo('upright'))]).assists).toBe('partly');
    // Held safe on the way is not alone, though nobody stood beside.
    const held = { how: 'secured', securedWith: 'raised-bed', people: 0 } as const;
    expect(capability([assessment(upTo('edge', { edge: held }))]).assists).toBe('partly');
    expect(capability([assessment(upTo('clear'))]).assists).toBe('not');
    const not = assessment(
      upTo('walk'),
      {},
      { cooperation: { waitsForHelp: 'yes', followsInstructions: 'no' } },
    );
    expect(capability([not]).assists).toBe('not');
  });
  it('an estimated weight counts with 20 % added and is marked; none is unknown', () => {
    const weight = (how: 'measured' | 'estimated') =>
      capability([], { weight: { value: { kg: 100, how }, fact: 'w1' as never, at: hours(0) } });
    expect(weight('measured')).toMatchObject({ weightKg: 100, weightMarked: 'measured' });
    expect(weight('estimated')).toMatchObject({ weightKg: 120, weightMarked: 'estimated, 20 % added' });
    expect(capability([])).toMatchObject({ weightKg: null, weightMarked: 'unknown' });
  });
  it('nothing known is nothing able', () => {
    expect(capability([], { at: HOUR })).toMatchObject({
      bears: 'none',
      assists: 'not',
      sittingBalance: false,
      waitsForHelp: 'not known',
      followsInstructions: 'not known',
      nextChange: null,
    });
  });
});
