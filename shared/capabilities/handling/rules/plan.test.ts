import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import { allMet, assessment, hours, notMet, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import { triggerKind } from '../../orders/values.ts';
import type { Weight } from '../../stays/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Task } from '../values.ts';
import { task as taskValues } from '../values.ts';
import { planStay } from './plan.ts';
import {
  dayPlan,
  hold,
  limbOrder,
  nightPlan,
  noOrders,
  planInput,
  stated,
  trigger,
  trust,
} from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const walker = [assessment(upTo('walk'))];
const seenTo = (last: string, says: Record<string, StageSays> = {}) => [assessment(upTo(last, says))];
const help = (input: PlanInput, task: Task) => {
  const { hold: held, people, aid } = dayPlan(input, task);
  return [held ? 'hold' : 'go', people, aid];
};
const weight = (kg: number, how: Weight['how'] = 'measured') => ({ weight: stated({ kg, how }) });
const uncooperative = (which: 'waits' | 'follows', last = 'walk') => [
  assessment(
    upTo(last),
    {},
    {
      cooperation: {
        waitsForHelp: which === 'waits' ? 'no' : 'yes',
        followsInstructions: which === 'follows' ? 'no' : 'yes',
      },
    },
  ),
];
const leftLeg = (bears: 'none' | 'limited') =>
  limbOrder({ about: 'weight-bearing', limb: 'left-leg', bears });
const withHeldStand: Record<string, StageSays> = {
  stand: { how: 'secured', securedWith: 'standing-aid', people: 2 },
};

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
  it('a leg that may bear nothing stops standing on it alone, and both stop standing', () => {
    const both = {
      ...noOrders,
      weightBearing: new Map([
        ...leftLeg('none').weightBearing,
        ...limbOrder({ about: 'weight-bearing', limb: 'right-leg', bears: 'none' }).weightBearing,
      ]),
    };
    expect(help(planInput(walker, { orders: leftLeg('none') }), 'walk')).toEqual([
      'go',
      'one',
      'walking-support',
    ]);
    expect(dayPlan(planInput(walker, { orders: both }), 'stand').hold).toBe(true);
    expect(dayPlan(planInput(walker, { orders: both }), 'walk').hold).toBe(true);
  });
  it("the person's own walking support goes along", () => {
    const plan = dayPlan(planInput(walker, { walkingSupport: 'wheeled-frame' }), 'walk');
    expect(plan).toMatchObject({ aid: 'walking-support', with: ['wheeled frame'], people: 'stand-by' });
  });
});

describe('holds', () => {
  const held = (scope: Parameters<typeof hold>[0]) =>
    planStay(planInput(walker, { holds: [hold(scope)] }))
      .day.filter((p) => p.hold)
      .map((p) => p.task);
  it.each([
    ['walking', ['walk']],
    ['standing', ['stand', 'walk']],
    ['out-of-bed', ['edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk']],
    ['raising-the-back', ['edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk']],
    ['all-including-turning', taskValues.options],
  ] as const)('on %s stops its tasks; turning goes on unless it says so', (scope, tasks) => {
    expect(held(scope)).toEqual(tasks);
  });
  it('toilet in bed goes on', () => {
    const toilet = dayPlan(planInput(walker, { holds: [hold('out-of-bed')] }), 'toilet');
    expect(toilet.cautions).toContain('Toilet in bed goes on');
  });
  it('on standing leaves the chair by lift', () => {
    expect(help(planInput(walker, { holds: [hold('standing')] }), 'bed-chair')).toEqual([
      'go',
      'two',
      'sling-lift',
    ]);
  });
  it('past its review time frees nobody', () => {
    const due = dayPlan(planInput(walker, { holds: [hold('walking', true)] }), 'walk');
    expect(due.hold).toBe(true);
    expect(due.because.map((b) => b.words).join()).toContain('HOLD REVIEW DUE');
  });
});

