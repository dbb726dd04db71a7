/**
 * Every hard rule where breaking it is tempting: the same day without the rule is worth more, and the
 * plan with it leaves that worth lying. The rules are the design's; what tempts is made up here.
 */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { greedyProposal } from '@footboard/shared/capabilities/planning/rules/propose';
import {
  piece,
  problem,
  slots,
  stop,
  visit,
  who,
} from '@footboard/shared/capabilities/planning/rules/planning.testkit';
import type { DayProblem } from '@footboard/shared/capabilities/planning/problem';
import { solveDay, type Limits } from './solve.ts';

const limits: Limits = { seconds: null, nodes: 5_000, seed: 7, gap: 0 };
type Is = Parameters<typeof problem>[0];
const early = { windows: [slots(0, 2)] };
const nurses: Parameters<typeof visit>[1] = { lead: ['nurse'], crew: ['nurse'] };
const pieces = [piece('lift')];
const lifted = { sets: [['lift']] };

/** [what tempts, the day with the rule, the same without it, why the one is not placed] */
const days: readonly (readonly [string, Is, Is, string])[] = [
  [
    'a hold',
    { visits: [visit('v')], blocked: [stop('v', 0, 8, 'hold')] },
    { visits: [visit('v')] },
    'no-time',
  ],
  [
    'a meal',
    { visits: [visit('v', early)], blocked: [stop('v', 0, 2)] },
    { visits: [visit('v', early)] },
    'no-time',
  ],
  [
    'rest time',
    { visits: [visit('v', early)], blocked: [stop('v', 1, 8, 'rest'), stop('v', 0, 1, 'night')] },
    { visits: [visit('v', early)] },
    'no-time',
  ],
  [
    'off the ward',
    { visits: [visit('v', early)], blocked: [stop('v', 0, 5, 'off-ward')] },
    { visits: [visit('v', early)] },
    'no-time',
  ],
  [
    'rest between two visits',
    {
      visits: [
        visit('a', { stay: 's', ...early, restAfter: 3 }),
        visit('b', { stay: 's', windows: [slots(0, 4)], weight: 9, restAfter: 3 }),
      ],
    },
    {
      visits: [
        visit('a', { stay: 's', ...early }),
        visit('b', { stay: 's', windows: [slots(0, 4)], weight: 9 }),
      ],
    },
    'own-visits',
  ],
  [
    'two visits of one person at once',
    {
      visits: [
        visit('a', { stay: 's', length: 2, ...early }),
        visit('b', { stay: 's', ...early, weight: 9 }),
      ],
    },
    { visits: [visit('a', { length: 2, ...early }), visit('b', { ...early, weight: 9 })] },
    'own-visits',
  ],
  [
    'a check that comes first',
    {
      visits: [
        visit('a', { stay: 's', windows: [slots(6, 8)] }),
        visit('b', { stay: 's', ...early, after: ['a' as never], weight: 9 }),
      ],
    },
    {
      visits: [
        visit('a', { stay: 's', windows: [slots(6, 8)] }),
        visit('b', { stay: 's', ...early, weight: 9 }),
      ],
    },
    'own-visits',
  ],
  ['a role', { visits: [visit('v', nurses)] }, { visits: [visit('v')] }, 'nobody-on'],
  [
    'a pair',
    { visits: [visit('v', { people: 2 })], staff: [who('ana')] },
    { visits: [visit('v')], staff: [who('ana')] },
    'nobody-on',
  ],
  [
    'a pair whose second is with somebody else',
    {
      visits: [
        visit('a', { people: 2, ...early, length: 2, weight: 9 }),
        visit('b', { ...early, length: 2 }),
      ],
    },
    { visits: [visit('a', { ...early, length: 2, weight: 9 }), visit('b', { ...early, length: 2 })] },
    'people-with-others',
  ],
  [
    'one place at a time',
    {
      visits: [visit('a', { ...early, length: 2 }), visit('b', { ...early, length: 2, weight: 9 })],
      staff: [who('ana')],
    },
    { visits: [visit('a', { ...early, length: 2 }), visit('b', { ...early, length: 2, weight: 9 })] },
    'people-with-others',
  ],
  [
    'a break',
    { visits: [visit('v', early)], staff: [who('ana', { breaks: [slots(0, 2)] })] },
    { visits: [visit('v', early)], staff: [who('ana')] },
    'nobody-on',
  ],
  [
    'a promise elsewhere',
    { visits: [visit('v', early)], staff: [who('ana', { taken: [slots(0, 2)] })] },
    { visits: [visit('v', early)], staff: [who('ana')] },
    'nobody-on',
  ],
  [
    'hours on',
    { visits: [visit('v', early)], staff: [who('ana', { on: [slots(2, 8)] })] },
    { visits: [visit('v', early)], staff: [who('ana')] },
    'nobody-on',
  ],
  [
    'an item that does not fit',
    { visits: [visit('v', { sets: [] })], items: pieces },
    { visits: [visit('v', lifted)], items: pieces },
    'no-item-fits',
  ],
  [
    'an item that is not free',
    { visits: [visit('v', { ...lifted, ...early })], items: [piece('lift', { free: [slots(2, 8)] })] },
    { visits: [visit('v', { ...lifted, ...early })], items: pieces },
    'item-not-free',
  ],
  [
    'an item in two places',
    {
      visits: [
        visit('a', { ...lifted, ...early, length: 2 }),
        visit('b', { ...lifted, ...early, length: 2, weight: 9 }),
      ],
      items: pieces,
    },
    {
      visits: [
        visit('a', { ...lifted, ...early, length: 2 }),
        visit('b', { ...early, length: 2, weight: 9 }),
      ],
      items: pieces,
    },
    'item-with-others',
  ],
  [
    'cleaning between two people',
    {
      visits: [visit('a', { ...lifted, ...early }), visit('b', { ...lifted, ...early, weight: 9 })],
      items: [piece('lift', { cleaning: 1 })],
    },
    {
      visits: [visit('a', { ...lifted, ...early }), visit('b', { ...lifted, ...early, weight: 9 })],
      items: pieces,
    },
    'item-with-others',
  ],
];

