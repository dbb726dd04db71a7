/** What body weight asks of an aid: VA bariatric tables (rev. 2007), restated; an unknown weight is ours, practice. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { AidClass } from '../values.ts';
import { weightDemands } from './more-people.ts';
import { help, leftLeg, planInput, walker, weight } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const asks = (extra: Partial<PlanInput>, ...aids: AidClass[]) =>
  weightDemands(planInput(walker, extra), aids).map((d) => [d.help.people, ...d.help.aids]);

describe('an aid that carries the person or part of the weight', () => {
  it.each<[AidClass, string[][]]>([
    ['sling-lift', [['three-or-more', 'bariatric-lift']]],
    ['bariatric-lift', [['three-or-more', 'bariatric-lift']]],
    // Rated for the weight: the same aid, and never by one.
    ['standing-aid', [['two']]],
    ['seated-transfer-aid', [['two']]],
    ['belt', []],
    ['slide-sheet', []],
    ['walking-support', []],
  ])('%s from 136 kg', (aid, expected) => {
    expect(asks(weight(136), aid)).toEqual(expected);
    expect(asks(weight(135.9), aid)).toEqual([]);
  });
  it.each(['sling-lift', 'bariatric-lift', 'standing-aid', 'seated-transfer-aid', 'belt'] as const)(
    '%s, weight unknown: the highest-rated lift, three',
    (aid) => {
      expect(asks({ weight: null }, aid)).toEqual([['three-or-more', 'bariatric-lift']]);
    },
  );
  it('but nothing of one that carries no weight, nor where there is none', () => {
    expect(asks({ weight: null }, 'slide-sheet')).toEqual([]);
    expect(asks({ weight: null }, 'walking-support')).toEqual([]);
    expect(asks({ weight: null })).toEqual([]);
  });
  // Design, rule 1: a missing fact can only keep or raise help.
  it('where a ward allows a lone carer with a belt, that is for somebody whose weight is known', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.handling.loneCarerWithBelt.value = true;
    const moved = (extra: Partial<PlanInput>) =>
      help(planInput(walker, { orders: leftLeg('limited'), rules, ...extra }), 'bed-chair');
    expect(moved(weight(70))).toEqual(['go', 'one', 'belt']);
    expect(moved(weight(140))).toEqual(['go', 'two', 'seated-transfer-aid']);
    expect(moved({ weight: null })).toEqual(['go', 'three-or-more', 'bariatric-lift']);
  });
});
