/** How much the person helps in bed, and what that is read from: design, section 4, capability. */
import { describe, expect, it } from 'vitest';
import { assessment, fact, notMet, tierInput, upTo } from '../../assessments/rules/assessment.testkit.ts';
import { judgeTier } from '../../assessments/rules/tier.ts';
import type { Fact } from '../../corrections/facts.ts';
import { capabilityOf } from './capability.ts';
import { noOrders } from './plan.testkit.ts';

const capability = (facts: readonly Fact[], at = 1) => {
  const input = tierInput(facts, at);
  return capabilityOf({ ...input, tier: judgeTier(input), orders: noOrders, weight: null });
};
const from = (facts: readonly Fact[], rule: string, at = 1) =>
  capability(facts, at)
    .because.filter((b) => b.rule === rule)
    .map((b) => b.facts);

const silent = { edge: { findings: [] } };
const early = (last: string, says = {}) => assessment(upTo(last, says), { at: 0, id: 'early' });
const later = (last: string, says = {}) => assessment(upTo(last, says), { at: 0.5, id: 'later' });

describe('given an edge cleared with not a word on its parts', () => {
  it('then the person came alone, sits unheld and assists fully', () => {
    expect(capability([early('edge', silent)])).toMatchObject({
      comesAlone: true,
      sitsUnheld: true,
      assists: 'fully',
    });
  });
});

describe('how much the person assists is read', () => {
  it.each([
    [
      'from the check of the edge, not from a later look at sitting up',
      [early('edge'), later('upright')],
      'early',
    ],
    ['from the latest check of the edge', [early('edge'), later('edge')], 'later'],
    ['from the check of sitting up where nobody came to the edge', [early('upright')], 'early'],
    [
      'from the check in which coming to the edge was not met, until somebody says that it is',
      [early('edge', { edge: notMet('comes-to-edge') }), later('edge', silent)],
      'early',
    ],
  ])('%s', (_, facts, id) => {
    expect(from(facts, 'capability/assists')).toEqual([[id]]);
  });
});

describe('given an answer on cooperation older than the window', () => {
  it('then it stands, and is named', () => {
    expect(from([early('walk')], 'capability/worst-of-the-window', 90)).toEqual([['early']]);
  });
});

const BEGUN = { stay: 'stay-1', person: 'person-1', bed: 'bed-1', from: 'home' };
describe('given an arrival', () => {
  const arrived = fact('stay-begun', BEGUN, { at: -1, id: 'arrived' });
  it('then what was never seen was not seen since the arrival', () => {
    for (const rule of ['capability/not-seen-standing', 'capability/not-recorded', 'capability/assists'])
      expect(from([arrived], rule)).toEqual([['arrived']]);
  });
  it('then what was seen is named by the check, not by the arrival', () => {
    const facts = [arrived, early('stand')];
    for (const rule of ['capability/weight-bearing', 'capability/worst-of-the-window', 'capability/assists'])
      expect(from(facts, rule)).toEqual([['early']]);
  });
  it('and with none told, then what was never seen names nothing', () => {
    expect(from([], 'capability/not-seen-standing')).toEqual([[]]);
  });
});