describe('a plan is not tempted', () => {
  it.each(days)('by %s', async (_words, withRule, without, bound) => {
    const day: DayProblem = problem(withRule);
    const free = await solveDay(problem(without), limits);
    const kept = await solveDay(day, limits);
    // Breaking it would have paid.
    expect(free.objective.value).toBeGreaterThan(kept.objective.value);
    expect(free.unplaced).toEqual([]);
    expect(checkPlan(day, kept.placed)).toEqual([]);
    expect(
      checkPlan(
        day,
        free.placed.filter((p) => day.visits.some((v) => v.visit === p.visit)),
      ),
    ).not.toEqual([]);
    expect(kept.unplaced.map((one) => one.bound)).toEqual([bound]);
    const greedy = greedyProposal(day, 'solver-failed');
    expect(checkPlan(day, greedy.placed)).toEqual([]);
  });

  it('by cleaning after isolation: the lift goes to the isolated person last', async () => {
    const day = problem({
      visits: [
        visit('alone', { ...lifted, isolation: true, debt: 0.1, windows: [slots(0, 4)] }),
        visit('other', { ...lifted, windows: [slots(0, 4)] }),
      ],
      items: [piece('lift', { cleaningAfterIsolation: 4 })],
    });
    const { placed } = await solveDay(day, limits);
    expect(placed.map((p) => p.visit)).toEqual(['other', 'alone']);
    expect(checkPlan(day, placed)).toEqual([]);
  });
});

describe('what is not placed says what would place it', () => {
  const freed = async (is: Is) => (await solveDay(problem(is), limits)).unplaced.map(({ frees }) => frees);
  it('a blocked time, or another window', async () => {
    expect(await freed({ visits: [visit('v', early)], blocked: [stop('v', 0, 2)] })).toEqual([
      [
        { by: 'blocked', why: 'meal', at: slots(0, 1) },
        { by: 'window', at: slots(2, 3) },
      ],
    ]);
  });
  it('one more person, or one visit less', async () => {
    const pair = [visit('a', { ...early, length: 2 }), visit('b', { ...early, length: 2, weight: 9 })];
    expect(await freed({ visits: pair, staff: [who('ana')] })).toEqual([
      [
        { by: 'one-more-person', at: slots(0, 2) },
        { by: 'instead-of', visit: 'a' },
      ],
    ]);
  });
});
