/** The orders that a check is judged under: design, rule 2 (the stricter stands; who may free). */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { fact } from './assessment.testkit.ts';
import { OrdersThen } from './orders-then.ts';

const WARD_SATURATION = 90;
type Said = readonly [order: object, at: number, role?: Role];
function then(...said: readonly Said[]): OrdersThen {
  const orders = new OrdersThen(WARD_SATURATION);
  for (const [order, at, role = 'nurse'] of said) orders.take(fact('order-changed', { order }, { at, role }));
  return orders;
}
const bears = (limb: string, what: string) => ({ about: 'weight-bearing', limb, bears: what });
const target = (low: number, high = 98) => ({ about: 'oxygen-target', low, high });

describe('a limb under an order', () => {
  it.each([
    ['left-leg', 'none', ['left'], []],
    ['right-leg', 'none', ['right'], []],
    ['left-leg', 'limited', [], []],
    ['left-leg', 'unrestricted', [], []],
    ['left-arm', 'none', [], ['left']],
    ['right-arm', 'limited', [], ['right']],
    ['right-arm', 'unrestricted', [], []],
  ] as const)('%s, %s: legs that may not bear %j, arms that may not push %j', (limb, what, legs, arms) => {
    const orders = then([bears(limb, what), 1]);
    expect([...orders.mayNotBear]).toEqual(legs);
    expect([...orders.mayNotPush]).toEqual(arms);
  });
  it('is freed by a later order of somebody qualified alone, and that limb only', () => {
    const both: Said[] = [
      [bears('left-leg', 'none'), 1],
      [bears('right-leg', 'none'), 1],
    ];
    expect([...then(...both, [bears('left-leg', 'limited'), 2]).mayNotBear]).toEqual(['right']);
    expect([...then(...both, [bears('left-leg', 'limited'), 2, 'aide']).mayNotBear]).toEqual([
      'left',
      'right',
    ]);
    expect([...then(...both, [bears('left-arm', 'unrestricted'), 2]).mayNotBear]).toEqual(['left', 'right']);
  });
  it('of two orders of one instant has the stricter, whichever was taken first', () => {
    const pair: Said[] = [
      [bears('left-arm', 'limited'), 1],
      [bears('left-arm', 'unrestricted'), 1],
    ];
    expect([...then(...pair).mayNotPush]).toEqual(['left']);
    expect([...then(...pair.toReversed()).mayNotPush]).toEqual(['left']);
    // The same instant as an order on another limb changes nothing.
    const other = then(
      [bears('left-arm', 'none'), 1],
      [bears('right-arm', 'none'), 2],
      [bears('left-arm', 'unrestricted'), 2],
    );
    expect([...other.mayNotPush]).toEqual(['right']);
  });
  it('is stopped by anyone’s stricter order', () => {
    expect([...then([bears('left-leg', 'none'), 1, 'aide']).mayNotBear]).toEqual(['left']);
  });
  it('has nothing to do with other orders', () => {
    const orders = then([{ about: 'activity', most: 'bed' }, 1], [{ about: 'brace', on: true }, 1]);
    expect([orders.oxygenTarget, orders.mayNotBear.size, orders.mayNotPush.size]).toEqual([null, 0, 0]);
  });
});

describe('an oxygen target', () => {
  it('is none until it is ordered, then the last of somebody qualified', () => {
    expect(then().oxygenTarget).toBeNull();
    expect(then([target(88, 92), 1]).oxygenTarget).toEqual({ low: 88, high: 92 });
    expect(then([target(94), 1], [target(88), 2]).oxygenTarget).toEqual({ low: 88, high: 98 });
  });
  it('whose ends are the wrong way round is one number, the higher', () => {
    expect(then([target(94, 90), 1]).oxygenTarget).toEqual({ low: 94, high: 94 });
  });
  it('by someone who may not free counts only above what stands, at first the limit of the ward', () => {
    expect(then([target(90), 1, 'aide']).oxygenTarget).toBeNull();
    expect(then([target(91), 1, 'aide']).oxygenTarget?.low).toBe(91);
    expect(then([target(88), 1], [target(89), 2, 'aide']).oxygenTarget?.low).toBe(89);
    expect(then([target(94), 1], [target(93), 2, 'aide']).oxygenTarget?.low).toBe(94);
    expect(then([target(94, 96), 1], [target(94, 98), 2, 'aide']).oxygenTarget?.high).toBe(96);
  });
  it('of two of one instant is the higher, whichever was taken first', () => {
    const pair: Said[] = [
      [target(94), 1],
      [target(88), 1],
    ];
    expect(then(...pair).oxygenTarget?.low).toBe(94);
    expect(then(...pair.toReversed()).oxygenTarget?.low).toBe(94);
    expect(then([target(92), 1], [target(94), 2], [target(88), 2]).oxygenTarget?.low).toBe(94);
  });
});
