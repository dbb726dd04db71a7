import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/measures/commands';
import { walkingMeasured, walkingMeasuresSwitched } from '@footboard/shared/capabilities/measures/events';
import type { Measure } from '@footboard/shared/capabilities/measures/values';
import { holdPlaced, orderChanged } from '@footboard/shared/capabilities/orders/events';
import type { HoldScope, Order } from '@footboard/shared/capabilities/orders/values';
import {
  AIDE,
  arrived,
  checked,
  fact,
  given,
  hours,
  iso,
  left,
  NURSE,
  STAFF,
  stay,
  THERAPIST,
  upToFailed,
} from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const on = fact(walkingMeasuresSwitched, 'anna', { on: true }, { at: hours(0.5), by: THERAPIST });
const MEASURES = {
  'gait-speed': {
    kind: 'gait-speed',
    metres: 4,
    seconds: 6.5,
    pace: 'usual',
    start: 'walking',
    turn: false,
    support: 'frame',
  },
  'six-minute-walk': { kind: 'six-minute-walk', metres: 180, support: 'frame' },
  'up-and-go': { kind: 'up-and-go', seconds: 19, support: 'frame' },
  'chair-stands': { kind: 'chair-stands', stands: 5, usedArms: false },
  'five-rises': { kind: 'five-rises', seconds: null, usedArms: false },
} satisfies Record<Measure['kind'], Measure>;
const walks = [MEASURES['gait-speed'], MEASURES['six-minute-walk'], MEASURES['up-and-go']];
const risings = [MEASURES['chair-stands'], MEASURES['five-rises']];
const record = (measure: Measure) => ({ stay: 'anna', measure });

describe('turning walking measures on and off', () => {
  it('MEASURE-1 is a therapist’s alone', () => {
    for (const turned of [true, false]) {
      given(anna)
        .when(commands.switchWalkingMeasures, { stay: 'anna', on: turned }, { by: THERAPIST })
        .appends(['walking-measures-switched', 'stay/anna', { on: turned }]);
    }
    for (const [role, by] of Object.entries(STAFF)) {
      if (role === 'therapist') continue;
      given(anna)
        .when(commands.switchWalkingMeasures, { stay: 'anna', on: true }, { by })
        .refuses('not-your-role');
    }
  });
  it('is for a stay that goes on', () => {
    given(anna, left('anna', 'b1', { at: hours(2) }))
      .when(commands.switchWalkingMeasures, { stay: 'anna', on: true }, { by: THERAPIST })
      .refuses('stay-ended');
    given()
      .when(commands.switchWalkingMeasures, { stay: 'anna', on: true }, { by: THERAPIST })
      .refuses('stay-unknown');
  });
});

