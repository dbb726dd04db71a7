/** Setting "on own" while an order or the plan stops the feet. Source: design, people. */
import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/handling/commands';
import { orderChanged } from '@footboard/shared/capabilities/orders/events';
import { arrived, checked, fact, given, hours, THERAPIST } from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const walked = checked('anna', 'walk', { at: hours(1) });
const setOn = { stay: 'anna', where: ['toilet' as const], when: ['day' as const] };
const order = (most: 'chair' | 'stand' | 'walk') =>
  fact(orderChanged, 'anna', { order: { about: 'activity', most } }, { at: hours(0.5) });
const noLeg = (limb: 'left-leg' | 'right-leg', at: number) =>
  fact(orderChanged, 'anna', { order: { about: 'weight-bearing', limb, bears: 'none' } }, { at: hours(at) });

describe('given an order and a person who walked free', () => {
  it('when the order stops walking, then nobody sets "on own", not even to the toilet', () => {
    for (const most of ['chair', 'stand'] as const) {
      given(anna, order(most), walked).when(commands.setOnOwn, setOn).refuses('own-while-order');
      given(anna, order(most), walked)
        .when(commands.setOnOwn, setOn, { by: THERAPIST })
        .refuses('own-while-order');
    }
  });
  it('when it allows walking, then "on own" may be set', () => {
    given(anna, order('walk'), walked).when(commands.setOnOwn, setOn).accepts();
  });
  it('when it takes the weight off both legs, then the plan says HOLD and nobody sets "on own"', () => {
    given(anna, walked, noLeg('left-leg', 1.5), noLeg('right-leg', 1.5))
      .when(commands.setOnOwn, setOn)
      .refuses('own-while-plan-holds');
    // Walked all the same, against the order: that clears nothing.
    given(anna, noLeg('left-leg', 0.5), noLeg('right-leg', 0.5), walked)
      .when(commands.setOnOwn, setOn)
      .refuses('not-cleared-for-own');
  });
});
