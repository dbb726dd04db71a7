/**
 * From a chair to a trolley never asks for less than from the bed to a chair. OSHA 3182 (2003, rev. 2009),
 * figure 3, from memory; that the words follow the stricter plan is ours, common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import {
  dayPlan,
  hold,
  nightPlan,
  noOrders,
  planInput,
  seenTo,
  stated,
  trigger,
  trust,
  walker,
  withHeldStand,
} from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const said = (input: PlanInput, plan = dayPlan) =>
  plan(input, 'lateral').cautions.filter((c) => c.startsWith('From a chair'));
const HELD = ['From a chair: HOLD as bed to chair, ask'];

describe('given a person who walks alone and is to go from a chair to a trolley', () => {
  it('when nothing asks for more, then the words are the figure’s', () => {
    expect(said(planInput(walker))).toEqual([
      'From a chair: bears full weight: stand by, if the height of the trolley allows',
    ]);
  });
  it.each<[string, Partial<PlanInput>]>([
    ['a hold out of bed is on', { holds: [hold('out-of-bed')] }],
    ['an order keeps the person in bed', { orders: { ...noOrders, activity: stated('bed' as const) } }],
    ['a faint was not looked at', { trust: trust('re-check', trigger('faint')) }],
  ])('when %s, then the words are a HOLD', (_, extra) => {
    expect(said(planInput(walker, extra))).toEqual(HELD);
  });
  it('when standing is stopped, then the words are a lift', () => {
    expect(said(planInput(walker, { holds: [hold('standing')] }))).toEqual([
      'From a chair: as bed to chair: two people, sling lift',
    ]);
    expect(said(planInput(walker, { trust: trust('re-check', trigger('block-on')) }))).toEqual([
      'From a chair: as bed to chair: three people or more, sling lift',
    ]);
  });
  it('when a sedative asks for one more at night, then the words do, too', () => {
    const input = planInput(walker, { sedatedAt: stated(true as const, 0.5) });
    expect(said(input, nightPlan)).toEqual(['From a chair: as bed to chair: one person']);
  });
});

describe('given a person who stood held in the aid', () => {
  it('when standing was held in the aid, then the words are no less than that', () => {
    expect(said(planInput(seenTo('walk', withHeldStand)))).toEqual([
      'From a chair: as bed to chair: two people, standing aid',
    ]);
  });
});
