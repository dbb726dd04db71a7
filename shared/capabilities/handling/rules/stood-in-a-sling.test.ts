/** Standing that was held in a sling keeps the sling, as walking does: design, section 1, tier. */
import { describe, expect, it } from 'vitest';
import { assessment, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import { dayPlan, help, planInput, seenTo, stated } from './plan.testkit.ts';

const inSling = (people: number): Record<string, StageSays> => ({
  stand: { how: 'secured', securedWith: 'sling', people },
});

describe('given someone who stood in a sling', () => {
  it.each([
    [1, 'two'],
    [2, 'two'],
    [3, 'three-or-more'],
  ] as const)(
    'when %i helped, then to stand: %s and the sling lift, not the standing aid',
    (people, expected) => {
      expect(help(planInput(seenTo('stand', inSling(people))), 'stand')).toEqual([
        'go',
        expected,
        'sling-lift',
      ]);
    },
  );
  it('then the plan says why, by the check', () => {
    const facts = [assessment(upTo('stand', inSling(2)), { id: 'check' })];
    expect(dayPlan(planInput(facts), 'stand').because).toContainEqual({
      rule: 'secured/keep',
      facts: ['check'],
      words: 'Stood in a sling, not free: the plan keeps that',
    });
  });
  it('when it was told as free and in a sling, then the sling stays, to stand and to the chair', () => {
    const both = planInput(seenTo('walk', { stand: { how: 'free', securedWith: 'sling' } }));
    expect(help(both, 'stand')).toEqual(['go', 'two', 'sling-lift']);
    expect(help(both, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
  it('when the person uses a frame, then it is a lift all the same', () => {
    const frame = planInput(seenTo('stand', inSling(2)), { walkingSupport: stated('frame' as const) });
    expect(help(frame, 'stand')).toEqual(['go', 'two', 'sling-lift']);
  });
  it('when the weight is not known, then the bariatric lift and three', () => {
    expect(help(planInput(seenTo('stand', inSling(2)), { weight: null }), 'stand')).toEqual([
      'go',
      'three-or-more',
      'bariatric-lift',
    ]);
  });
  it('when it is cleared free since, then the sling goes', () => {
    const since = [...seenTo('walk', inSling(2)), assessment(upTo('walk'), { at: 0.5 })];
    expect(help(planInput(since), 'stand')).toEqual(['go', 'stand-by', 'none']);
  });
});
