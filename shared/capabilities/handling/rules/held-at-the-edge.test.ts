/**
 * Whoever was held at the edge of the bed was not seen to sit alone: design, section 4, before the
 * tables, (c) and (d), and the tier row of section 1 ("the plan keeps the securing aid").
 */
import { describe, expect, it } from 'vitest';
import { assessment, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import { dayPlan, help, planInput, seenTo } from './plan.testkit.ts';

const by = (
  securedWith: 'sling' | 'two-people' | 'standing-aid' | 'raised-bed',
  people: number,
): StageSays => ({
  how: 'secured',
  securedWith,
  people,
});
const standing = { stand: by('standing-aid', 1) };

describe('given someone held at the edge of the bed', () => {
  it.each(['sling', 'two-people', 'standing-aid', 'raised-bed'] as const)(
    'when held with %s, then that is no sitting balance',
    (held) => {
      const held2 = planInput(seenTo('edge', { edge: by(held, 2) }));
      expect(held2.capability.sittingBalance).toBe(false);
      expect(planInput(seenTo('edge')).capability.sittingBalance).toBe(true);
    },
  );
  it('when nobody saw a stand, then the way to the chair is a lift, not a seated transfer aid', () => {
    const free = planInput(seenTo('edge'));
    expect(help(free, 'bed-chair')).toEqual(['go', 'one', 'seated-transfer-aid']);
    for (const task of ['bed-chair', 'toilet'] as const) {
      expect(help(planInput(seenTo('edge', { edge: by('sling', 2) })), task)).toEqual([
        'go',
        'two',
        'sling-lift',
      ]);
      expect(help(planInput(seenTo('edge', { edge: by('two-people', 2) })), task)).toEqual([
        'go',
        'two',
        'sling-lift',
      ]);
    }
  });
  it('when the stand was held in the standing aid, then no standing aid: lifted to the chair, no standing', () => {
    expect(help(planInput(seenTo('stand', standing)), 'bed-chair')).toEqual(['go', 'one', 'standing-aid']);
    const held = planInput(seenTo('stand', { edge: by('sling', 2), ...standing }));
    expect(help(held, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(help(held, 'toilet')).toEqual(['go', 'two', 'sling-lift']);
    expect(help(held, 'stand')).toEqual(['hold', 'two', 'sling-lift']);
  });
  it('when it was in a sling by three, then the lift to the chair takes three', () => {
    expect(help(planInput(seenTo('edge', { edge: by('sling', 3) })), 'bed-chair')).toEqual([
      'go',
      'three-or-more',
      'sling-lift',
    ]);
  });
  it('when all beyond it was free, then the sling stays until the edge is cleared free', () => {
    const held = [assessment(upTo('walk', { edge: by('sling', 2) }), { id: 'check' })];
    expect(help(planInput(held), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(dayPlan(planInput(held), 'bed-chair').because).toContainEqual({
      rule: 'secured/keep',
      facts: ['check'],
      words: 'Sitting at the edge was held safe, not free: the plan keeps that',
    });
    const since = [...held, assessment(upTo('walk'), { at: 0.5 })];
    expect(help(planInput(since), 'bed-chair')).toEqual(['go', 'stand-by', 'none']);
  });
  it('when it was told as free and in a sling, then the sling stays', () => {
    const both = planInput(seenTo('walk', { edge: { how: 'free', securedWith: 'sling' } }));
    expect(help(both, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(both.capability).toMatchObject({ sittingBalance: false, assists: 'partly' });
  });
  it('then the plan says why there is no sitting balance, by the check', () => {
    const held = [assessment(upTo('stand', { edge: by('two-people', 2), ...standing }), { id: 'check' })];
    const said = {
      rule: 'capability/sitting-balance',
      facts: ['check'],
      words: 'Held safe at the edge of the bed: counts as no sitting balance',
    };
    for (const task of ['bed-chair', 'toilet', 'stand'] as const) {
      expect(dayPlan(planInput(held), task).because).toContainEqual(said);
    }
  });
  it('when moved up in a chair, then in a sling and not with a seated aid', () => {
    const arms = (edge: StageSays) =>
      planInput(seenTo('edge', { edge: { people: 1, ...edge } }), {
        orders: {
          ...planInput([]).orders,
          precautions: new Map([['sternum', { value: true as const, fact: 'o' as never, at: 0 }]]),
        },
      });
    expect(help(arms({}), 'in-chair')).toEqual(['go', 'two', 'seated-transfer-aid']);
    expect(help(arms(by('two-people', 2)), 'in-chair').slice(0, 2)).not.toEqual(['go', 'one']);
    expect(dayPlan(arms(by('two-people', 2)), 'in-chair').aid).toBe('sling-lift');
  });
});

describe('given an edge cleared free the day before', () => {
  it('then a standing aid is still one that the person can use, and a seated transfer aid is not', () => {
    const at = 24;
    expect(help(planInput(seenTo('stand', standing), {}, at), 'bed-chair')).toEqual([
      'go',
      'one',
      'standing-aid',
    ]);
    expect(help(planInput(seenTo('edge'), {}, at), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
});
