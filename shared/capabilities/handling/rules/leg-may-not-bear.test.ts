/**
 * A leg that may bear nothing by order, and a walk seen on both legs: nobody saw this person walk on
 * one. Design, section 1, tier: on one leg it goes on only with a therapist.
 */
import { describe, expect, it } from 'vitest';
import { assessment, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { Finding } from '../../assessments/values.ts';
import { dayPlan, help, leftLeg, limbs, planInput, walker } from './plan.testkit.ts';

const STOP = 'Order: left leg bears nothing, and walking on one leg was not cleared by a therapist';
const onRightLeg = (role: 'nurse' | 'therapist') => {
  const findings: Finding[] = [
    { part: 'rises', result: 'met' },
    { part: 'leg-bears', side: 'right', result: 'met' },
    { part: 'leg-bears', side: 'left', result: 'not-applicable', reason: 'order' },
  ];
  return [assessment(upTo('walk', { stand: { findings, oneLeg: 'right' } }), { role })];
};

describe('given a leg that may bear nothing by order', () => {
  it('when the walk was cleared on both legs, then walking is for a session with a therapist', () => {
    const facts = [assessment(upTo('walk'), { id: 'check' })];
    const input = planInput(facts, { orders: limbs({ 'left-leg': 'none' }) });
    expect(help(input, 'walk')[0]).toBe('hold');
    expect(dayPlan(input, 'walk').because).toContainEqual({
      rule: 'ours/walk',
      facts: ['o-left-leg', 'check'],
      words: `${STOP}: walking only in a therapist's session`,
    });
  });
  it('then the way to the chair is the row for a leg that bears in part', () => {
    const input = planInput(walker, { orders: leftLeg('none') });
    expect(help(input, 'bed-chair')).toEqual(['go', 'one', 'standing-aid']);
  });
  it('when a therapist cleared the walk on the other leg, then the walk goes on', () => {
    const input = planInput(onRightLeg('therapist'), { orders: leftLeg('none') });
    expect(help(input, 'walk')).toEqual(['go', 'one', 'walking-support']);
  });
  it('when a nurse checked on the other leg, then walking is not cleared anyway', () => {
    const plan = dayPlan(planInput(onRightLeg('nurse'), { orders: leftLeg('none') }), 'walk');
    expect(plan.hold).toBe(true);
    expect(plan.because.map((b) => b.words).join()).not.toContain(STOP);
  });
  it('when the leg may bear in part, then the walk goes on', () => {
    expect(help(planInput(walker, { orders: leftLeg('limited') }), 'walk')).toEqual([
      'go',
      'one',
      'walking-support',
    ]);
  });
  it('when neither leg may bear, then each order is named no more than "no walking" needs', () => {
    const both = planInput(walker, { orders: limbs({ 'left-leg': 'none', 'right-leg': 'none' }) });
    expect(help(both, 'walk')[0]).toBe('hold');
    expect(dayPlan(both, 'walk').because.filter((b) => b.rule === 'ours/walk')).toHaveLength(2);
  });
});
