import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/dayplan/commands';
import * as events from '@footboard/shared/capabilities/dayplan/events';
import { staffMemberChanged } from '@footboard/shared/capabilities/people/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId } from '@footboard/shared/kernel/ids';
import type { Step } from '../world.testkit.ts';
import {
  AIDE,
  arrived,
  bed,
  CHARGE_NURSE,
  given,
  iso,
  LARCH,
  left,
  hours,
  NURSE,
  ROWAN,
  stay,
  STAFF,
  THERAPIST,
} from '../given.testkit.ts';

const by = CHARGE_NURSE;
const WARD = streamKey('ward', LARCH);
const agreed = (action: string, more: object = {}): Step => ({
  ...newEvent(events.actionAgreed, WARD, {
    action,
    kind: 'check-again',
    owner: NURSE.staff,
    by: iso(5),
    ...more,
  }),
});
const closed = (action: string): Step => newEvent(events.actionClosed, WARD, { action, outcome: 'done' });
const gone = (who: string): Step =>
  newEvent(staffMemberChanged, WARD, { staff: who as StaffId, active: false });

describe('a huddle', () => {
  it('when it was held, then that alone is recorded', () => {
    given().when(commands.holdHuddle, {}, { by }).appends(['huddle-held', WARD, {}]);
  });
  it('is not held by whoever works on no ward', () => {
    given().when(commands.holdHuddle, {}, { by: STAFF.records }).refuses('not-your-role');
  });
});

describe('an agreed action', () => {
  const check = { action: 'a1', kind: 'check-again', owner: 'nurse', by: iso(5) } as const;

  it('about a person: the note is kept under the stay’s key', () => {
    const entered = given(arrived('anna', 'b1')).when(commands.agreeAction, {
      ...check,
      stay: 'anna',
      note: 'with the left shoe on',
    });
    entered.appends(['action-agreed', WARD, { ...check, stay: 'anna', note: { ref: expect.any(String) } }]);
    entered.keeps(['stay/anna', 'with the left shoe on']);
  });
  it('about the ward: the note is kept under the owner’s key', () => {
    const entered = given().when(commands.agreeAction, { ...check, note: 'ring the workshop' });
    entered.accepts();
    entered.keeps(['staff/nurse', 'ring the workshop']);
  });
  it('agreed anew gets the new owner and time', () => {
    given(agreed('a1'))
      .when(commands.agreeAction, { ...check, owner: 'therapist', by: iso(6) }, { by: THERAPIST })
      .appends(['action-agreed', WARD, { ...check, owner: 'therapist', by: iso(6) }]);
  });
  it('by a time that has passed is refused, also the very moment', () => {
    given()
      .when(commands.agreeAction, { ...check, by: iso(3) })
      .refuses('time-not-ahead', '/by');
    given()
      .when(commands.agreeAction, { ...check, by: iso(2) })
      .refuses('time-not-ahead', '/by');
  });
  it('an owner who is unknown or has left is refused', () => {
    given()
      .when(commands.agreeAction, { ...check, owner: 'nobody' })
      .refuses('staff-unknown', '/owner');
    given(gone('nurse')).when(commands.agreeAction, check, { by }).refuses('staff-unknown', '/owner');
  });
  it('about a stay that is unknown or over is refused', () => {
    given()
      .when(commands.agreeAction, { ...check, stay: 'ghost' })
      .refuses('stay-unknown', '/stay');
    given(arrived('anna', 'b1'), left('anna', 'b1', { at: hours(2) }))
      .when(commands.agreeAction, { ...check, stay: 'anna' })
      .refuses('stay-ended', '/stay');
  });
  it('that was closed is not agreed anew', () => {
    given(agreed('a1'), closed('a1')).when(commands.agreeAction, check).refuses('action-closed', '/action');
  });
});

describe('closing an action', () => {
  it('is recorded with its outcome', () => {
    given(agreed('a1'))
      .when(commands.closeAction, { action: 'a1', outcome: 'not-possible' }, { by: AIDE })
      .appends(['action-closed', WARD, { action: 'a1', outcome: 'not-possible' }]);
  });
  it('that is unknown, or closed already, is refused', () => {
    given()
      .when(commands.closeAction, { action: 'a1', outcome: 'done' })
      .refuses('action-unknown', '/action');
    given(agreed('a1'), closed('a1'))
      .when(commands.closeAction, { action: 'a1', outcome: 'done' })
      .refuses('action-closed', '/action');
  });
});

