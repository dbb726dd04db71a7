/** What stands against "on own": design, people; set by a qualified person, never derived. */
import { describe, expect, it } from 'vitest';
import { NOT_KNOWN } from '../../assessments/rules/tier.ts';
import type { Task } from '../values.ts';
import type { Help } from './help.ts';
import { help } from './help.ts';
import { onOwnReaches, onOwnStands } from './on-own.ts';
import { planStay } from './plan.ts';
import {
  dayPlan,
  hold,
  leftLeg,
  planInput,
  seenTo,
  stated,
  trigger,
  trust,
  uncooperative,
  walker,
} from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const everywhere: Pick<PlanInput, 'onOwn'> = {
  onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day', 'night'] }, 0, 'own'),
};
const set = (facts = walker, extra: Partial<PlanInput> = {}) => planInput(facts, { ...everywhere, ...extra });

describe('on own as set', () => {
  it('stands for someone who walks free, waits for help and has nothing open', () => {
    expect(onOwnStands(set())).toBe(true);
  });
  it.each<[string, PlanInput]>([
    ['where nobody set it', planInput(walker)],
    ['for someone who does not wait for help', set(uncooperative('waits'))],
    ['for someone who does not follow instructions', set(uncooperative('follows'))],
    ['before walking was cleared free', set(seenTo('turn'))],
    ['after a pressure drop', set(walker, { pressureDrop: stated(true as const) })],
    ['before the first time up', set(walker, { firstTimeUpPending: stated(true as const) })],
    ['while the arrival is open', set(walker, { trust: trust('re-check', trigger('arrival')) })],
    ['while trust is not known', set(walker, { trust: trust('not-known') })],
    ['with no tier known', { ...set(), tier: { ...set().tier, word: NOT_KNOWN } }],
  ])('does not stand %s', (_, input) => {
    expect(onOwnStands(input)).toBe(false);
  });
  it('is taken back even by a trigger that asks for no person more', () => {
    const plan = planStay(set(walker, { trust: trust('re-check', trigger('arrival')) }));
    for (const p of [...plan.day, ...plan.night]) expect(p.people).toBe('stand-by');
  });
});

describe('on own reaches', () => {
  const reason = { rule: 'on-own', facts: ['own'], words: 'On own set: room, day' };
  it.each<[string, Help, unknown]>([
    ['a task without an aid', help('stand-by'), reason],
    ['a task with a walking support', help('stand-by', 'walking-support'), reason],
    ['no task with a standing aid', help('stand-by', 'standing-aid'), null],
    ['no task with a belt', help('stand-by', 'belt'), null],
    ['no task with a lift', help('stand-by', 'sling-lift'), null],
  ])('%s', (_, asked, expected) => {
    expect(onOwnReaches('bed-chair', 'day', asked, set())).toEqual(expected);
  });
  it('no task in which somebody has to help', () => {
    const limited = set(walker, { orders: leftLeg('limited') });
    expect(onOwnStands(limited)).toBe(true);
    expect(dayPlan(limited, 'walk')).toMatchObject({ people: 'one', aid: 'walking-support' });
    expect(dayPlan(limited, 'in-bed').people).toBe('on-own');
  });
});

describe('on own set for the room alone, while a hold is on', () => {
  const roomOnly = set(walker, {
    onOwn: stated({ where: ['room'], when: ['day', 'night'] }, 0, 'own'),
    holds: [hold('walking')],
  });
  const told = (task: Task) => dayPlan(roomOnly, task).because.filter((b) => b.rule === 'on-own/held-back');
  it.each(['in-bed', 'edge-of-bed', 'bed-chair', 'stand', 'in-chair'] as const)(
    'says for what is done in the room that it does not count now: %s',
    (task) => {
      expect(told(task)).toEqual([
        {
          rule: 'on-own/held-back',
          facts: ['own', 'e-walking'],
          words: 'On own does not count while a hold is on',
        },
      ]);
    },
  );
  it.each(['toilet', 'walk', 'lateral', 'from-floor'] as const)(
    'says nothing where it was not set: %s',
    (task) => {
      expect(told(task)).toEqual([]);
    },
  );
});
