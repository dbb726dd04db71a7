/** What body weight asks of an aid: VA bariatric tables (rev. 2007), restated; an unknown weight is ours, practice. */
import { describe, expect, it } from 'vitest';
import type { AidClass } from '../values.ts';
import { weightDemands } from './more-people.ts';
import { planInput, walker, weight } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const asks = (extra: Partial<PlanInput>, ...aids: AidClass[]) =>
  weightDemands(planInput(walker, extra), aids).map(({ help }) => [help.people, ...help.aids]);

describe('an aid that carries the person or part of the weight', () => {
  it.each<[AidClass, string[][]]>([
    ['sling-lift', [['three-or-more', 'bariatric-lift']]],
    ['bariatric-lift', [['three-or-more', 'bariatric-lift']]],
    // Rated for the weight: the same aid, and never by one.
    ['standing-aid', [['two']]],
    ['seated-transfer-aid', [['two']]],
    ['slide-sheet', []],
    ['walking-support', []],
  ])('%s from 136 kg', (aid, expected) => {
    expect(asks(weight(136), aid)).toEqual(expected);
    expect(asks(weight(135.9), aid)).toEqual([]);
  });
  it.each(['sling-lift', 'bariatric-lift', 'standing-aid', 'seated-transfer-aid'] as const)(
    '%s, weight unknown: the highest-rated lift, three',
    (aid) => {
      expect(asks({ weight: null }, aid)).toEqual([['three-or-more', 'bariatric-lift']]);
    },
  );
});
