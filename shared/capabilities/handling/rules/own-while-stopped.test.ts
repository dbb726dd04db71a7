/** "On own" while a hold or an order stops the feet: design, people; never less help by accident. */
import { describe, expect, it } from 'vitest';
import { onOwnStands } from './on-own.ts';
import { planStay } from './plan.ts';
import { dayPlan, hold, nightPlan, noOrders, planInput, stated, walker } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const alone = (extra: Partial<PlanInput> = {}) =>
  planInput(walker, {
    onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day', 'night'] }, 0, 'own'),
    ...extra,
  });
const upTo = (most: 'bed' | 'edge-of-bed' | 'chair' | 'stand' | 'walk') =>
  alone({ orders: { ...noOrders, activity: stated(most, 0, 'order') } });

describe('given a person set to go alone and a hold', () => {
  it.each(['walking', 'standing', 'out-of-bed', 'raising-the-back', 'all-including-turning'] as const)(
    'on %s, when it is on, then nobody does anything alone',
    (scope) => {
      const input = alone({ holds: [hold(scope)] });
      expect(onOwnStands(input)).toBe(false);
      const { day, night } = planStay(input);
      expect([...day, ...night].filter((p) => p.people === 'on-own')).toEqual([]);
    },
  );
  it('when the toilet is planned, then it says that the hold stands against what was set', () => {
    for (const plan of [dayPlan, nightPlan]) {
      expect(plan(alone({ holds: [hold('walking')] }), 'toilet').because).toContainEqual({
        rule: 'on-own/held-back',
        facts: ['own', 'e-walking'],
        words: 'On own does not count while a hold is on',
      });
    }
  });
  it('when nobody ever set that person to go alone, then nothing is said of it', () => {
    const plan = dayPlan(alone({ onOwn: null, holds: [hold('walking')] }), 'toilet');
    expect(plan.because.map((b) => b.rule)).not.toContain('on-own/held-back');
  });
});

describe('given a person set to go alone and an order', () => {
  it.each(['chair', 'stand'] as const)(
    'up to %s, when walking is stopped, then somebody stands by to the chair, to the toilet and to rise',
    (most) => {
      const input = upTo(most);
      for (const task of ['bed-chair', 'toilet'] as const) {
        expect(dayPlan(input, task)).toMatchObject({ hold: false, people: 'stand-by' });
        expect(nightPlan(input, task)).toMatchObject({ hold: false, people: 'stand-by' });
        expect(dayPlan(input, task).because).toContainEqual({
          rule: 'on-own/held-back',
          facts: ['own', 'order'],
          words: 'On own does not count while standing or walking is stopped',
        });
      }
      expect(dayPlan(input, 'stand').people).toBe('stand-by');
      expect(dayPlan(input, 'in-bed').people).toBe('on-own');
    },
  );
  it('up to walking, when nothing is stopped, then what was set stands', () => {
    for (const task of ['bed-chair', 'toilet', 'stand', 'walk'] as const) {
      const plan = dayPlan(upTo('walk'), task);
      expect(plan.people).toBe('on-own');
      expect(plan.because.map((b) => b.rule)).not.toContain('on-own/held-back');
    }
  });
});
