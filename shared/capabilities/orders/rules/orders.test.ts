/** Orders: design, rule 2. A5 is the acceptance scenario of that name in users-job.md 7b. */
import { describe, expect, it } from 'vitest';
import { check, order, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { orderGoneBeyond } from './beyond-orders.ts';
import { limits, ordersInForce } from './orders.ts';
import { isCheck } from './triggers.ts';

const inForce = (...told: readonly Told[]) => ordersInForce(effectiveFacts(stayOf(...told)).facts);
const bears = (at: number, what: string, role: Told['role'] = 'nurse', limb = 'left-leg') =>
  order(at, { about: 'weight-bearing', limb, bears: what }, role);

describe('an oxygen target', () => {
  const target = (at: number, low: number, role: Told['role'] = 'nurse') => ({
    ...order(at, { about: 'oxygen-target', low, high: 99 }, role),
    id: `t${low}`,
  });
  const shown = (...told: Told[]) => inForce(...told).list.map((o) => o.event);

  it('is replaced by a lower one only of someone qualified, by a higher one of anyone', () => {
    expect(shown(target(1, 94), target(2, 88))).toEqual(['t88']);
    expect(shown(target(1, 94), target(2, 88, 'aide'))).toEqual(['t94']);
    expect(shown(target(1, 88), target(2, 94, 'aide'))).toEqual(['t94']);
  });
  it('is not begun by someone who may not free: it may lie below the limit of the ward', () => {
    expect(shown(target(1, 88, 'aide'))).toEqual([]);
    expect(shown(target(1, 88))).toEqual(['t88']);
  });
  it('limits nothing that the person does', () => {
    expect(limits({ about: 'oxygen-target', low: 94, high: 98 })).toBe(false);
    expect(limits({ about: 'brace', on: true })).toBe(true);
  });
});

describe('orders', () => {
  it('replace each other within one question only', () => {
    const { forPlan, list } = inForce(
      order(1, { about: 'activity', most: 'chair' }),
      bears(2, 'none'),
      bears(3, 'limited', 'nurse', 'right-leg'),
      order(4, { about: 'activity', most: 'walk' }),
    );
    expect(forPlan.activity?.value).toBe('walk');
    expect(forPlan.weightBearing.get('left-leg')?.value.bears).toBe('none');
    expect(forPlan.weightBearing.get('right-leg')?.value.bears).toBe('limited');
    expect(list).toHaveLength(3);
  });
  it('count by when they were given, not by when they arrived', () => {
    expect(
      inForce(bears(3, 'none'), bears(2, 'unrestricted')).forPlan.weightBearing.get('left-leg')?.value.bears,
    ).toBe('none');
  });
  it.each([
    [0, 1],
    [1, 0],
  ])('of the same time that differ leave the stricter in force, and both are shown (%i, %i)', (a, b) => {
    const pair = [
      { ...bears(2, 'unrestricted'), id: `x${a}` },
      { ...bears(2, 'none'), id: `x${b}` },
    ];
    const { forPlan, conflicts } = inForce(...pair);
    expect(forPlan.weightBearing.get('left-leg')?.value.bears).toBe('none');
    expect(conflicts).toMatchObject([{ safer: `x${b}`, other: `x${a}` }]);
  });
  it('from someone who may not free count only where they are stricter', () => {
    expect(
      inForce(bears(1, 'limited'), bears(2, 'none', 'aide')).forPlan.weightBearing.get('left-leg')?.value
        .bears,
    ).toBe('none');
    const freer = inForce(bears(1, 'none'), bears(2, 'unrestricted', 'aide'));
    expect(freer.forPlan.weightBearing.get('left-leg')?.value.bears).toBe('none');
    expect(freer.conflicts).toHaveLength(1);
  });
  it('that switch a precaution off leave it out of what is shown', () => {
    const on = order(1, { about: 'precaution', precaution: 'hip', on: true });
    const off = order(2, { about: 'precaution', precaution: 'hip', on: false });
    expect(inForce(on).list).toHaveLength(1);
    expect(inForce(on, off)).toMatchObject({ list: [], forPlan: { brace: null } });
    expect(inForce(on, off).forPlan.precautions.size).toBe(0);
  });
});

const beyond = (checked: Told, ...orders: readonly Told[]) => {
  const { facts } = effectiveFacts(stayOf(...orders, checked));
  const fact = facts.find(isCheck)!;
  return orderGoneBeyond(fact, ordersInForce(facts).forPlan, protocolLookup([]));
};

describe('a check and an order', () => {
  it('disagree when the person did what the order does not allow', () => {
    expect(beyond(check('walk', 2), { ...order(1, { about: 'activity', most: 'bed' }), id: 'o' })).toBe('o');
    expect(beyond(check('stand', 2), { ...bears(1, 'none'), id: 'o' })).toBe('o');
  });
  it('agree when it stayed within it', () => {
    expect(beyond(check('upright', 2), order(1, { about: 'activity', most: 'bed' }))).toBeNull();
    expect(beyond(check('edge', 2), bears(1, 'none'))).toBeNull();
    expect(beyond(check('walk', 2), bears(1, 'limited'))).toBeNull();
  });
});
