/** May we start, beside orders for the person's own oxygen target. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, order, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';

const target = (at: number, low: number, high: number): Told => ({
  ...order(at, { about: 'oxygen-target', low, high }),
  id: `target-${at}`,
});
const saturation: Told = {
  ...check('walk', 2, {}, { readings: [{ kind: 'oxygen', saturation: 92, at: toIso(hours(2)) }] }),
  id: 'check',
};
const named = (...orders: readonly Told[]) =>
  evaluateStay(stayOf(...orders, saturation), ward, calendar, hours(3)).view.mayStart!.reasons.find((r) =>
    r.words.includes('own target'),
  )?.facts;

describe('a saturation below the own target', () => {
  it('names the order that gave that limit', () => {
    expect(named(target(0.5, 94, 98))).toEqual(['check', 'target-0.5']);
    expect(named(target(0.5, 93, 98), target(1, 94, 98))).toEqual(['check', 'target-1']);
  });
  it('names it still when a later order leaves the limit as it was', () => {
    expect(named(target(0.5, 94, 98), target(1, 94, 97))).toEqual(['check', 'target-0.5']);
    expect(named(target(0.5, 94, 98), order(1, { about: 'activity', most: 'chair' }))).toEqual([
      'check',
      'target-0.5',
    ]);
  });
});