describe('orders', () => {
  it.each([
    ['bed', ['edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk']],
    ['edge-of-bed', ['bed-chair', 'toilet', 'stand', 'walk']],
    ['chair', ['stand', 'walk']],
    ['stand', ['walk']],
    ['walk', []],
    ['no-limit', []],
  ] as const)('activity up to %s', (most, tasks) => {
    const input = planInput(walker, { orders: { ...noOrders, activity: stated(most) } });
    expect(
      planStay(input)
        .day.filter((p) => p.hold)
        .map((p) => p.task),
    ).toEqual(tasks);
  });
  it('precautions are said, and the spine is turned by two', () => {
    const orders = { ...noOrders, precautions: new Map([['spine' as const, stated(true as const)]]) };
    const plan = dayPlan(planInput(walker, { orders }), 'in-bed');
    expect(plan.people).toBe('two');
    expect(plan.cautions).toContain('spine precautions as ordered');
  });
  it('an order may give a number: it is shown, never inferred', () => {
    const orders = limbOrder({
      about: 'weight-bearing',
      limb: 'left-leg',
      bears: 'limited',
      limit: { percent: 30 },
    });
    expect(dayPlan(planInput(walker, { orders }), 'walk').cautions).toContain(
      'left leg: weight bearing limited, 30 %',
    );
    expect(dayPlan(planInput(walker, { orders: leftLeg('limited') }), 'walk').cautions).toContain(
      'left leg: weight bearing limited',
    );
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

describe('triggers', () => {
  it.each(triggerKind.options.filter((k) => k !== 'arrival'))('%s raises help by its own row', (kind) => {
    const before = planInput(walker);
    const after = planInput(walker, { trust: trust('re-check', trigger(kind)) });
    expect([dayPlan(before, 'bed-chair').people, dayPlan(after, 'bed-chair').people]).toEqual([
      'stand-by',
      'one',
    ]);
    expect(dayPlan(after, 'bed-chair').because.map((b) => b.rule)).toContain(`trigger/${kind}`);
  });
  // users-job: hold until seen after a fall, faint, bleeding, new confusion. Common practice, no source.
  it.each(['fall', 'faint', 'seizure', 'new-confusion', 'bleed', 'suspected-clot', 'new-symptom'] as const)(
    '%s holds until a nurse has looked, and turning goes on',
    (kind) => {
      const input = planInput(walker, { trust: trust('re-check', trigger(kind)) });
      expect(dayPlan(input, 'bed-chair').hold).toBe(true);
      expect(dayPlan(input, 'in-bed').hold).toBe(false);
    },
  );
  it('several ask for the most any asks for', () => {
    const input = planInput(walker, {
      trust: trust('re-check', trigger('sedation'), trigger('order-change')),
    });
    expect(dayPlan(input, 'walk').people).toBe('one');
  });
  it('validity that ran out keeps the plan', () => {
    expect(help(planInput(walker, { trust: trust('re-check') }), 'walk')).toEqual(
      help(planInput(walker), 'walk'),
    );
  });
});

describe('not known', () => {
  it('CHECK BEFORE MOVING; if it cannot wait two and a sling lift, no standing or walking', () => {
    const input = planInput([]);
    expect(planStay(input).checkBeforeMoving).toBe(true);
    expect(help(input, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(help(input, 'edge-of-bed')).toEqual(['go', 'two', 'sling-lift']);
    expect(dayPlan(input, 'walk').hold).toBe(true);
  });
  it.each([
    ['136 kg', weight(136)],
    ['no weight', { weight: null }],
  ])('%s: three and the bariatric lift', (_, extra) => {
    expect(help(planInput([], extra), 'bed-chair')).toEqual(['go', 'three-or-more', 'bariatric-lift']);
  });
  it('joins the last known plan', () => {
    const lapsed = planInput(walker, { trust: trust('not-known') });
    expect(help(lapsed, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
  it('spine or pelvis in doubt: a hold, no lift replaces that', () => {
    const input = planInput([], { spineOrPelvisInDoubt: stated(true as const) });
    expect(
      planStay(input)
        .day.filter((p) => !p.hold)
        .map((p) => p.task),
    ).toEqual(['in-bed']);
    expect(dayPlan(input, 'in-bed').people).toBe('three-or-more');
  });
  it('seen walking steadily: stand by for four hours, then as not known', () => {
    const at = (h: number, more: Partial<PlanInput> = {}) =>
      planInput(
        [],
        { seenWalking: stated('stick' as const), trust: trust('not-known', trigger('arrival')), ...more },
        h,
      );
    expect(help(at(3.9), 'walk')).toEqual(['go', 'stand-by', 'none']);
    expect(dayPlan(at(3.9), 'walk').with).toEqual(['stick']);
    expect(planStay(at(3.9))).toMatchObject({ checkBeforeMoving: false, nextChange: hours(4) });
    expect(planStay(at(4))).toMatchObject({ checkBeforeMoving: true, nextChange: null });
    expect(
      planStay(at(1, { trust: trust('not-known', trigger('asked-to-look-again', 0.5)) })).checkBeforeMoving,
    ).toBe(true);
  });
});

describe('on own', () => {
  const own = (where: ('room' | 'toilet' | 'ward')[], when: ('day' | 'night')[]) => ({
    onOwn: stated({ where, when }),
  });
  const everywhere = own(['room', 'toilet', 'ward'], ['day', 'night']);
  it('is never derived', () => {
    for (const p of planStay(planInput(walker)).day) expect(p.people).not.toBe('on-own');
  });
  it('holds where and when it was set', () => {
    const input = planInput(walker, own(['toilet'], ['day']));
    expect(dayPlan(input, 'toilet').people).toBe('on-own');
    expect(nightPlan(input, 'toilet').people).toBe('stand-by');
    expect(dayPlan(input, 'walk').people).toBe('stand-by');
    expect(nightPlan(planInput(walker, everywhere), 'toilet').people).toBe('on-own');
  });
  it('set for the night only gives nobody less help at night than by day', () => {
    expect(nightPlan(planInput(walker, own(['toilet'], ['night'])), 'toilet').people).toBe('stand-by');
  });
  it.each<[string, Partial<PlanInput>]>([
    ['a trigger', { trust: trust('re-check', trigger('asked-to-look-again')) }],
    ['a pressure drop', { pressureDrop: stated(true as const) }],
    ['first time up ahead', { firstTimeUpPending: stated(true as const) }],
    [
      'two attachments',
      {
        attachments: [1, 2].map(() =>
          stated({ kind: 'iv-line' as const, needsOwnPerson: false, disconnects: 'nurse' }),
        ),
      },
    ],
    ['not known', { trust: trust('not-known') }],
  ])('%s stands against it', (_, extra) => {
    const plan = planStay(planInput(walker, { ...everywhere, ...extra }));
    for (const p of [...plan.day, ...plan.night]) {
      expect(p.people).not.toBe('on-own');
    }
  });
  it('not waiting for help, or walking only held, stands against it', () => {
    expect(dayPlan(planInput(uncooperative('waits'), everywhere), 'walk').people).toBe('one');
    expect(dayPlan(planInput(seenTo('turn'), everywhere), 'toilet').people).not.toBe('on-own');
  });
});

describe('night', () => {
  it('within four hours of a sedative one more person at night, not by day', () => {
    const at = (h: number) => planInput(walker, { sedatedAt: stated(true as const) }, h);
    expect(nightPlan(at(3.9), 'toilet').people).toBe('one');
    expect(dayPlan(at(3.9), 'toilet').people).toBe('stand-by');
    expect(nightPlan(at(4), 'toilet').people).toBe('stand-by');
    expect(planStay(at(1)).nextChange).toBe(hours(4));
  });
});

describe("under the clinician's plan", () => {
  it('every task is a hold that says so', () => {
    const plan = planStay(planInput(walker, { fence: 'traction' }));
    for (const p of plan.day) expect(p.hold).toBe(true);
    expect(plan.day[0]?.because.map((b) => b.words).join()).toContain("Clinician's plan only");
  });
});

describe('every plan', () => {
  it('has one entry a task, and says which rule decided', () => {
    for (const input of [planInput(walker), planInput([]), planInput(seenTo('stand', withHeldStand))]) {
      const { day, night } = planStay(input);
      expect(day.map((p) => p.task)).toEqual(taskValues.options);
      expect(night.map((p) => p.task)).toEqual(taskValues.options);
      for (const p of [...day, ...night]) expect(p.because.length).toBeGreaterThan(0);
    }
  });
  it('changes with time only where it says so', () => {
    const input = (t: number) => ({ ...planInput(walker, { sedatedAt: stated(true as const, 1) }, 2), t });
    const next = planStay(input(hours(2))).nextChange!;
    expect(planStay(input(next - 1))).toEqual(planStay(input(hours(2))));
    expect(planStay(input(next + HOUR))).not.toEqual(planStay(input(hours(2))));
  });
});
