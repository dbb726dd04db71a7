import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import { hours } from '../../assessments/rules/assessment.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { task as taskValues } from '../values.ts';
import { atLeast, withMore } from './help.ts';
import { planStay } from './plan.ts';
import {
  dayPlan,
  help,
  nightPlan,
  planInput,
  seenTo,
  stated,
  trigger,
  trust,
  uncooperative,
  walker,
  weight,
  withHeldStand,
} from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

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
  it.each([
    ['135.9 kg', weight(135.9), 'two'],
    ['136 kg', weight(136), 'three-or-more'],
    ['no weight', { weight: null }, 'three-or-more'],
  ] as const)('lying as well, though the last plan was to stand by, %s: %s', (_, extra, people) => {
    const lapsed = planInput(walker, { trust: trust('not-known'), ...extra });
    expect(help(lapsed, 'in-bed')).toEqual(['go', people, 'none']);
    expect(help(lapsed, 'lateral')).toEqual(['go', people, 'none']);
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
    // What happened at that time or after it ends it, but for the arrival; what happened before does not.
    const look = (when: number) =>
      planStay(at(1, { trust: trust('not-known', trigger('asked-to-look-again', when)) })).checkBeforeMoving;
    expect([look(0.5), look(0), look(-0.5)]).toEqual([true, true, false]);
  });
});

describe('on own', () => {
  const own = (where: ('room' | 'toilet' | 'ward')[], when: ('day' | 'night')[]) => ({
    onOwn: stated({ where, when }),
  });
  const everywhere = own(['room', 'toilet', 'ward'], ['day', 'night']);
  it('PLAN-5 is never derived', () => {
    for (const p of planStay(planInput(walker)).day) expect(p.people).not.toBe('on-own');
  });
  it.each([
    ['in-bed', ['room', 'ward']],
    ['edge-of-bed', ['room', 'ward']],
    ['bed-chair', ['room', 'ward']],
    ['stand', ['room', 'ward']],
    ['in-chair', ['room', 'ward']],
    ['toilet', ['toilet']],
    ['walk', ['ward']],
    ['lateral', []],
    ['from-floor', []],
  ] as const)('reaches %s where it was set for %j', (task, places) => {
    for (const place of ['room', 'toilet', 'ward'] as const) {
      const people = dayPlan(planInput(walker, own([place], ['day'])), task).people;
      expect(people === 'on-own').toBe((places as readonly string[]).includes(place));
    }
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
  const sedated = (h: number, facts = walker, extra: Partial<PlanInput> = {}) =>
    planInput(facts, { sedatedAt: stated(true as const, 0, 'sedative'), ...extra }, h);
  const MS = 1 / HOUR;
  it('within four hours of a sedative one more person at night, not by day', () => {
    for (const [h, people] of [
      [0, 'one'],
      [4 - MS, 'one'],
      [4, 'stand-by'],
    ] as const) {
      expect(nightPlan(sedated(h), 'toilet').people).toBe(people);
      expect(dayPlan(sedated(h), 'toilet').people).toBe('stand-by');
    }
    expect(planStay(sedated(1)).nextChange).toBe(hours(4));
    expect(planStay(sedated(4)).nextChange).not.toBe(hours(4));
  });
  it('as long as the ward says', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.handling.sedativeNightHours.value = 6;
    expect(nightPlan(sedated(5, walker, { rules }), 'toilet').people).toBe('one');
    expect(nightPlan(sedated(6, walker, { rules }), 'toilet').people).toBe('stand-by');
  });
  it.each(taskValues.options)('of a sedative adds its person to %s, and says why', (task) => {
    const input = sedated(1, seenTo('stand'));
    expect(nightPlan(input, task).people).toBe(withMore(dayPlan(input, task).people, 1));
    expect(nightPlan(input, task).because).toContainEqual({
      rule: 'night/sedative',
      facts: ['sedative'],
      words: 'Night, within 4 h of a sedative: one more person',
    });
    expect(dayPlan(input, task).because.map((b) => b.rule)).not.toContain('night/sedative');
  });
  it('is the day plan where nothing of the night bears on it', () => {
    const { day, night } = planStay(planInput(seenTo('stand')));
    expect(night).toEqual(day);
  });
  it('a sedative of the last hours stands against on own at night', () => {
    const own = { onOwn: stated({ where: ['toilet' as const], when: ['day' as const, 'night' as const] }) };
    expect(nightPlan(planInput(walker, own), 'toilet').people).toBe('on-own');
    expect(nightPlan(sedated(1, walker, own), 'toilet').people).toBe('one');
  });
  it('somebody who does not wait for help is never alone, day or night', () => {
    const plan = planStay(planInput(uncooperative('waits')));
    for (const p of [...plan.day, ...plan.night]) expect(p.people).not.toBe('on-own');
    for (const task of ['bed-chair', 'toilet', 'stand', 'walk'] as const) {
      expect(atLeast(nightPlan(planInput(uncooperative('waits')), task).people, 'one')).toBe(true);
    }
    expect(plan.cautions.map((c) => c.words)).toContain(
      'Waits for help: no. Never alone, one person within reach day and night',
    );
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
