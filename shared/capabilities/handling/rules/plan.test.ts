import { describe, expect, it } from 'vitest';
import { allMet, assessment, notMet, upTo } from '../../assessments/rules/assessment.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { planStay } from './plan.ts';
import {
  dayPlan,
  help,
  leftLeg,
  limbOrder,
  noOrders,
  planInput,
  seenTo,
  stated,
  uncooperative,
  walker,
  weight,
  withHeldStand,
} from './plan.testkit.ts';

describe('transfer to a chair', () => {
  // OSHA 3182 figure 1, rows as restated in references; choices between options are ward settings.
  it('full weight, seen free: stand by', () => {
    expect(help(planInput(walker), 'bed-chair')).toEqual(['go', 'stand-by', 'none']);
  });
  it('partial and cooperating: one, standing aid, towards the stronger side; a lone belt is off by default', () => {
    const input = planInput(seenTo('walk'), { orders: leftLeg('limited') });
    expect(help(input, 'bed-chair')).toEqual(['go', 'one', 'standing-aid']);
    expect(dayPlan(input, 'bed-chair').towards).toBe('right');
  });
  it('a ward that allows a lone carer with a belt gets the belt', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.handling.loneCarerWithBelt.value = true;
    expect(help(planInput(walker, { orders: leftLeg('limited'), rules }), 'bed-chair')).toEqual([
      'go',
      'one',
      'belt',
    ]);
  });
  it('no weight, cooperating, both arms: one, seated aid, and without sitting balance today a sling lift', () => {
    const facts = seenTo('edge');
    expect(help(planInput(facts), 'bed-chair')).toEqual(['go', 'one', 'seated-transfer-aid']);
    expect(help(planInput(facts, {}, 25), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
  it('no weight and no arm strength: two, sling lift', () => {
    const upright = { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') };
    expect(help(planInput(seenTo('edge', { upright })), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
  it.each(['waits', 'follows'] as const)(
    'full weight, but not cooperating (%s): two, sling lift',
    (which) => {
      expect(help(planInput(uncooperative(which)), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    },
  );
  it('a standing aid without grip on any side: sling lift', () => {
    const upright = {
      findings: allMet('upright').map((f) => (f.part === 'grip' ? { ...f, result: 'not-met' as const } : f)),
    };
    const input = planInput(seenTo('walk', { upright }), { orders: leftLeg('limited') });
    expect(help(input, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
  it('standing and turning not seen free is no stand by, whatever the legs bear', () => {
    expect(help(planInput(seenTo('stand')), 'bed-chair')).toEqual(['go', 'one', 'standing-aid']);
  });
  it('turning tried and not met takes two', () => {
    const tried = seenTo('turn', { turn: notMet('side-steps') });
    expect(help(planInput(tried), 'bed-chair')).toEqual(['go', 'two', 'standing-aid']);
  });
  it('secured standing keeps its aid and people until cleared free', () => {
    expect(help(planInput(seenTo('stand', withHeldStand)), 'bed-chair')).toEqual([
      'go',
      'two',
      'standing-aid',
    ]);
    const free = [...seenTo('stand', withHeldStand), assessment(upTo('walk'), { at: 0.5 })];
    expect(help(planInput(free), 'bed-chair')).toEqual(['go', 'stand-by', 'none']);
  });
  it('sternum precautions: arms neither push nor pull', () => {
    const orders = { ...noOrders, precautions: new Map([['sternum' as const, stated(true as const)]]) };
    expect(help(planInput(seenTo('edge'), { orders }), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
  // VA bariatric tables, rev. 2007
  it.each([
    ['full', walker, {}, ['go', 'stand-by', 'none']],
    ['arms push', seenTo('edge'), {}, ['go', 'two', 'seated-transfer-aid']],
    ['not cooperating', uncooperative('waits', 'edge'), {}, ['go', 'three-or-more', 'bariatric-lift']],
  ] as const)('from 136 kg, %s', (_, facts, extra, expected) => {
    expect(help(planInput(facts, { ...weight(136), ...extra }), 'bed-chair')).toEqual(expected);
  });
  it('an estimate counts with 20 % added: 114 kg is from 136 kg up', () => {
    const facts = uncooperative('waits', 'edge');
    expect(help(planInput(facts, weight(114, 'measured')), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(help(planInput(facts, weight(114, 'estimated')), 'bed-chair')).toEqual([
      'go',
      'three-or-more',
      'bariatric-lift',
    ]);
  });
  it("weight unknown: only the ward's highest-rated lift, three, and weigh or estimate", () => {
    const input = planInput(seenTo('edge'), { weight: null });
    expect(help(input, 'bed-chair')).toEqual(['go', 'three-or-more', 'bariatric-lift']);
    expect(planStay(input).cautions.map((c) => c.words)).toContain('Weight unknown: weigh or estimate');
  });
});

describe('in bed, across, and from the floor', () => {
  // OSHA 3182 figures 4, 2 and 6; a printed range takes the higher end.
  it.each([
    ['in-bed', walker, 70, ['go', 'stand-by', 'none']],
    ['in-bed', seenTo('upright'), 70, ['go', 'three-or-more', 'slide-sheet']],
    ['lateral', walker, 70, ['go', 'stand-by', 'none']],
    ['lateral', seenTo('upright'), 70, ['go', 'two', 'lateral-transfer-aid']],
    ['lateral', seenTo('upright'), 113.4, ['go', 'three-or-more', 'lateral-transfer-aid']],
    ['lateral', walker, 140, ['go', 'two', 'none']],
    ['lateral', seenTo('upright'), 140, ['go', 'three-or-more', 'lateral-transfer-aid']],
    ['from-floor', walker, 70, ['go', 'stand-by', 'none']],
    ['from-floor', seenTo('stand'), 70, ['go', 'two', 'sling-lift']],
    ['from-floor', seenTo('stand'), 140, ['go', 'three-or-more', 'bariatric-lift']],
  ] as const)('%s', (task, facts, kg, expected) => {
    expect(help(planInput(facts, weight(kg)), task)).toEqual(expected);
  });
  it('from the floor: look for injury first', () => {
    expect(dayPlan(planInput(walker), 'from-floor').cautions.join()).toContain('Look for injury first');
  });
});

describe('edge, stand, walk: our own table, no published source', () => {
  it.each([
    ['edge-of-bed', 'alone', seenTo('edge'), ['go', 'stand-by', 'none']],
    ['edge-of-bed', 'with help', seenTo('edge', { edge: { people: 1 } }), ['go', 'two', 'slide-sheet']],
    ['edge-of-bed', 'not tried yet', seenTo('upright'), ['go', 'two', 'slide-sheet']],
    ['edge-of-bed', 'lifted', seenTo('edge', { edge: notMet('comes-to-edge') }), ['go', 'two', 'sling-lift']],
    ['stand', 'free', seenTo('stand'), ['go', 'stand-by', 'none']],
    ['stand', 'held', seenTo('stand', withHeldStand), ['go', 'two', 'standing-aid']],
    ['stand', 'one leg', seenTo('stand', { stand: { oneLeg: 'left' } }), ['go', 'two', 'standing-aid']],
    ['stand', 'not cleared', seenTo('edge'), ['hold', 'two', 'sling-lift']],
    ['walk', 'free, nobody helping', walker, ['go', 'stand-by', 'none']],
    ['walk', 'free, one helping', seenTo('walk', { walk: { people: 1 } }), ['go', 'one', 'none']],
    [
      'walk',
      'held',
      seenTo('walk', { walk: { how: 'secured', securedWith: 'two-people', people: 2 } }),
      ['go', 'two', 'none'],
    ],
    ['walk', 'not cleared', seenTo('turn'), ['hold', 'two', 'sling-lift']],
  ] as const)('%s, %s', (task, _, facts, expected) => {
    expect(help(planInput(facts), task)).toEqual(expected);
  });
  it('a leg that may bear nothing stops the walk seen on both, and both stop standing', () => {
    const both = {
      ...noOrders,
      weightBearing: new Map([
        ...leftLeg('none').weightBearing,
        ...limbOrder({ about: 'weight-bearing', limb: 'right-leg', bears: 'none' }).weightBearing,
      ]),
    };
    expect(help(planInput(walker, { orders: leftLeg('none') }), 'walk')).toEqual([
      'hold',
      'one',
      'walking-support',
    ]);
    expect(dayPlan(planInput(walker, { orders: both }), 'stand').hold).toBe(true);
    expect(dayPlan(planInput(walker, { orders: both }), 'walk').hold).toBe(true);
  });
  it("the person's own walking support goes along", () => {
    const plan = dayPlan(planInput(walker, { walkingSupport: stated('wheeled-frame') }), 'walk');
    expect(plan).toMatchObject({ aid: 'walking-support', with: ['wheeled frame'], people: 'stand-by' });
  });
});

describe('one more person', () => {
  const attached = (kind: 'iv-line' | 'chest-drain' | 'oxygen-cylinder', needsOwnPerson = false) =>
    stated({ kind, needsOwnPerson, disconnects: 'nurse' });
  it.each([
    ['one line', [attached('iv-line')], 'stand-by'],
    ['two lines', [attached('iv-line'), attached('iv-line')], 'one'],
    ['a chest drain', [attached('chest-drain')], 'one'],
    ['an oxygen cylinder', [attached('oxygen-cylinder')], 'one'],
    ['a line that needs a person to itself', [attached('iv-line', true)], 'one'],
    ['two, one of them needing a person', [attached('iv-line', true), attached('chest-drain')], 'two'],
  ] as const)('%s', (_, attachments, people) => {
    expect(dayPlan(planInput(walker, { attachments }), 'walk').people).toBe(people);
  });
  it('after a pressure drop, for what rises, with a caution', () => {
    const input = planInput(walker, { pressureDrop: stated(true as const) });
    expect(dayPlan(input, 'bed-chair').people).toBe('one');
    expect(dayPlan(input, 'in-bed').people).toBe('stand-by');
    expect(planStay(input).cautions[0]?.words).toContain('PRESSURE DROP');
  });
  it('first time up since surgery: two, whatever the tier', () => {
    const input = planInput(walker, { firstTimeUpPending: stated(true as const) });
    expect(dayPlan(input, 'walk')).toMatchObject({ people: 'two', hold: false });
    expect(dayPlan(input, 'walk').cautions.join()).toContain('Chair behind');
  });
});
