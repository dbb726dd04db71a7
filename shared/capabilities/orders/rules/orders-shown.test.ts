/** What of the orders is handed to the plan and shown: design, rule 2, and section 1 (order). */
import { describe, expect, it } from 'vitest';
import { order, stayOf, hours, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import type { Order } from '../values.ts';
import { limits, ordersInForce, questionOf } from './orders.ts';

const inForce = (...told: readonly Told[]) => ordersInForce(effectiveFacts(stayOf(...told)).facts);
const given = (id: string, at: number, about: Order, role: Told['role'] = 'nurse'): Told => ({
  ...order(at, about, role),
  id,
});
const precaution = (which: 'hip' | 'spine' | 'sternum', on = true): Order => ({
  about: 'precaution',
  precaution: which,
  on,
});
const brace = (on = true): Order => ({ about: 'brace', on });
const leg = (bears: 'none' | 'limited' | 'unrestricted'): Order => ({
  about: 'weight-bearing',
  limb: 'left-leg',
  bears,
});
const upTo = (most: 'bed' | 'chair' | 'walk' | 'no-limit'): Order => ({ about: 'activity', most });

describe('whether an order limits anything', () => {
  it.each([
    [true, upTo('walk')],
    [true, leg('limited')],
    [true, precaution('hip')],
    [false, upTo('no-limit')],
    [false, leg('unrestricted')],
    [false, precaution('hip', false)],
    [false, brace(false)],
  ] as const)('is %s of %j', (expected, told) => {
    expect(limits(told)).toBe(expected);
  });
});

describe('the question that an order answers', () => {
  it('is one for each precaution and limb, and one for activity, brace and oxygen', () => {
    const questions = [
      upTo('bed'),
      leg('none'),
      { ...leg('none'), limb: 'right-leg' } as Order,
      precaution('hip'),
      precaution('spine'),
      precaution('sternum'),
      brace(),
      { about: 'oxygen-target', low: 88, high: 92 } as Order,
    ].map(questionOf);
    expect(questions).toEqual([
      'activity',
      'weight-bearing left-leg',
      'weight-bearing right-leg',
      'precaution hip',
      'precaution spine',
      'precaution sternum',
      'brace',
      'oxygen-target',
    ]);
  });
});

describe('the plan is told', () => {
  it('each precaution and the brace that stand, with the order and its time', () => {
    const { forPlan } = inForce(
      given('h', 1, precaution('hip')),
      given('s', 2, precaution('spine')),
      given('b', 3, brace()),
    );
    expect([...forPlan.precautions]).toEqual([
      ['hip', { value: true, fact: 'h', at: hours(1) }],
      ['spine', { value: true, fact: 's', at: hours(2) }],
    ]);
    expect(forPlan.brace).toEqual({ value: true, fact: 'b', at: hours(3) });
    expect(forPlan.activity).toBeNull();
  });
  it('no brace and no precaution of an oxygen target, nor of one that was switched off', () => {
    const target = given('t', 1, { about: 'oxygen-target', low: 94, high: 98 });
    const { forPlan } = inForce(
      target,
      given('h', 2, precaution('hip')),
      given('b', 2, brace()),
      given('off', 3, brace(false)),
    );
    expect(forPlan.brace).toBeNull();
    expect([...forPlan.precautions.keys()]).toEqual(['hip']);
    expect(inForce(given('h', 2, precaution('hip'))).forPlan.brace).toBeNull();
    expect(inForce(target).forPlan).toMatchObject({ brace: null, activity: null });
  });
});

describe('what is shown', () => {
  it('is in the same order of questions, whichever was given first', () => {
    const all = (times: readonly number[]) =>
      inForce(
        given('brace', times[0]!, brace()),
        given('activity', times[1]!, upTo('chair')),
        given('leg', times[2]!, leg('none')),
        given('spine', times[3]!, precaution('spine')),
        given('hip', times[4]!, precaution('hip')),
      ).list.map((o) => o.event);
    const expected = ['activity', 'brace', 'hip', 'spine', 'leg'];
    expect(all([1, 2, 3, 4, 5])).toEqual(expected);
    expect(all([5, 4, 3, 2, 1])).toEqual(expected);
    expect(all([2, 1, 5, 4, 3])).toEqual(expected);
  });
  it('is the order itself, by its entry and time', () => {
    expect(inForce(given('b', 3, brace())).list).toEqual([{ event: 'b', order: brace(), at: hours(3) }]);
  });
});

describe('of two orders on one question', () => {
  it('the later one simply stands, when the author may free', () => {
    const { list, conflicts } = inForce(given('a', 1, leg('none')), given('b', 2, leg('unrestricted')));
    expect(list.map((o) => o.event)).toEqual(['b']);
    expect(conflicts).toEqual([]);
  });
  it('the same once more, of anyone, is no conflict: the last one stands', () => {
    const again = inForce(given('a', 1, leg('limited')), given('b', 2, leg('limited'), 'aide'));
    expect(again.list.map((o) => o.event)).toEqual(['b']);
    expect(again.conflicts).toEqual([]);
    const atOnce = inForce(given('a', 1, leg('limited')), given('b', 1, leg('limited')));
    expect(atOnce.conflicts).toEqual([]);
  });
  it.each<[string, Order]>([
    ['activity', upTo('chair')],
    ['a leg that bears nothing', leg('none')],
    ['a leg that bears without limit', leg('unrestricted')],
    ['a leg that bears 20 kg', { ...leg('limited'), limit: { kg: 20 } } as Order],
    ['a leg that bears 30 %', { ...leg('limited'), limit: { percent: 30 } } as Order],
    ['a precaution', precaution('hip')],
    ['a brace', brace()],
    ['an oxygen target', { about: 'oxygen-target', low: 88, high: 92 }],
  ])('the same twice is no conflict, at one time or later, of anyone: %s', (_what, told) => {
    const atOnce = inForce(given('a', 1, told), given('b', 1, told));
    const later = inForce(given('a', 1, told), given('b', 2, told, 'aide'));
    for (const { list, conflicts } of [atOnce, later]) {
      expect(conflicts).toEqual([]);
      expect(list.map((o) => o.event)).toEqual(['b']);
    }
  });
  it.each([
    ['a higher number', { kg: 50 }],
    ['no number any more', undefined],
    ['a number in another unit, which cannot be compared,', { percent: 5 }],
  ])('%s by someone who may not free does not take the place of the prescriber’s', (_what, limit) => {
    const most = (kg: number): Order => ({ ...leg('limited'), limit: { kg } }) as Order;
    const told = { ...leg('limited'), ...(limit ? { limit } : {}) } as Order;
    const { list, conflicts } = inForce(given('a', 1, most(10)), given('b', 2, told, 'aide'));
    expect(list.map((o) => o.event)).toEqual(['a']);
    expect(conflicts).toMatchObject([{ safer: 'a', other: 'b' }]);
    // Whoever may free decides; a lower number is anybody's.
    expect(inForce(given('a', 1, most(10)), given('b', 2, told)).list.map((o) => o.event)).toEqual(['b']);
    const lower = inForce(given('a', 1, most(10)), given('b', 2, most(5), 'aide'));
    expect(lower.list.map((o) => o.event)).toEqual(['b']);
    expect(lower.conflicts).toEqual([]);
  });
  it('of one time with two numbers, the lower stands and both are shown', () => {
    const share = (percent: number): Order => ({ ...leg('limited'), limit: { percent } }) as Order;
    for (const [first, second, stands] of [
      [share(20), share(50), 'a'],
      [share(50), share(20), 'b'],
      [leg('limited'), share(50), 'b'],
    ] as const) {
      const { list, conflicts } = inForce(given('a', 1, first), given('b', 1, second));
      expect(list.map((o) => o.event)).toEqual([stands]);
      expect(conflicts).toHaveLength(1);
    }
  });
  it('an aide’s precaution counts, and an aide’s end of it does not', () => {
    const on = inForce(given('on', 1, precaution('spine'), 'aide'));
    expect(on.forPlan.precautions.has('spine')).toBe(true);
    const off = inForce(
      given('on', 1, precaution('spine')),
      given('off', 2, precaution('spine', false), 'aide'),
    );
    expect(off.forPlan.precautions.has('spine')).toBe(true);
    expect(off.list.map((o) => o.event)).toEqual(['on']);
  });
  it('that disagree, the words say which question, why, and that the stricter stands', () => {
    const sameTime = inForce(given('a', 1, leg('none')), given('b', 1, leg('limited')));
    expect(sameTime.conflicts).toEqual([
      {
        question: 'order: weight-bearing left-leg',
        safer: 'a',
        other: 'b',
        words: 'Order (weight bearing left leg): two orders of the same time differ; the stricter stands',
      },
    ]);
    const freer = inForce(given('a', 1, upTo('bed')), given('b', 2, upTo('walk'), 'aide'));
    expect(freer.conflicts).toEqual([
      {
        question: 'order: activity',
        safer: 'a',
        other: 'b',
        words: 'Order (activity): a freer order by someone who may not free; the stricter stands',
      },
    ]);
  });
  it('the conflict is over when somebody who may free gives the order anew', () => {
    const { conflicts } = inForce(
      given('a', 1, upTo('bed')),
      given('b', 2, upTo('walk'), 'aide'),
      given('c', 3, upTo('walk')),
    );
    expect(conflicts).toEqual([]);
  });
});
