import { describe, it } from 'vitest';
import * as visitCommands from '@footboard/shared/capabilities/dayplan/commands';
import * as roundCommands from '@footboard/shared/capabilities/dayplan/round-commands';
import { visitTaken } from '@footboard/shared/capabilities/dayplan/events';
import { secondGaveBack, secondNamed } from '@footboard/shared/capabilities/dayplan/round-events';
import { staffMemberAdded } from '@footboard/shared/capabilities/people/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { AIDE, arrived, CHARGE_NURSE, fact, given, hours, iso, LARCH, NURSE } from '../given.testkit.ts';
import { staff } from '../world.testkit.ts';
import type { Step } from '../world.testkit.ts';

const commands = { ...visitCommands, ...roundCommands };
const id = (s: string) => s as StaffId;
const BEA = staff('aide', 'bea');
/** A second aide, Bea. */
const others: Step = {
  ...newEvent(staffMemberAdded, streamKey('ward', LARCH), {
    staff: id('bea'),
    role: 'aide',
    name: { ref: 'name-of-bea' },
  }),
  occurred: hours(-40),
};
const anna = [...arrived('anna', 'b1'), others];
const taken = (by: string, from: number, until: number, more: object = {}) =>
  fact(
    visitTaken,
    'anna',
    { visit: 'v1', by: id(by), from: iso(from), until: iso(until), ...more },
    { at: hours(from), by: staff('aide', by), id: 'the-visit' },
  );
const take = { stay: 'anna', visit: 'v2' } as const;

describe('somebody who goes along', () => {
  const givenNamed = (second: string, by = AIDE, ...before: Step[]) =>
    given(anna, taken('aide', 2.9, 3.4), before).when(
      commands.nameSecond,
      { stay: 'anna', visit: 'v1', second },
      { by },
    );
  const givenCannot = (by = BEA, more: object = { second: 'bea' }) =>
    given(anna, taken('aide', 2.9, 3.4, more)).when(
      commands.giveBackSecond,
      { stay: 'anna', visit: 'v1' },
      { by },
    );
  it('is named by who goes or a qualified person, or offers themselves', () => {
    const event = ['second-named', 'stay/anna', { visit: 'v1', second: 'bea' }] as const;
    givenNamed('bea').appends(event);
    givenNamed('bea', NURSE).appends(event);
    givenNamed('bea', BEA).appends(event);
    givenNamed('nurse', BEA).refuses('visit-taken', '/visit');
    givenNamed('aide', NURSE).refuses('second-is-first', '/second');
    givenNamed('manager').refuses('staff-unknown', '/second');
  });
  it('does not push out another who goes along already', () => {
    const other = fact(secondNamed, 'anna', { visit: 'v1', second: id('nurse') }, { at: hours(2.95) });
    givenNamed('bea', BEA, other).refuses('second-other', '/second');
    givenNamed('bea', AIDE, other).accepts();
    givenNamed('nurse', AIDE, other).appends();
  });
  it('ROUND-5 cannot, in one tap: the visit stays taken and needs a second person again', () => {
    givenCannot().appends(['second-gave-back', 'stay/anna', { visit: 'v1', second: 'bea' }]);
    givenCannot(AIDE).accepts();
    givenCannot(CHARGE_NURSE).accepts();
    givenCannot(AIDE, {}).refuses('second-none', '/visit');
    const back = fact(secondGaveBack, 'anna', { visit: 'v1', second: id('bea') }, { at: hours(2.95) });
    given(anna, taken('aide', 2.9, 3.4, { second: 'bea' }), back)
      .when(commands.giveBackSecond, { stay: 'anna', visit: 'v1' }, { by: BEA })
      .refuses('visit-taken', '/visit');
    given(anna, taken('aide', 2.9, 3.4, { second: 'bea' }), back)
      .when(commands.takeVisit, take, { by: NURSE })
      .refuses('visit-taken', '/stay');
  });
});