describe('naming who looks after which bed', () => {
  const b1 = { bed: 'b1', nurse: 'nurse', aide: 'aide' };

  it('without a time holds until the end of the shift', () => {
    // 12:00 in Berlin; the default roster changes at 07:00 and 19:00.
    given()
      .when(commands.nameCarers, { beds: [b1] }, { by })
      .appends(['carers-named', WARD, { until: '2026-03-03T18:00:00.000Z', beds: [b1] }]);
  });
  it('with a time holds until then', () => {
    given()
      .when(commands.nameCarers, { until: iso(4), beds: [b1] }, { by })
      .appends(['carers-named', WARD, { until: iso(4), beds: [b1] }]);
    given()
      .when(commands.nameCarers, { until: iso(3), beds: [b1] }, { by })
      .refuses('time-not-ahead', '/until');
  });
  it('refuses a bed and a person the ward does not have, and says which', () => {
    given()
      .when(commands.nameCarers, { beds: [b1, { ...b1, bed: 'b9' }] }, { by })
      .refuses('bed-unknown', '/beds/1/bed');
    given()
      .when(commands.nameCarers, { beds: [b1, { bed: 'b2', nurse: 'nobody', aide: null }] }, { by })
      .refuses('staff-unknown', '/beds/1/nurse');
    given(gone('aide'))
      .when(commands.nameCarers, { beds: [b1] }, { by })
      .refuses('staff-unknown', '/beds/0/aide');
  });
  it('refuses one bed twice, and an aide as the nurse of a bed', () => {
    given()
      .when(commands.nameCarers, { beds: [b1, { ...b1, nurse: null }] }, { by })
      .refuses('bed-named-twice', '/beds/1/bed');
    given()
      .when(commands.nameCarers, { beds: [{ ...b1, nurse: 'aide' }] }, { by })
      .refuses('carer-no-nurse', '/beds/0/nurse');
  });
  it('takes names back', () => {
    const nobody = { bed: 'b1', nurse: null, aide: null };
    given()
      .when(commands.nameCarers, { until: iso(9), beds: [nobody] }, { by })
      .appends(['carers-named', WARD, { until: iso(9), beds: [nobody] }]);
  });
  it('is not for an aide', () => {
    given()
      .when(commands.nameCarers, { beds: [b1] }, { by: AIDE })
      .refuses('not-your-role');
  });
});

describe('an expected arrival', () => {
  const one = { expected: 'x1', at: iso(6), from: 'theatre' } as const;
  const entered = (expected: string, more: object = {}): Step =>
    newEvent(events.arrivalExpected, WARD, { ...one, expected, bariatric: false, ...more });
  const over: Step = newEvent(events.expectedArrivalClosed, WARD, { expected: 'x1', outcome: 'arrived' });

  it('is recorded with its bed, how the person moved before, and the stay they come from', () => {
    const more = {
      bed: bed('b2'),
      usual: { moves: 'frame', transfers: 'helped', stairs: 'no' } as const,
      previous: { ward: ROWAN, stay: stay('anna') },
      bariatric: true,
    };
    given(arrived('anna', 'b3', { ward: ROWAN }).map((step) => ({ ...step, ward: ROWAN })))
      .when(commands.expectArrival, { ...one, ...more }, { by })
      .appends(['arrival-expected', WARD, { ...one, ...more }]);
  });
  it('with an id that was used, also of a closed one, is refused', () => {
    given(entered('x1')).when(commands.expectArrival, one, { by }).refuses('expected-known', '/expected');
    given(entered('x1'), over).when(commands.expectArrival, one, { by }).refuses('expected-known');
  });
  it('at a time that has passed, in an unknown bed, or from an unknown stay is refused', () => {
    given()
      .when(commands.expectArrival, { ...one, at: iso(2) }, { by })
      .refuses('time-not-ahead', '/at');
    given()
      .when(commands.expectArrival, { ...one, bed: 'b9' }, { by })
      .refuses('bed-unknown', '/bed');
    given()
      .when(commands.expectArrival, { ...one, previous: { ward: ROWAN, stay: 'ghost' } }, { by })
      .refuses('stay-unknown', '/previous/stay');
  });
  it('is closed once', () => {
    given(entered('x1'))
      .when(commands.closeExpectedArrival, { expected: 'x1', outcome: 'not-coming' }, { by })
      .appends(['expected-arrival-closed', WARD, { expected: 'x1', outcome: 'not-coming' }]);
    given(entered('x1'), over)
      .when(commands.closeExpectedArrival, { expected: 'x1', outcome: 'arrived' }, { by })
      .refuses('expected-unknown', '/expected');
  });
  it('is not closed by an arrival: a person says which one it was', () => {
    given(entered('x1', { bed: bed('b1') }), arrived('anna', 'b1'))
      .when(commands.closeExpectedArrival, { expected: 'x1', outcome: 'arrived' }, { by })
      .accepts();
  });
});
