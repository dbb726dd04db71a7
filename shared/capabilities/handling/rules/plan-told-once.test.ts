/** What a plan tells once, and what it tells twice because it is two things: design, section 2, 10. */
import { describe, expect, it } from 'vitest';
import { dayPlan, hold, limbs, noOrders, planInput, stated, trigger, trust, walker } from './plan.testkit.ts';

describe('a plan tells once', () => {
  it('what a hold and an order leave open alike', () => {
    const input = planInput(walker, {
      holds: [hold('out-of-bed'), hold('raising-the-back')],
      orders: { ...noOrders, activity: stated('bed' as const) },
    });
    expect(dayPlan(input, 'toilet').cautions).toEqual(['Toilet in bed goes on']);
    expect(dayPlan(input, 'in-chair').cautions).toEqual([
      'Should not be in a chair: ask how to go back to bed',
    ]);
  });
  it('why a trigger both stops a task and asks for a person more', () => {
    const input = planInput(walker, { trust: trust('re-check', trigger('fall')) });
    const told = dayPlan(input, 'walk').because.filter((b) => b.rule === 'trigger/fall');
    expect(told.map((b) => b.facts)).toEqual([['t-fall']]);
  });
});

describe('a plan tells both', () => {
  it('lines that need a person each, though the words are the same', () => {
    const line = (fact: string) =>
      stated({ kind: 'iv-line' as const, needsOwnPerson: true, disconnects: 'nurse' }, 0, fact);
    const { because } = dayPlan(planInput(walker, { attachments: [line('l-1'), line('l-2')] }), 'walk');
    const own = because.filter((b) => b.rule === 'attachments/own-person');
    expect(own.map((b) => b.words)).toEqual(Array(2).fill('iv line needs a person to itself'));
    expect(own.flatMap((b) => b.facts)).toEqual(['l-1', 'l-2']);
  });
  it('rules that stand on the same order: the arm for standing, and the arm for the way over the feet', () => {
    const input = planInput(walker, {
      walkingSupport: stated('frame' as const),
      orders: limbs({ 'right-arm': 'none' }),
    });
    const words = 'Order: right arm bears nothing, and the frame needs it: ask';
    const told = dayPlan(input, 'stand').because.filter((b) => b.words === words);
    expect(told.map((b) => b.rule)).toEqual(['ours/arms', 'order/arm']);
    expect(dayPlan(input, 'bed-chair').because.map((b) => b.rule)).toContain('order/arm');
  });
});
