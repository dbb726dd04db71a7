import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/stays/commands';
import { bedClosed, bedFreed, bedTaken, bedWithdrawn } from '@footboard/shared/capabilities/wards/events';
import { arrivalExpected, expectedArrivalClosed } from '@footboard/shared/capabilities/dayplan/events';
import { stayMoved } from '@footboard/shared/capabilities/stays/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import type { PersonId } from '@footboard/shared/kernel/ids';
import {
  AIDE,
  arrived,
  bed,
  fact,
  given,
  hours,
  iso,
  left,
  LARCH,
  NURSE,
  ROWAN,
  STAFF,
  stay,
} from '../given.testkit.ts';

const clara = { stay: 'clara', person: 'person-clara', bed: 'b3', from: 'emergency' } as const;
const anna = arrived('anna', 'b1');
const ben = arrived('ben', 'b2');

describe('arrival', () => {
  it('given an empty bed, when a person arrives, then the stay begins and the bed is taken in one act', () => {
    given()
      .when(commands.beginStay, clara)
      .appends(['stay-begun', 'stay/clara', clara], ['bed-taken', 'bed/b3', { bed: 'b3', stay: 'clara' }]);
  });
  describe('of somebody who was expected', () => {
    const larch = streamKey('ward', LARCH);
    const awaited = (more: Partial<PayloadOf<typeof arrivalExpected>> = {}) =>
      newEvent(arrivalExpected, larch, {
        expected: 'x1',
        at: iso(2),
        from: 'ward',
        bariatric: false,
        ...more,
      });
    const closed = newEvent(expectedArrivalClosed, larch, { expected: 'x1', outcome: 'arrived' });

    it('ARRIVAL-1 begins the stay, names where they come from, and closes the expected arrival in one act', () => {
      const previous = { ward: ROWAN, stay: stay('rosa') };
      given(awaited({ previous }))
        .when(commands.beginStay, { ...clara, expected: 'x1' })
        .appends(
          ['stay-begun', 'stay/clara', { ...clara, previous }],
          ['bed-taken', 'bed/b3', { bed: 'b3', stay: 'clara' }],
          [
            'expected-arrival-closed',
            `ward/${LARCH}`,
            { expected: 'x1', outcome: 'arrived', stay: clara.stay },
          ],
        );
    });
    it('closed meanwhile by somebody else, keeps nobody out of the bed', () => {
      given(awaited(), closed)
        .when(commands.beginStay, { ...clara, expected: 'x1' })
        .appends(['stay-begun', 'stay/clara', clara], ['bed-taken', 'bed/b3', { bed: 'b3', stay: 'clara' }]);
    });
    it('under an id that never was, is refused; nothing is begun', () => {
      given(awaited())
        .when(commands.beginStay, { ...clara, expected: 'x2' })
        .refuses('expected-unknown', '/expected');
    });
    it('into a bed that is taken, leaves them expected', () => {
      given(...anna, awaited())
        .when(commands.beginStay, { ...clara, bed: 'b1', expected: 'x1' })
        .refuses('bed-occupied', '/bed');
    });
  });
  it('when identity, usual way and weight are given, then identity is kept apart and the rest recorded', () => {
    const entered = given().when(commands.beginStay, {
      ...clara,
      identity: { name: 'Clara Reed', born: '1941-03-09' },
      usual: { moves: 'frame', transfers: 'helped' },
      weight: { kg: 71, how: 'estimated' },
    });
    entered.appends(
      ['stay-begun', 'stay/clara', { ...clara, identity: { ref: expect.any(String) } }],
      [
        'usual-way-recorded',
        'stay/clara',
        { usual: { moves: 'frame', transfers: 'helped', stairs: 'not known' } },
      ],
      ['weight-recorded', 'stay/clara', { weight: { kg: 71, how: 'estimated' } }],
      ['bed-taken', 'bed/b3', { bed: 'b3', stay: 'clara' }],
    );
    entered.keeps(['stay/clara', '{"name":"Clara Reed","born":"1941-03-09"}']);
  });
  it('when a person comes from theatre or intensive care, then that is a trigger at once', () => {
    for (const [from, kind] of [
      ['theatre', 'return-from-surgery'],
      ['intensive-care', 'step-down-from-intensive-care'],
    ] as const) {
      given()
        .when(commands.beginStay, { ...clara, from })
        .appends(
          ['stay-begun', 'stay/clara', { ...clara, from }],
          ['trigger-recorded', 'stay/clara', { kind }],
          ['bed-taken', 'bed/b3', { bed: 'b3', stay: 'clara' }],
        );
    }
  });
  it('given someone in it, when another arrives in that bed, then that is refused', () => {
    given(anna)
      .when(commands.beginStay, { ...clara, bed: 'b1' })
      .refuses('bed-occupied', '/bed');
  });
  it('when the bed is not on the list, or was just withdrawn, then that is refused', () => {
    given()
      .when(commands.beginStay, { ...clara, bed: 'b9' })
      .refuses('bed-unknown', '/bed');
    const closed = newEvent(bedClosed, streamKey('ward', 'larch'), { bed: bed('b3') });
    given(closed).when(commands.beginStay, clara).refuses('bed-unknown', '/bed');
    const withdrawn = newEvent(bedWithdrawn, streamKey('bed', 'b3'), { bed: bed('b3') });
    given(withdrawn).when(commands.beginStay, clara).refuses('bed-unknown', '/bed');
  });
  it('when the id belongs to an earlier stay, then that is refused', () => {
    given(anna, left('anna', 'b1', { at: hours(1) }))
      .when(commands.beginStay, { ...clara, stay: 'anna' })
      .refuses('stay-known', '/stay');
  });
  it('given a bed freed at 10:00, when an arrival at 09:30 is entered late, then someone else was in it', () => {
    const before = given(anna, left('anna', 'b1', { at: hours(1) }));
    before
      .when(commands.beginStay, { ...clara, bed: 'b1' }, { at: hours(0.5), now: hours(2) })
      .refuses('bed-taken-then', '/bed');
    before.when(commands.beginStay, { ...clara, bed: 'b1' }, { at: hours(1), now: hours(2) }).accepts();
  });
  it('when someone who may not judge enters an estimated weight or an arrival, then that is refused', () => {
    given()
      .when(
        commands.beginStay,
        { ...clara, weight: { kg: 71, how: 'estimated' } },
        { by: STAFF.administrator },
      )
      .refuses('estimate-needs-qualified', '/weight/how');
    given()
      .when(
        commands.beginStay,
        { ...clara, weight: { kg: 71, how: 'measured' } },
        { by: STAFF.administrator },
      )
      .accepts();
    given().when(commands.beginStay, clara, { by: AIDE }).refuses('not-your-role');
  });
});

