import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/orders/commands';
import { holdEnded, holdPlaced, holdRenewed } from '@footboard/shared/capabilities/orders/events';
import { retractionMade } from '@footboard/shared/capabilities/corrections/events';
import { recordedTriggerKind } from '@footboard/shared/capabilities/orders/values';
import { role } from '@footboard/shared/kernel/author';
import type { StaffId } from '@footboard/shared/kernel/ids';
import {
  AIDE,
  arrived,
  CHARGE_NURSE,
  entry,
  fact,
  given,
  hours,
  iso,
  left,
  NURSE,
  STAFF,
} from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const hold = fact(
  holdPlaced,
  'anna',
  { hold: 'h1', scope: 'walking', reason: 'unstable', owner: 'nurse' as StaffId, reviewAt: iso(5) },
  { at: hours(1), id: 'h1-placed' },
);

describe('a trigger', () => {
  it('is recorded by anyone, whatever it is', () => {
    for (const who of role.options) {
      given(anna)
        .when(commands.recordTrigger, { stay: 'anna', kind: 'fall' }, { by: STAFF[who] })
        .appends(['trigger-recorded', 'stay/anna', { kind: 'fall' }]);
    }
    for (const kind of recordedTriggerKind.options) {
      given(anna).when(commands.recordTrigger, { stay: 'anna', kind }, { by: AIDE }).accepts();
    }
  });
  it('keeps its note apart', () => {
    const entered = given(anna).when(commands.recordTrigger, {
      stay: 'anna',
      kind: 'fall',
      note: 'by the window',
    });
    entered.appends(['trigger-recorded', 'stay/anna', { kind: 'fall', note: { ref: expect.any(String) } }]);
    entered.keeps(['stay/anna', 'by the window']);
  });
  it('is not put on a person who was not here', () => {
    given(anna, left('anna', 'b1', { at: hours(1) }))
      .when(commands.recordTrigger, { stay: 'anna', kind: 'fall' })
      .refuses('stay-ended');
  });
});

describe('an order', () => {
  const order = {
    about: 'weight-bearing',
    limb: 'left-leg',
    bears: 'limited',
    limit: { percent: 50 },
  } as const;
  it('is transcribed by a qualified person, with who ordered it kept apart', () => {
    const entered = given(anna).when(commands.changeOrder, { stay: 'anna', order, orderedBy: 'Dr Invented' });
    entered.appends(['order-changed', 'stay/anna', { order, orderedBy: { ref: expect.any(String) } }]);
    entered.keeps(['stay/anna', 'Dr Invented']);
  });
  it('is not for an aide or the coordinator', () => {
    for (const by of [AIDE, STAFF['handling-coordinator'], STAFF.manager]) {
      given(anna).when(commands.changeOrder, { stay: 'anna', order }, { by }).refuses('not-your-role');
    }
  });
  it('does not contradict itself', () => {
    given(anna)
      .when(commands.changeOrder, { stay: 'anna', order: { ...order, bears: 'unrestricted' } })
      .refuses('limit-contradicts', '/order/limit');
    given(anna)
      .when(commands.changeOrder, { stay: 'anna', order: { about: 'oxygen-target', low: 92, high: 88 } })
      .refuses('range-reversed', '/order/low');
    given(anna)
      .when(commands.changeOrder, { stay: 'anna', order: { about: 'oxygen-target', low: 88, high: 92 } })
      .accepts();
  });
});