describe('nobody in two places', () => {
  const bert = arrived('bert', 'b2');
  /** Bea goes to Bert, alone or as the second person. */
  const booked = (from: number, until: number, by = 'bea', second?: string) =>
    fact(
      visitTaken,
      'bert',
      {
        visit: 'v8',
        by: id(by),
        ...(second ? { second: id(second) } : {}),
        from: iso(from),
        until: iso(until),
      },
      { at: hours(2.5), by: staff('aide', by) },
    );
  const givenTaken = (more: object, by = AIDE, ...before: Step[]) =>
    given(anna, bert, before).when(commands.takeVisit, { stay: 'anna', visit: 'v2', ...more }, { by });
  it('ROUND-4 is booked as the second person while they go elsewhere, first or second', () => {
    const at5 = { second: 'bea', from: iso(5), until: iso(5.5) };
    givenTaken(at5, AIDE, booked(5.25, 5.75)).refuses('booked-then', '/second');
    givenTaken(at5, AIDE, booked(5.25, 5.75, 'nurse', 'bea')).refuses('booked-then', '/second');
    givenTaken(at5, AIDE, booked(5.5, 6)).accepts();
    givenTaken(at5, AIDE, booked(4.5, 5)).accepts();
  });
  it('ROUND-4 books themselves twice; going at once is until the next booking', () => {
    givenTaken({ from: iso(5), until: iso(5.5) }, BEA, booked(5.25, 5.75)).refuses('booked-then', '/from');
    givenTaken({}, BEA, booked(3.25, 3.75)).appends([
      'visit-taken',
      'stay/anna',
      { visit: 'v2', by: 'bea', from: iso(3), until: iso(3.25) },
    ]);
    givenTaken({}, BEA, booked(3.05, 3.75)).refuses('booked-then', '/from');
    givenTaken({}, BEA, booked(2.6, 3.4)).accepts();
  });
  it('ROUND-4 is named or handed a booking against another', () => {
    const own = taken('aide', 2.9, 3.4);
    given(anna, bert, own, booked(3.25, 3.75))
      .when(commands.nameSecond, { stay: 'anna', visit: 'v1', second: 'bea' }, { by: AIDE })
      .refuses('booked-then', '/second');
    given(anna, bert, own, booked(3.25, 3.75))
      .when(commands.handOverVisit, { stay: 'anna', visit: 'v1', to: 'bea' }, { by: AIDE })
      .refuses('booked-then', '/to');
    given(anna, bert, own, booked(2.6, 3.75))
      .when(commands.handOverVisit, { stay: 'anna', visit: 'v1', to: 'bea' }, { by: AIDE })
      .accepts();
  });
});

describe('which list somebody had before them', () => {
  const list = {
    position: 7,
    at: iso(2.9),
    weights: { version: 1, hash: 'a'.repeat(64) },
    digest: 'b'.repeat(64),
  };
  it('lies beside the entry, with the reason where another stood first', () => {
    const told = given(anna).when(
      commands.takeVisit,
      { ...take, list, instead: 'a-nurse-asks' },
      { by: AIDE },
    );
    told.appends(
      ['visit-taken', 'stay/anna', { visit: 'v2', by: 'aide', from: iso(3), until: iso(3.5) }],
      ['list-acted-on', 'stay/anna', { act: 'taken', visit: 'v2', list, instead: 'a-nurse-asks' }],
    );
    const swap = { stay: 'anna', visit: 'v1', list };
    given(anna, taken('aide', 2.9, 3.4))
      .when(commands.handOverVisit, { ...swap, to: 'bea' }, { by: AIDE })
      .appends(
        ['visit-handed-over', 'stay/anna', { visit: 'v1', to: 'bea' }],
        ['list-acted-on', 'stay/anna', { act: 'handed-over', visit: 'v1', list }],
      );
    given(anna, taken('aide', 2.9, 3.4))
      .when(commands.giveBackVisit, { ...swap, reason: 'called-away' }, { by: AIDE })
      .appends(
        ['visit-given-back', 'stay/anna', { visit: 'v1', reason: 'called-away' }],
        ['list-acted-on', 'stay/anna', { act: 'given-back', visit: 'v1', list }],
      );
  });
  it('ROUND-6 and who was asked first stand in the entry; only somebody of the ward can have been', () => {
    given(anna)
      .when(commands.takeVisit, { ...take, asked: 'nurse' }, { by: AIDE })
      .appends([
        'visit-taken',
        'stay/anna',
        { visit: 'v2', by: 'aide', from: iso(3), until: iso(3.5), asked: 'nurse' },
      ]);
    given(anna)
      .when(commands.takeVisit, { ...take, asked: 'nobody' }, { by: AIDE })
      .refuses('staff-unknown', '/asked');
  });
});
