/**
 * People who helped at the check stay in the plan though the stage was done free: whoever needed two
 * to stand is not left with someone standing by. Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { assessment, notMet, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import { dayPlan, help, planInput, seenTo, stated } from './plan.testkit.ts';
import type { Task } from '../values.ts';

const helpedAt = (stage: string, people: number, how: StageSays = {}) =>
  planInput(seenTo('walk', { [stage]: { people, ...how } }));
const peopleFor = (input: ReturnType<typeof planInput>, task: Task) => dayPlan(input, task).people;

describe('given a stand or a turn done free with people helping', () => {
  it.each([
    ['stand', 0, 'stand-by'],
    ['stand', 1, 'stand-by'],
    ['stand', 2, 'two'],
    ['stand', 3, 'three-or-more'],
    ['turn', 1, 'stand-by'],
    ['turn', 2, 'two'],
    ['turn', 3, 'three-or-more'],
  ] as const)('when at the %s %i helped, then to the chair and the toilet: %s', (stage, people, expected) => {
    const input = helpedAt(stage, people);
    expect(help(input, 'bed-chair')).toEqual(['go', expected, 'none']);
    expect(help(input, 'toilet')).toEqual(['go', expected, 'none']);
  });
  it.each([
    [1, 'stand-by'],
    [2, 'two'],
    [3, 'three-or-more'],
  ] as const)('when %i helped at the stand, then to stand: %s', (people, expected) => {
    expect(help(helpedAt('stand', people), 'stand')).toEqual(['go', expected, 'none']);
  });
  it('then each plan says why, by the check', () => {
    const facts = [assessment(upTo('walk', { stand: { people: 2 }, turn: { people: 3 } }), { id: 'check' })];
    const chair = dayPlan(planInput(facts), 'bed-chair').because.filter((b) => b.rule === 'secured/keep');
    expect(chair).toEqual([
      {
        rule: 'secured/keep',
        facts: ['check'],
        words: 'Standing was helped by two people: the plan keeps that',
      },
      {
        rule: 'secured/keep',
        facts: ['check'],
        words: 'Turning was helped by three people or more: the plan keeps that',
      },
    ]);
    expect(dayPlan(planInput(facts), 'stand').because).toContainEqual({
      rule: 'secured/keep',
      facts: ['check'],
      words: 'As many people as at the check',
    });
  });
  it('when "on own" is set as well, then nobody is left alone at it', () => {
    const onOwn = stated({ where: ['room', 'toilet', 'ward'] as const, when: ['day'] as const }) as never;
    const input = planInput(seenTo('walk', { stand: { people: 2 } }), { onOwn });
    expect([peopleFor(input, 'bed-chair'), peopleFor(input, 'stand')]).toEqual(['two', 'two']);
  });
  it('when it is done free again with nobody, then the people go', () => {
    const facts = [...seenTo('walk', { stand: { people: 3 } }), assessment(upTo('walk'), { at: 0.5 })];
    expect([peopleFor(planInput(facts), 'stand'), peopleFor(planInput(facts), 'bed-chair')]).toEqual([
      'stand-by',
      'stand-by',
    ]);
  });
  it('when a stage below is not met since, then there are no fewer people', () => {
    const facts = [
      ...seenTo('walk', { stand: { people: 3 }, turn: { people: 3 } }),
      assessment(upTo('edge', { edge: notMet('sits-hands-free') }), { at: 0.5 }),
    ];
    expect(help(planInput(facts), 'stand')).toEqual(['hold', 'three-or-more', 'sling-lift']);
    expect(help(planInput(facts), 'bed-chair')).toEqual(['go', 'three-or-more', 'sling-lift']);
  });
});

describe('given people who helped to the edge of the bed', () => {
  const toEdge = (edge: StageSays) => help(planInput(seenTo('edge', { edge })), 'edge-of-bed');
  it.each([
    [0, ['go', 'stand-by', 'none']],
    [1, ['go', 'two', 'slide-sheet']],
    [2, ['go', 'two', 'slide-sheet']],
    [3, ['go', 'three-or-more', 'slide-sheet']],
  ] as const)('when %i helped and it was free, then %j', (people, expected) => {
    expect(toEdge({ people })).toEqual(expected);
  });
  it('when it was held safe by three, then three', () => {
    expect(toEdge({ how: 'secured', securedWith: 'two-people', people: 3 })).toEqual([
      'go',
      'three-or-more',
      'slide-sheet',
    ]);
    expect(toEdge({ how: 'secured', securedWith: 'sling', people: 3 })).toEqual([
      'go',
      'three-or-more',
      'sling-lift',
    ]);
  });
  it('then the plan says why, by the check', () => {
    const facts = [assessment(upTo('edge', { edge: { people: 3 } }), { id: 'check' })];
    expect(dayPlan(planInput(facts), 'edge-of-bed').because).toContainEqual({
      rule: 'secured/keep',
      facts: ['check'],
      words: 'As many people as at the check',
    });
  });
});
