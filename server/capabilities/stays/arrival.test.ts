/** Who arrives: the stay and the bed in one act, and what is refused. */
import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/stays/commands';
import { bedClosed, bedWithdrawn } from '@footboard/shared/capabilities/wards/events';
import { arrivalExpected, expectedArrivalClosed } from '@footboard/shared/capabilities/dayplan/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import { AIDE, arrived, bed, given, hours, iso, left, LARCH, ROWAN, STAFF, stay } from '../given.testkit.ts';

const clara = { stay: 'clara', person: 'person-clara', bed: 'b3', from: 'emergency' } as const;
const anna = arrived('anna', 'b1');

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