describe('a walking measure', () => {
  const walked = checked('anna', 'walk', { at: hours(1) });

  it('while they are on and walking is cleared is recorded, by a nurse or therapist', () => {
    const readBy = { age: 78, sex: 'female' as const };
    for (const by of [NURSE, THERAPIST, STAFF['charge-nurse']]) {
      given(anna, on, walked)
        .when(commands.recordWalkingMeasure, { ...record(MEASURES['up-and-go']), readBy }, { by })
        .appends(['walking-measured', 'stay/anna', { measure: MEASURES['up-and-go'], readBy }]);
    }
    for (const by of [AIDE, STAFF.manager, STAFF.records]) {
      given(anna, on, walked)
        .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']), { by })
        .refuses('not-your-role');
    }
  });
  it('MEASURE-1 while they are off is refused', () => {
    given(anna, walked)
      .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']))
      .refuses('walking-measures-off');
    given(anna, walked, on, fact(walkingMeasuresSwitched, 'anna', { on: false }, { at: hours(2) }))
      .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']))
      .refuses('walking-measures-off');
    given(anna, walked, fact(walkingMeasuresSwitched, 'anna', { on: true }, { at: hours(0.5), by: NURSE }))
      .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']))
      .refuses('walking-measures-off');
  });
  it('taken just before they were turned on may be entered after', () => {
    const late = fact(walkingMeasuresSwitched, 'anna', { on: true }, { at: hours(2.5), by: THERAPIST });
    given(anna, walked, late)
      .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']), { at: hours(2), now: hours(3) })
      .accepts();
    given(anna, walked, late)
      .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']), { at: hours(2), now: hours(2.4) })
      .refuses('walking-measures-off');
  });
  it('of a stay that has ended is for the time before its end', () => {
    const over = [anna, on, walked, left('anna', 'b1', { at: hours(2) })] as const;
    given(...over)
      .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']))
      .refuses('stay-ended');
    given(...over)
      .when(commands.recordWalkingMeasure, record(MEASURES['up-and-go']), { at: hours(1.5), now: hours(3) })
      .accepts();
  });
  it('MEASURE-3 of walking needs walking cleared', () => {
    for (const measure of walks) {
      given(anna, on, walked).when(commands.recordWalkingMeasure, record(measure)).accepts();
      given(anna, on, checked('anna', 'turn', { at: hours(1) }))
        .when(commands.recordWalkingMeasure, record(measure))
        .refuses('walk-not-cleared', '/measure/kind');
      given(anna, on)
        .when(commands.recordWalkingMeasure, record(measure))
        .refuses('walk-not-cleared', '/measure/kind');
    }
  });
  it('MEASURE-3 of rising from a chair needs standing cleared', () => {
    for (const measure of risings) {
      given(anna, on, checked('anna', 'stand', { at: hours(1) }))
        .when(commands.recordWalkingMeasure, record(measure))
        .accepts();
      given(anna, on, checked('anna', 'edge', { at: hours(1) }))
        .when(commands.recordWalkingMeasure, record(measure))
        .refuses('stand-not-cleared', '/measure/kind');
    }
  });
  it('MEASURE-3 is judged at the time it was taken', () => {
    const failed = checked(
      'anna',
      'walk',
      { at: hours(2) },
      { stages: upToFailed('walk', hours(2)), depth: 'full' },
    );
    const entered = (at: number) =>
      given(anna, on, walked, failed).when(commands.recordWalkingMeasure, record(walks[0]!), {
        at: hours(at),
        now: hours(3),
      });
    entered(1.5).accepts();
    entered(2.5).refuses('walk-not-cleared');
    entered(0.9).refuses('walk-not-cleared');
  });
  it('MEASURE-3 is not taken while a hold or an order stops it, and the refusal says which', () => {
    const hold = (scope: HoldScope, reason: 'after-fall' | 'clot-suspected' = 'after-fall') =>
      fact(
        holdPlaced,
        'anna',
        { hold: 'h1', scope, reason, owner: NURSE.staff, reviewAt: iso(9) },
        { at: hours(2) },
      );
    const order = (most: Extract<Order, { about: 'activity' }>['most']) =>
      fact(orderChanged, 'anna', { order: { about: 'activity', most } }, { at: hours(2) });
    const entered = (step: ReturnType<typeof fact>, measure: Measure) =>
      given(anna, on, walked, step).when(commands.recordWalkingMeasure, record(measure));
    for (const measure of walks) {
      for (const scope of ['walking', 'standing', 'out-of-bed', 'all-including-turning'] as const) {
        entered(hold(scope), measure).refuses('walk-not-cleared');
      }
      for (const most of ['bed', 'edge-of-bed', 'chair', 'stand'] as const) {
        entered(order(most), measure).refuses('walk-not-cleared');
      }
      for (const most of ['walk', 'no-limit'] as const) entered(order(most), measure).accepts();
    }
    for (const measure of risings) {
      entered(hold('walking', 'clot-suspected'), measure).accepts();
      // With a bone in doubt the plan holds standing as well.
      entered(hold('walking'), measure).refuses('stand-not-cleared');
      entered(hold('standing'), measure).refuses('stand-not-cleared');
      for (const most of ['bed', 'edge-of-bed', 'chair'] as const) {
        entered(order(most), measure).refuses('stand-not-cleared');
      }
      for (const most of ['stand', 'walk'] as const) entered(order(most), measure).accepts();
    }
    expect(entered(hold('walking'), walks[0]!).decision).toMatchObject({
      detail: 'a hold stops walking: after fall',
    });
    expect(entered(order('chair'), risings[0]!).decision).toMatchObject({
      detail: 'the order allows activity up to chair, not standing',
    });
  });
  it('says the tier that stands in the way, and what to do instead', () => {
    const { decision } = given(anna, on, checked('anna', 'edge', { at: hours(1) })).when(
      commands.recordWalkingMeasure,
      { ...record(walks[0]!), stay: stay('anna') },
    );
    expect(decision).toEqual({
      refused: 'walk-not-cleared',
      detail: 'walking is not cleared; the tier is Edge',
      remedy:
        'Do not take this measure now. Check the person first. What was done all the same is recorded as a session.',
      field: '/measure/kind',
    });
  });
  it('is not taken under a plan that the staged check does not speak for', () => {
    const scope = { ...on, type: 'scope-set', payload: { scope: 'comfort' }, occurred: hours(2) };
    const { decision } = given(anna, on, walked, scope).when(
      commands.recordWalkingMeasure,
      record(walks[0]!),
    );
    expect(decision).toMatchObject({
      refused: 'walk-not-cleared',
      detail: 'walking is not cleared; the tier is none: the staged check does not apply',
    });
  });
  it('carries no free text, so that nothing of it needs keeping apart', () => {
    given(anna, on, walked).when(commands.recordWalkingMeasure, record(walks[0]!)).keeps();
    expect(walkingMeasured.schema.safeParse({ measure: walks[0], note: 'x' }).success).toBe(false);
  });
});
