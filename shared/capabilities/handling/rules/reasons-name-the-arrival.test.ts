/** What the plan names where a reason has no entry of its own: what was seen until now, else the arrival. */
import { describe, expect, it } from 'vitest';
import { assessment, fact, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { Fact } from '../../corrections/facts.ts';
import { planStay } from './plan.ts';
import { dayPlan, planInput, trust } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const arrival = { arrival: 'arrived' as never };
const comfort = [fact('scope-set', { scope: 'comfort' as const }, { id: 'comfort' })];
const checked = [assessment(upTo('edge'), { id: 'check' })];
const plan = (facts: readonly Fact[], extra: Partial<PlanInput> = {}) =>
  planInput(facts, { ...arrival, ...extra });
const why = (input: PlanInput, task: Parameters<typeof dayPlan>[1], rule: string) =>
  dayPlan(input, task)
    .because.filter((b) => b.rule === rule)
    .map((b) => b.facts);

describe('given a comfort plan and no check yet', () => {
  it.each(['in-bed', 'bed-chair', 'lateral'] as const)(
    'then CHECK BEFORE MOVING stands on the arrival, not on the comfort plan: %s',
    (task) => {
      expect(why(plan(comfort), task, 'not-known')).toEqual([['arrived']]);
    },
  );
  it.each(['stand', 'walk'] as const)('then so does no standing or walking before a check: %s', (task) => {
    expect(why(plan(comfort), task, 'not-known')).toEqual([['arrived'], ['arrived']]);
  });
});

describe('given a reason of our own with no entry of its own', () => {
  it('then after a check it stands on what was seen there', () => {
    expect(why(plan(checked), 'stand', 'ours/stand')).toContainEqual(['check']);
    expect(why(plan(checked), 'stand', 'ours/stand').flat()).not.toContain('arrived');
  });
  it('then before a check it stands on the arrival', () => {
    expect(why(plan([]), 'stand', 'ours/stand')).toEqual([['arrived'], ['arrived']]);
  });
  it('then before a check and with no arrival told it names nothing', () => {
    expect(why(planInput([]), 'stand', 'ours/stand')).toEqual([[], []]);
  });
});

describe('given a re-check', () => {
  it('then that the last plan is kept until then names what asks for it', () => {
    const due = { rule: 'validity', facts: ['asked' as never], words: 'The check is over' };
    const again = plan(checked, { trust: { ...trust('re-check'), because: [due] } });
    expect(why(again, 'in-bed', 'trust/re-check')).toEqual([['asked']]);
  });
});

describe('given a weight that nobody knows', () => {
  it('then the word to weigh or estimate names the arrival', () => {
    const { cautions } = planStay(plan(checked, { weight: null }));
    expect(cautions).toEqual([
      {
        words: 'Weight unknown: weigh or estimate',
        because: [{ rule: 'weight/unknown', words: 'Weight unknown: weigh or estimate', facts: ['arrived'] }],
      },
    ]);
  });
});
