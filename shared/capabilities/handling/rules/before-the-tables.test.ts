/**
 * The rules before the published tables (design, section 4, "before the tables", a to g): ours,
 * common practice, no source. One group a letter, each on both sides of its limit.
 */
import { describe, expect, it } from 'vitest';
import { allMet, assessment, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Task } from '../values.ts';
import { planStay } from './plan.ts';
import {
  dayPlan,
  help,
  limbs,
  planInput,
  seenTo,
  stated,
  trust,
  uncooperative,
  walker,
  weight,
  withHeldStand,
} from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const SLING = ['go', 'two', 'sling-lift'];
const STANDING_AID = ['go', 'one', 'standing-aid'];
const SEATED = ['go', 'one', 'seated-transfer-aid'];
const rulesOf = (input: PlanInput, task: Task) => dayPlan(input, task).because.map((b) => b.rule);
/** The upright stage with some findings of a part not met. */
const upright = (part: string, ...off: ('left' | 'right')[]): Record<string, StageSays> => ({
  upright: {
    findings: allMet('upright').map((f) =>
      f.part === part && off.includes(f.side!) ? { ...f, result: 'not-met' as const } : f,
    ),
  },
});

describe('(a) weight bearing is the lesser of the order and what was seen', () => {
  it.each([
    ['seen standing, no order', walker, {}, ['go', 'stand-by', 'none']],
    ['seen standing, one leg limited by order', walker, { 'left-leg': 'limited' }, STANDING_AID],
    ['not seen standing, order without limit', seenTo('edge'), { 'left-leg': 'unrestricted' }, SEATED],
    ['not seen standing, no order', seenTo('edge'), {}, SEATED],
  ] as const)('%s', (_, facts, orders, expected) => {
    expect(help(planInput(facts, { orders: limbs(orders) }), 'bed-chair')).toEqual(expected);
  });
  it('says which order was the lesser', () => {
    const input = planInput(walker, { orders: limbs({ 'right-leg': 'limited' }) });
    const why = dayPlan(input, 'bed-chair').because.find(
      (b) => b.rule === 'capability/lesser-of-order-and-seen',
    );
    expect(why).toEqual({
      rule: 'capability/lesser-of-order-and-seen',
      facts: ['o-right-leg'],
      words: 'right leg: limited by order',
    });
  });
  it('an order that allows as much as was seen is not said as a limit', () => {
    const input = planInput(walker, { orders: limbs({ 'right-leg': 'unrestricted' }) });
    expect(rulesOf(input, 'bed-chair')).not.toContain('capability/lesser-of-order-and-seen');
  });
});

describe('(b) not following instructions or not waiting for help', () => {
  it.each(['waits', 'follows'] as const)('(%s) is never stand by from full weight bearing', (which) => {
    const input = planInput(uncooperative(which));
    for (const task of ['bed-chair', 'toilet'] as const) {
      expect(help(input, task)).toEqual(SLING);
      expect(rulesOf(input, task)).toContain('before-the-tables/not-cooperating');
    }
    for (const task of ['stand', 'walk'] as const) {
      expect(help(input, task)).toEqual(['go', 'one', 'none']);
      expect(rulesOf(input, task)).toContain('ours/does-not-wait');
    }
  });
  it('holds for "varies" and for what nobody recorded, too', () => {
    const varies = [
      assessment(upTo('walk'), {}, { cooperation: { waitsForHelp: 'varies', followsInstructions: 'yes' } }),
    ];
    const { cooperation: _, ...silent } = walker[0]!.data as Record<string, unknown>;
    const unsaid = [{ ...walker[0]!, data: silent as never }];
    expect(help(planInput(varies), 'bed-chair')).toEqual(SLING);
    expect(help(planInput(unsaid), 'bed-chair')).toEqual(SLING);
  });
  it('a clear yes to both is the row of those who cooperate', () => {
    expect(help(planInput(walker), 'bed-chair')).toEqual(['go', 'stand-by', 'none']);
    expect(rulesOf(planInput(walker), 'bed-chair')).not.toContain('before-the-tables/not-cooperating');
  });
});

describe('(c) a seated transfer needs sitting balance cleared today, else a sling lift', () => {
  // The ward day of these tests turns 23 h after the check.
  it.each([
    [22.9, SEATED],
    [23, SLING],
  ])('%s h after the check', (at, expected) => {
    expect(help(planInput(seenTo('edge'), {}, at), 'bed-chair')).toEqual(expected);
  });
  it('says so', () => {
    const why = dayPlan(planInput(seenTo('edge'), {}, 23), 'bed-chair').because;
    expect(why.find((b) => b.rule === 'before-the-tables/fit-for-the-aid')?.words).toContain(
      'sitting balance cleared today',
    );
  });
  it('a seated aid in the chair needs it as well', () => {
    const facts = seenTo('edge', { ...upright('arm-pushes', 'left', 'right'), edge: { people: 1 } });
    expect(help(planInput(facts, {}, 22.9), 'in-chair')).toEqual(['go', 'two', 'seated-transfer-aid']);
    expect(help(planInput(facts, {}, 23), 'in-chair')).toEqual(SLING);
    expect(rulesOf(planInput(facts, {}, 23), 'in-chair')).toContain('before-the-tables/fit-for-the-aid');
  });
  it('from the bariatric weight up as well: a bariatric lift, three', () => {
    const at = (h: number) => help(planInput(seenTo('edge'), weight(140), h), 'bed-chair');
    expect(at(22.9)).toEqual(['go', 'two', 'seated-transfer-aid']);
    expect(at(23)).toEqual(['go', 'three-or-more', 'bariatric-lift']);
  });
});

