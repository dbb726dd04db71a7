/**
 * Up from the floor alone: OSHA 3182 (2003, rev. 2009), figure 6 asks whether the person gets up without
 * another's strength. What speaks against that is ours, common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { assessment, tierInput, upTo } from '../../assessments/rules/assessment.testkit.ts';
import { DEFAULT_PROTOCOL, protocolLookup, type Protocol } from '../../assessments/rules/protocol.ts';
import { judgeTier } from '../../assessments/rules/tier.ts';
import type { TriggerKind } from '../../orders/values.ts';
import { capabilityOf } from './capability.ts';
import {
  dayPlan,
  help,
  hold,
  noOrders,
  planInput,
  seenTo,
  stated,
  trigger,
  trust,
  walker,
} from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const LIFTED = ['two', 'sling-lift'];
const up = (extra: Partial<PlanInput> = {}, facts = walker) =>
  help(planInput(facts, extra), 'from-floor').slice(1);
const why = (extra: Partial<PlanInput>) =>
  dayPlan(planInput(walker, extra), 'from-floor').because.map((b) => [b.rule, ...b.facts]);

describe('given a person who walks alone and lies on the floor', () => {
  it('when nothing speaks against it, then somebody stands by', () => {
    expect(up()).toEqual(['stand-by', 'none']);
    expect(up({ orders: { ...noOrders, activity: stated('walk' as const) } })).toEqual(['stand-by', 'none']);
  });
  it.each(['walking', 'standing', 'out-of-bed', 'raising-the-back'] as const)(
    'when a hold on %s is on, then the person is lifted and the hold is named',
    (scope) => {
      expect(up({ holds: [hold(scope)] })).toEqual(LIFTED);
      expect(why({ holds: [hold(scope)] })).toContainEqual(['hold', `e-${scope}`]);
    },
  );
  it.each(['bed', 'edge-of-bed', 'chair'] as const)(
    'when an order allows up to %s, then the person is lifted and the order is named',
    (most) => {
      const orders = { ...noOrders, activity: stated(most, 0, 'order') };
      expect(up({ orders })).toEqual(LIFTED);
      expect(why({ orders })).toContainEqual(['order/activity', 'order']);
    },
  );
  it.each<TriggerKind>(['faint', 'seizure', 'block-on', 'bleed'])(
    'when %s was not looked at yet, then the person is lifted, with one more',
    (kind) => {
      const extra = { trust: trust('re-check' as const, trigger(kind)) };
      expect(up(extra)).toEqual(['three-or-more', 'sling-lift']);
      expect(why(extra)).toContainEqual([`trigger/${kind}`, `t-${kind}`]);
    },
  );
  it('when the first time up since surgery is still ahead, then the person is lifted', () => {
    const extra = { firstTimeUpPending: stated(true as const, 0, 'surgery') };
    expect(up(extra)).toEqual(LIFTED);
    expect(why(extra)).toContainEqual(['first-time-up', 'surgery']);
  });
});

describe('given a person who walks and was not alone at the edge of the bed', () => {
  it.each([
    ['lifted there in a sling', { how: 'secured' as const, securedWith: 'sling' as const, people: 2 }],
    ['helped there by two', { people: 2 }],
    ['helped there by one', { people: 1 }],
  ])('%s, when that person lies on the floor, then it is a lift', (_, edge) => {
    const input = planInput(seenTo('walk', { edge }));
    expect(help(input, 'from-floor').slice(1)).toEqual(LIFTED);
    expect(dayPlan(input, 'from-floor').because.map((b) => b.words)).toContain(
      'Did not come to the edge of the bed free and alone: does not get up alone',
    );
  });
});

describe('given a protocol of the ward in which nobody is looked at at the edge of the bed', () => {
  it('when a person who walked free lies on the floor, then it is a lift, and says that the edge was not seen', () => {
    const own: Protocol = {
      ...DEFAULT_PROTOCOL,
      id: 'own',
      stages: DEFAULT_PROTOCOL.stages.filter((s) => s.shows !== 'edge'),
    };
    const { edge: _edge, ...rest } = upTo('walk');
    const facts = [assessment(rest, { id: 'check' }, { protocol: { id: 'own', version: own.version } })];
    const judged = { ...tierInput(facts, 1), protocols: protocolLookup([{ ...own, document: own }]) };
    const tier = judgeTier(judged);
    const { orders, weight } = planInput([]);
    const capability = capabilityOf({ ...judged, tier, orders, weight });
    expect(capability.clearedFree.has('walk')).toBe(true);
    const input = planInput(facts, { tier: tier.view, trust: trust('current'), capability });
    expect(help(input, 'from-floor').slice(1)).toEqual(LIFTED);
    expect(dayPlan(input, 'from-floor').because.map((b) => b.words)).toContain(
      'Did not come to the edge of the bed free and alone: does not get up alone',
    );
  });
});
