/**
 * Orders and findings on the arms: an arm with an order of none or limited neither pushes nor pulls,
 * and nothing on the arms ever lowers help. Common practice, no source, to be signed by the ward.
 */
import { describe, expect, it } from 'vitest';
import { allMet, assessment, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { Finding, WalkingSupport } from '../../assessments/values.ts';
import type { Bears } from './plan.testkit.ts';
import { dayPlan, help, limbs, planInput, seenTo, stated, trust, walker } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const under = (bears: Bears, extra: Partial<PlanInput> = {}, facts = walker) =>
  planInput(facts, { ...extra, orders: limbs(bears) });
const withUpright = (change: (f: Finding) => Finding, last = 'walk') =>
  seenTo(last, { upright: { findings: allMet('upright').map(change) } });
const armsNotMet = (last = 'walk') =>
  withUpright((f) => (f.part === 'arm-pushes' ? { ...f, result: 'not-met' } : f), last);
const armsNotTested = [
  assessment(
    upTo('walk', { upright: { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') } }),
  ),
];

describe('an order on an arm', () => {
  it.each<[Bears, string, string]>([
    [{}, 'both', 'both'],
    [{ 'left-arm': 'unrestricted' }, 'both', 'both'],
    [{ 'left-arm': 'limited' }, 'one', 'one'],
    [{ 'right-arm': 'none' }, 'one', 'one'],
    [{ 'left-arm': 'limited', 'right-arm': 'none' }, 'none', 'none'],
    [{ 'left-leg': 'none' }, 'both', 'both'],
  ])('%o leaves %s to push and %s to grip', (bears, arms, grip) => {
    expect(under(bears).capability).toMatchObject({ armStrength: arms, grip });
  });
  it('leaves nothing where the other arm was seen not to push', () => {
    const facts = withUpright((f) =>
      f.part === 'arm-pushes' && f.side === 'left' ? { ...f, result: 'not-met' } : f,
    );
    expect(under({ 'right-arm': 'none' }, {}, facts).capability.armStrength).toBe('none');
    expect(under({ 'left-arm': 'none' }, {}, facts).capability.armStrength).toBe('one');
  });
  it('without limit makes up for nothing that was not seen', () => {
    const both: Bears = { 'left-arm': 'unrestricted', 'right-arm': 'unrestricted' };
    expect(under(both, {}, armsNotMet()).capability.armStrength).toBe('none');
    expect(under(both, {}, armsNotTested).capability.armStrength).toBe('not known');
    expect(under({ 'left-arm': 'none' }, {}, armsNotTested).capability.armStrength).toBe('not known');
    expect(
      under({ 'left-arm': 'none', 'right-arm': 'limited' }, {}, armsNotTested).capability.armStrength,
    ).toBe('none');
  });
  it('says itself as a reason with the order behind it', () => {
    expect(under({ 'left-arm': 'limited' }).capability.because).toContainEqual({
      rule: 'capability/arm-by-order',
      facts: ['o-left-arm'],
      words: 'left arm: limited by order, so it does not push and its grip does not count',
    });
    const plan = dayPlan(under({ 'left-arm': 'limited' }, {}, seenTo('edge')), 'bed-chair');
    expect(plan.because.map((b) => b.rule)).toContain('capability/arm-by-order');
    expect(under({ 'left-arm': 'unrestricted' }).capability.because.map((b) => b.rule)).not.toContain(
      'capability/arm-by-order',
    );
  });
  it('takes the seated aid away, and the standing aid when no grip is left', () => {
    const seated = (bears: Bears) => help(under(bears, {}, seenTo('edge')), 'bed-chair');
    expect(seated({})).toEqual(['go', 'one', 'seated-transfer-aid']);
    expect(seated({ 'left-arm': 'limited' })).toEqual(['go', 'two', 'sling-lift']);
    const standing = (bears: Bears) => help(under({ 'left-leg': 'limited', ...bears }), 'bed-chair');
    expect(standing({ 'left-arm': 'none' })).toEqual(['go', 'one', 'standing-aid']);
    expect(standing({ 'left-arm': 'none', 'right-arm': 'limited' })).toEqual(['go', 'two', 'sling-lift']);
  });
  it('a number in it is shown and never turned into a push', () => {
    const orders = limbs({});
    const numbered = new Map(orders.weightBearing);
    numbered.set(
      'right-arm',
      stated({ about: 'weight-bearing', limb: 'right-arm', bears: 'limited', limit: { kg: 5 } }),
    );
    const input = planInput(walker, { orders: { ...orders, weightBearing: numbered } });
    expect(input.capability.armStrength).toBe('one');
    expect(dayPlan(input, 'walk').cautions).toContain('right arm: weight bearing limited, 5 kg');
  });
});

describe('a walking support that an order takes an arm from', () => {
  const going = (support: WalkingSupport, bears: Bears, facts = walker) =>
    under(bears, { walkingSupport: stated(support) }, facts);
  it.each([
    ['none', 0],
    ['stick', 1],
    ['two-sticks', 2],
    ['crutches', 2],
    ['frame', 2],
    ['wheeled-frame', 2],
  ] as const)('%s needs %i arms', (support, needs) => {
    const walks = (bears: Bears) => dayPlan(going(support, bears), 'walk').hold;
    expect(walks({})).toBe(false);
    expect(walks({ 'left-arm': 'limited', 'right-arm': 'limited' })).toBe(false);
    expect(walks({ 'left-arm': 'none' })).toBe(needs > 1);
    expect(walks({ 'left-arm': 'none', 'right-arm': 'none' })).toBe(needs > 0);
  });
  it('is a HOLD for walking, with the order as its reason', () => {
    const plan = dayPlan(going('frame', { 'right-arm': 'none' }), 'walk');
    expect(plan.because).toContainEqual({
      rule: 'order/arm',
      facts: ['o-right-arm'],
      words: 'Order: right arm bears nothing, and the frame needs it: ask',
    });
    expect(plan.with).toEqual([]);
    // What cannot wait is not left to somebody who stands by.
    expect(plan).toMatchObject({ hold: true, people: 'one', aid: 'none' });
    expect(plan.because.filter(({ rule }) => rule === 'order/arm')).toHaveLength(1);
  });
  it('is a standing aid for standing and for the chair, and a HOLD where that cannot be used', () => {
    const input = going('frame', { 'right-arm': 'none' });
    expect(help(input, 'stand')).toEqual(['go', 'two', 'standing-aid']);
    expect(help(input, 'bed-chair')).toEqual(['go', 'one', 'standing-aid']);
    expect(help(input, 'toilet')).toEqual(['go', 'one', 'standing-aid']);
    expect(dayPlan(input, 'bed-chair').with).toEqual(['powered standing aid']);
    const noGrip = going('frame', { 'right-arm': 'none', 'left-arm': 'none' });
    expect(help(noGrip, 'stand')).toEqual(['hold', 'two', 'sling-lift']);
    expect(help(noGrip, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(dayPlan(noGrip, 'walk').because.map((b) => b.words)).toContain(
      'Order: left arm and right arm bears nothing, and the frame needs it: ask',
    );
  });
  it('counts for someone only seen walking on arrival, too', () => {
    const seen = planInput([], {
      seenWalking: stated('frame' as const),
      orders: limbs({ 'left-arm': 'none' }),
      trust: trust('not-known'),
    });
    expect(dayPlan(seen, 'walk').hold).toBe(true);
    expect(help(seen, 'toilet')).toEqual(['go', 'one', 'none']);
    expect(help(seen, 'in-bed')).toEqual(['go', 'stand-by', 'none']);
  });
});

describe('a leg that bears in part needs an arm on the walking support', () => {
  const limited: Bears = { 'left-leg': 'limited' };
  it.each<[string, PlanInput, string[], string[]]>([
    ['both arms push', under(limited), ['go', 'one', 'walking-support'], ['go', 'one', 'walking-support']],
    [
      'one arm pushes',
      under({ ...limited, 'left-arm': 'limited' }),
      ['go', 'one', 'walking-support'],
      ['go', 'one', 'walking-support'],
    ],
    [
      'no arm was tested',
      under(limited, {}, armsNotTested),
      ['go', 'two', 'walking-support'],
      ['go', 'two', 'walking-support'],
    ],
    [
      'no arm was seen to push',
      under(limited, {}, armsNotMet()),
      ['hold', 'two', 'walking-support'],
      ['go', 'two', 'standing-aid'],
    ],
    [
      'no arm may push by order',
      under({ ...limited, 'left-arm': 'none', 'right-arm': 'limited' }),
      ['hold', 'two', 'walking-support'],
      ['hold', 'two', 'sling-lift'],
    ],
    [
      'sternum precautions',
      planInput(walker, { orders: limbs(limited, ['sternum']) }),
      ['hold', 'one', 'walking-support'],
      ['hold', 'two', 'sling-lift'],
    ],
  ])('%s', (_, input, walk, stand) => {
    expect(help(input, 'walk')).toEqual(walk);
    expect(help(input, 'stand')).toEqual(stand);
  });
  it('says which orders are in the way', () => {
    const why = (input: PlanInput) =>
      dayPlan(input, 'walk').because.find((b) => b.rule === 'ours/arms')?.facts ?? null;
    expect(why(planInput(walker, { orders: limbs(limited, ['sternum']) }))).toEqual(['o-sternum']);
    expect(why(under({ ...limited, 'left-arm': 'none', 'right-arm': 'limited' }))).toEqual([
      'o-left-arm',
      'o-right-arm',
    ]);
    expect(why(under(limited))).toBeNull();
  });
  it('says what it asks for, and why it asks for more', () => {
    const words = (input: PlanInput, rule: string) =>
      dayPlan(input, 'walk').because.find((b) => b.rule === rule)?.words;
    const one = 'A leg bears in part or not at all: one person and the walking support';
    expect(words(under(limited), 'ours/limited-leg')).toBe(one);
    expect(words(under(limited, {}, armsNotTested), 'ours/limited-leg')).toBe(
      `${one}; two while no arm was seen to push`,
    );
    expect(words(under(limited, {}, armsNotMet()), 'ours/arms')).toBe(
      'A leg bears in part or not at all, and no arm may push or was seen to: ask',
    );
  });
  it('says when only one arm pushes', () => {
    const one = dayPlan(under({ ...limited, 'left-arm': 'limited' }), 'walk').cautions;
    expect(one).toContain('Only one arm pushes: ask which walking support');
    expect(dayPlan(under(limited), 'walk').cautions.join()).not.toContain('one arm');
  });
  it('with both legs bearing in full the arms do not matter', () => {
    expect(help(planInput(armsNotMet()), 'walk')).toEqual(['go', 'stand-by', 'none']);
    expect(help(planInput(walker, { orders: limbs({}, ['sternum']) }), 'walk')).toEqual([
      'go',
      'stand-by',
      'none',
    ]);
  });
});