describe('(d) a standing aid needs sitting balance, a leg that bears, instructions followed and grip on one side', () => {
  const limited = { orders: limbs({ 'left-leg': 'limited' }) };
  const given = (change: (i: PlanInput) => Partial<PlanInput['capability']>) => {
    const input = planInput(walker, limited);
    return { ...input, capability: { ...input.capability, ...change(input) } };
  };
  it('with all four it is the standing aid', () => {
    expect(help(planInput(walker, limited), 'bed-chair')).toEqual(STANDING_AID);
  });
  it.each<[string, (i: PlanInput) => Partial<PlanInput['capability']>]>([
    ['no sitting balance', () => ({ sitsUnheld: false })],
    ['no grip', () => ({ grip: 'none' })],
    ['grip never tested', () => ({ grip: 'not known' })],
    ['does not follow', () => ({ followsInstructions: 'no' })],
    ['no leg bears, arms do not push', () => ({ bears: 'none', armStrength: 'none' })],
  ])('%s: sling lift, two', (_, change) => {
    expect(help(given(change), 'bed-chair')).toEqual(SLING);
  });
  it('grip on one side is enough', () => {
    expect(
      help(
        given(() => ({ grip: 'one' })),
        'bed-chair',
      ),
    ).toEqual(STANDING_AID);
  });
  it('sternum precautions: arms may not pull, so a sling lift', () => {
    const input = planInput(walker, {
      orders: {
        ...limited.orders,
        precautions: new Map([['sternum', stated(true as const)]]),
      },
    });
    expect(help(input, 'bed-chair')).toEqual(SLING);
  });
  it('standing held with an aid nobody may use now is a HOLD', () => {
    const facts = seenTo('stand', { ...withHeldStand, ...upright('grip', 'left', 'right') });
    expect(help(planInput(facts), 'stand')).toEqual(['hold', 'two', 'sling-lift']);
    expect(help(planInput(seenTo('stand', withHeldStand)), 'stand')).toEqual(['go', 'two', 'standing-aid']);
  });
});

describe('(e) one leg none and the other unrestricted is partial', () => {
  it.each([
    ['none', 'unrestricted', STANDING_AID],
    ['limited', 'unrestricted', STANDING_AID],
    ['limited', 'limited', STANDING_AID],
    ['none', 'limited', SEATED],
    ['none', 'none', SEATED],
  ] as const)('left %s, right %s', (left, right, expected) => {
    for (const orders of [
      limbs({ 'left-leg': left, 'right-leg': right }),
      limbs({ 'left-leg': right, 'right-leg': left }),
    ]) {
      expect(help(planInput(walker, { orders }), 'bed-chair')).toEqual(expected);
    }
  });
});

describe('(f) a printed range of people takes the higher, and a lone carer with a belt is off by default', () => {
  it('two to three in bed is three', () => {
    expect(help(planInput(seenTo('upright')), 'in-bed')).toEqual(['go', 'three-or-more', 'slide-sheet']);
  });
  it('one to two in the chair is two', () => {
    expect(help(planInput(seenTo('clear')), 'in-chair')).toEqual(SLING);
  });
  it.each([
    [undefined, STANDING_AID],
    [false, STANDING_AID],
    [true, ['go', 'one', 'belt']],
  ])('lone carer with a belt set to %s', (set, expected) => {
    const rules = structuredClone(DEFAULT_RULES);
    if (set !== undefined) rules.handling.loneCarerWithBelt.value = set;
    const input = planInput(walker, { orders: limbs({ 'left-leg': 'limited' }), rules });
    expect(help(input, 'bed-chair')).toEqual(expected);
  });
  it('a belt that the ward allows has the needs of the standing aid', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.handling.loneCarerWithBelt.value = true;
    const facts = seenTo('walk', upright('grip', 'left', 'right'));
    expect(help(planInput(facts, { orders: limbs({ 'left-leg': 'limited' }), rules }), 'bed-chair')).toEqual(
      SLING,
    );
  });
});

describe('(g) holding against gravity allows a secured rise only; a free rise needs push against resistance on a bearing side', () => {
  const stand = (facts: typeof walker) => help(planInput(facts), 'stand');
  it.each<[string, ('left' | 'right')[], string[]]>([
    ['both soles push', [], ['go', 'stand-by', 'none']],
    ['one sole pushes', ['left'], ['go', 'stand-by', 'none']],
    ['no sole pushes', ['left', 'right'], ['go', 'two', 'standing-aid']],
  ])('%s', (_, weak, expected) => {
    expect(stand(seenTo('stand', upright('sole-pushes', ...weak)))).toEqual(expected);
  });
  it('on one leg the side that bears is the one that must push', () => {
    const on = (weak: 'left' | 'right') =>
      planInput(seenTo('stand', { ...upright('sole-pushes', weak), stand: { oneLeg: 'left' } }));
    expect(on('right').capability.clearedFree.has('stand')).toBe(true);
    expect(on('left').capability.clearedFree.has('stand')).toBe(false);
  });
  it('a transfer after a rise that was not strong enough is no stand by', () => {
    expect(help(planInput(seenTo('walk', upright('sole-pushes', 'left', 'right'))), 'bed-chair')).toEqual(
      STANDING_AID,
    );
  });
});

describe('what nobody knows', () => {
  it('in the chair: CHECK BEFORE MOVING, and if it cannot wait two and a sling lift', () => {
    const input = planInput([]);
    expect(planStay(input).checkBeforeMoving).toBe(true);
    expect(help(input, 'in-chair')).toEqual(['go', 'three-or-more', 'sling-lift']);
    expect(help(planInput([], weight(136)), 'in-chair')).toEqual(['go', 'three-or-more', 'bariatric-lift']);
    expect(help(planInput(walker, { trust: trust('not-known') }), 'in-chair')).toEqual(SLING);
  });
});
