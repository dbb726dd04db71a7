/** Standing and walking, our own table (no published source), and the person's own walking support. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { dayPlan, help, leftLeg, limbs, planInput, seenTo, stated, walker } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

describe('a walk', () => {
  // Design, section 4: the first ever = 2 with a chair following.
  it('that was cleared while none is known here yet takes two and a chair following', () => {
    const plan = dayPlan(planInput(walker, { everWalkedHere: false }), 'walk');
    expect(plan).toMatchObject({ hold: false, people: 'two', aid: 'none', with: ['chair following'] });
    expect(plan.because).toContainEqual({
      rule: 'ours/first-walk',
      facts: [walker[0]!.id],
      words: 'The first walk here: two people and a chair following',
    });
    const known = dayPlan(planInput(walker, { everWalkedHere: true }), 'walk');
    expect(known).toMatchObject({ people: 'stand-by', with: [] });
    expect(known.because.map((b) => b.rule)).not.toContain('ours/first-walk');
  });
  it('told as free and in a sling keeps the sling, and two', () => {
    const both = seenTo('walk', { walk: { how: 'free', securedWith: 'sling' } });
    expect(help(planInput(both), 'walk')).toEqual(['go', 'two', 'sling-lift']);
  });
});

describe('standing held in the aid', () => {
  it.each([
    [1, 'two'],
    [2, 'two'],
    [3, 'three-or-more'],
  ] as const)('by %i at the check: %s', (count, people) => {
    const facts = seenTo('stand', {
      stand: { how: 'secured', securedWith: 'standing-aid', people: count },
    });
    expect(help(planInput(facts), 'stand')).toEqual(['go', people, 'standing-aid']);
  });
});

describe("the person's own walking support", () => {
  const frame = { walkingSupport: stated('wheeled-frame' as const) };
  const kit = (input: PlanInput, task: 'bed-chair' | 'stand' | 'walk') => dayPlan(input, task).with;
  it('goes along beside the one that a leg bearing in part asks for', () => {
    const input = planInput(walker, { ...frame, orders: leftLeg('limited') });
    expect(kit(input, 'walk')).toEqual(['wheeled frame']);
    expect(kit(input, 'stand')).toEqual(['wheeled frame']);
  });
  it('goes along beside a standing aid and, where the ward allows a lone carer with one, a belt', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.handling.loneCarerWithBelt.value = true;
    const limited = { ...frame, orders: leftLeg('limited') };
    expect(kit(planInput(walker, limited), 'bed-chair')).toEqual(['powered standing aid', 'wheeled frame']);
    expect(kit(planInput(walker, { ...limited, rules }), 'bed-chair')).toEqual([
      'belt, stand and turn',
      'wheeled frame',
    ]);
  });
  it('stays behind where the person is lifted', () => {
    const lifted = planInput(seenTo('upright'), { ...frame, orders: limbs({}, ['sternum']) });
    expect(help(lifted, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(kit(lifted, 'bed-chair')).toEqual([]);
  });
});