describe('placing a hold', () => {
  const place = { stay: 'anna', hold: 'h1', scope: 'walking', reason: 'unstable' } as const;
  const placed = (more: object) =>
    ['hold-placed', 'stay/anna', { hold: 'h1', scope: 'walking', reason: 'unstable', ...more }] as const;

  it('by an aide asks for review within 1 h; by a nurse within 24 h unless said', () => {
    given(anna)
      .when(commands.placeHold, place, { by: AIDE })
      .appends(placed({ owner: 'aide', reviewAt: '2026-03-03T12:00:00.000Z' }));
    given(anna)
      .when(commands.placeHold, place)
      .appends(placed({ owner: 'nurse', reviewAt: '2026-03-04T11:00:00.000Z' }));
    given(anna)
      .when(commands.placeHold, { ...place, reviewAt: iso(8) })
      .appends(placed({ owner: 'nurse', reviewAt: iso(8) }));
  });
  it('by an aide who asks for a later review is taken, with the review brought forward', () => {
    given(anna)
      .when(commands.placeHold, { ...place, reviewAt: iso(30) }, { by: AIDE })
      .appends(placed({ owner: 'aide', reviewAt: '2026-03-03T12:00:00.000Z' }));
    given(anna)
      .when(commands.placeHold, { ...place, reviewAt: iso(3.5) }, { by: AIDE })
      .appends(placed({ owner: 'aide', reviewAt: iso(3.5) }));
  });
  it('that waited in an outbox until after its review is taken, and due at once', () => {
    given(anna)
      .when(commands.placeHold, { ...place, reviewAt: iso(2) }, { at: hours(1), now: hours(5) })
      .appends(placed({ owner: 'nurse', reviewAt: iso(2) }));
  });
  it('with a review that is not ahead is refused', () => {
    given(anna)
      .when(commands.placeHold, { ...place, reviewAt: iso(3) })
      .refuses('review-in-past', '/reviewAt');
  });
  it('names an owner on the staff list', () => {
    given(anna)
      .when(commands.placeHold, { ...place, owner: 'therapist' })
      .appends(placed({ owner: 'therapist', reviewAt: '2026-03-04T11:00:00.000Z' }));
    given(anna)
      .when(commands.placeHold, { ...place, owner: 'nobody' })
      .refuses('staff-unknown', '/owner');
  });
  it('does not use the id of another hold of the stay', () => {
    given(anna, hold).when(commands.placeHold, place).refuses('hold-known', '/hold');
  });
});

describe('reviewing a hold', () => {
  const renew = { stay: 'anna', hold: 'h1', reviewAt: iso(9) };
  const end = { stay: 'anna', hold: 'h1' };
  const ended = fact(holdEnded, 'anna', { hold: 'h1', placedBy: entry('h1-placed') }, { at: hours(2) });

  it('a qualified person keeps it or ends it', () => {
    given(anna, hold)
      .when(commands.renewHold, renew, { by: STAFF.therapist })
      .appends(['hold-renewed', 'stay/anna', { hold: 'h1', reviewAt: iso(9) }]);
    given(anna, hold)
      .when(commands.endHold, end, { by: CHARGE_NURSE })
      .appends(['hold-ended', 'stay/anna', { hold: 'h1', placedBy: 'h1-placed' }]);
  });
  it('nobody else does, not even once the review is due', () => {
    for (const by of [
      AIDE,
      STAFF['handling-coordinator'],
      STAFF.manager,
      STAFF.records,
      STAFF.administrator,
    ]) {
      given(anna, hold)
        .when(commands.endHold, end, { by, at: hours(8) })
        .refuses('not-your-role');
      given(anna, hold)
        .when(commands.renewHold, renew, { by, at: hours(8) })
        .refuses('not-your-role');
    }
  });
  it('a hold that is unknown, was withdrawn or has ended is said to be so', () => {
    given(anna).when(commands.endHold, end).refuses('hold-unknown', '/hold');
    given(
      anna,
      hold,
      fact(
        retractionMade,
        'anna',
        { target: entry('h1-placed'), reason: 'wrong-person' },
        { at: hours(2), by: NURSE },
      ),
    )
      .when(commands.endHold, end)
      .refuses('hold-unknown', '/hold');
    given(anna, hold, ended).when(commands.endHold, end).refuses('hold-already-ended', '/hold');
    given(anna, hold, ended).when(commands.renewHold, renew).refuses('hold-already-ended', '/hold');
  });
  it('does not come before the hold, nor set a review that is past', () => {
    given(anna, hold)
      .when(commands.endHold, end, { at: hours(0.5), now: hours(3) })
      .refuses('hold-not-yet-placed', '/hold');
    given(anna, hold)
      .when(commands.renewHold, { ...renew, reviewAt: iso(2) })
      .refuses('review-in-past', '/reviewAt');
  });
  it('an end from before somebody kept the hold does not undo that', () => {
    const kept = fact(holdRenewed, 'anna', { hold: 'h1', reviewAt: iso(9) }, { at: hours(2) });
    given(anna, hold, kept)
      .when(commands.endHold, end, { at: hours(1.5), now: hours(3) })
      .refuses('hold-renewed-since', '/hold');
    given(anna, hold, kept).when(commands.endHold, end).accepts();
  });
});