describe('a move', () => {
  it('given an empty bed, when a person moves there, then one bed is freed and the other taken', () => {
    given(anna)
      .when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b3' })
      .appends(
        ['stay-moved', 'stay/anna', { from: 'b1', to: 'b3' }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
        ['bed-taken', 'bed/b3', { bed: 'b3', stay: 'anna' }],
      );
  });
  it('given someone in it, when another moves to that bed, then that is refused', () => {
    given(anna, ben)
      .when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b2' })
      .refuses('bed-occupied', '/to');
  });
  it('when the person is not where the entry says, then nothing is moved', () => {
    given(anna)
      .when(commands.moveStay, { stay: 'anna', from: 'b2', to: 'b3' })
      .refuses('not-in-that-bed', '/from');
  });
  it('when a bed or the stay is unknown, then each is pointed at', () => {
    given(anna)
      .when(commands.moveStay, { stay: 'anna', from: 'b9', to: 'b3' })
      .refuses('bed-unknown', '/from');
    given(anna).when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b9' }).refuses('bed-unknown', '/to');
    given(anna)
      .when(commands.moveStay, { stay: 'ghost', from: 'b1', to: 'b3' })
      .refuses('stay-unknown', '/stay');
  });
  it('when the bed is the same, then that is said', () => {
    given(anna).when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b1' }).refuses('same-bed', '/to');
  });
  it('given the person came into the bed at 11:00, when a move before that is entered, then it is out of order', () => {
    given(
      anna,
      fact(stayMoved, 'anna', { from: bed('b1'), to: bed('b2') }, { at: hours(2) }),
      newEvent(bedFreed, streamKey('bed', 'b1'), { bed: bed('b1'), stay: stay('anna') }),
      newEvent(bedTaken, streamKey('bed', 'b2'), { bed: bed('b2'), stay: stay('anna') }),
    )
      .when(commands.moveStay, { stay: 'anna', from: 'b2', to: 'b3' }, { at: hours(1), now: hours(3) })
      .refuses('placement-out-of-order', '/stay');
  });
  it('given a stay that has ended, when a move from before the end is entered, then nobody is moved', () => {
    given(anna, left('anna', 'b1', { at: hours(2) }))
      .when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b3' }, { at: hours(1), now: hours(3) })
      .refuses('stay-ended', '/stay');
  });
});

describe('a swap', () => {
  const swap = {
    first: { stay: 'anna', bed: 'b1' },
    second: { stay: 'ben', bed: 'b2' },
  };
  it('given two people, when they change beds, then both stays and both guards change in one act', () => {
    given(anna, ben)
      .when(commands.swapStays, swap)
      .appends(
        ['stay-moved', 'stay/anna', { from: 'b1', to: 'b2', swappedWith: 'ben' }],
        ['stay-moved', 'stay/ben', { from: 'b2', to: 'b1', swappedWith: 'anna' }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
        ['bed-taken', 'bed/b1', { bed: 'b1', stay: 'ben' }],
        ['bed-freed', 'bed/b2', { bed: 'b2', stay: 'ben' }],
        ['bed-taken', 'bed/b2', { bed: 'b2', stay: 'anna' }],
      );
  });
  it('when either is not where the entry says, then neither is moved', () => {
    given(anna, ben)
      .when(commands.swapStays, { ...swap, first: { stay: 'anna', bed: 'b3' } })
      .refuses('not-in-that-bed', '/first/bed');
    given(anna, ben)
      .when(commands.swapStays, { ...swap, second: { stay: 'ben', bed: 'b3' } })
      .refuses('not-in-that-bed', '/second/bed');
  });
  it('when one side is unknown or has left, then neither is moved', () => {
    given(anna).when(commands.swapStays, swap).refuses('stay-unknown', '/second/stay');
    given(anna, ben, left('ben', 'b2', { at: hours(1) }))
      .when(commands.swapStays, swap)
      .refuses('stay-ended', '/second/stay');
  });
  it('when both sides are one person, then that is said', () => {
    given(anna)
      .when(commands.swapStays, { first: swap.first, second: { stay: 'anna', bed: 'b2' } })
      .refuses('same-stay', '/second');
  });
});

describe('a transfer to the ward next door', () => {
  const to = { ward: ROWAN, bed: 'b1', stay: 'anna-rowan' };
  const transfer = { stay: 'anna', bed: 'b1', to };
  const inRowan = arrived('ida', 'b1', { ward: ROWAN });

  it('given an empty bed there with the same id as here, when a person goes, then both wards hold their half', () => {
    given(anna)
      .when(commands.transferStay, transfer)
      .appends(
        ['stay-ended', 'stay/anna', { bed: 'b1', to: 'ward', next: { ward: ROWAN, stay: 'anna-rowan' } }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
        [
          'stay-begun',
          'stay/anna-rowan',
          {
            stay: 'anna-rowan',
            person: 'person-anna' as PersonId,
            bed: 'b1',
            from: 'ward',
            previous: { ward: LARCH, stay: 'anna' },
          },
          ROWAN,
        ],
        ['bed-taken', 'bed/b1', { bed: 'b1', stay: 'anna-rowan' }, ROWAN],
      );
  });
  it('given someone in that bed there, then nobody leaves here', () => {
    given(anna, inRowan).when(commands.transferStay, transfer).refuses('bed-occupied', '/to/bed');
  });
  it('when ward, bed or stay there are wrong, then each is pointed at', () => {
    const when = (more: object) =>
      given(anna).when(commands.transferStay, { ...transfer, to: { ...to, ...more } });
    when({ ward: 'nowhere' }).refuses('other-ward-unknown', '/to/ward');
    when({ ward: LARCH }).refuses('same-ward', '/to/ward');
    when({ bed: 'b9' }).refuses('bed-unknown', '/to/bed');
    when({ stay: 'anna' }).refuses('stay-known', '/to/stay');
    given(anna, inRowan)
      .when(commands.transferStay, { ...transfer, to: { ...to, bed: 'b2', stay: 'ida' } })
      .refuses('stay-known', '/to/stay');
  });
  it('when the person is in another bed, then nothing is transferred', () => {
    given(anna)
      .when(commands.transferStay, { ...transfer, bed: 'b2' })
      .refuses('not-in-that-bed', '/bed');
  });
});

describe('leaving', () => {
  it('when a person goes home, then the stay ends and the bed is freed', () => {
    given(anna)
      .when(commands.endStay, { stay: 'anna', bed: 'b1', to: 'home' })
      .appends(
        ['stay-ended', 'stay/anna', { bed: 'b1', to: 'home' }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
      );
  });
  it('when the person has left already, or lies elsewhere, then that is said', () => {
    given(anna, left('anna', 'b1', { at: hours(1) }))
      .when(commands.endStay, { stay: 'anna', bed: 'b1', to: 'home' })
      .refuses('stay-ended', '/stay');
    given(anna)
      .when(commands.endStay, { stay: 'anna', bed: 'b2', to: 'home' })
      .refuses('not-in-that-bed', '/bed');
  });
  it('when the time is before the arrival, then that is refused', () => {
    given(anna)
      .when(commands.endStay, { stay: 'anna', bed: 'b1', to: 'home' }, { at: hours(-1), now: hours(1) })
      .refuses('before-stay', '/stay');
  });
  it('an aide does not enter who leaves; a nurse does', () => {
    const end = { stay: 'anna', bed: 'b1', to: 'home' } as const;
    given(anna).when(commands.endStay, end, { by: AIDE }).refuses('not-your-role');
    given(anna).when(commands.endStay, end, { by: NURSE }).accepts();
  });
});
