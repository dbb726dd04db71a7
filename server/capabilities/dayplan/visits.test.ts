import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/dayplan/commands';
import { visitGivenBack, visitHandedOver, visitTaken } from '@footboard/shared/capabilities/dayplan/events';
import { staffMemberAdded } from '@footboard/shared/capabilities/people/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { makeCorrection, makeRetraction } from '@footboard/shared/capabilities/corrections/commands';
import {
  AIDE,
  arrived,
  CHARGE_NURSE,
  entry,
  fact,
  given,
  hours,
  iso,
  LARCH,
  left,
  NURSE,
  STAFF,
} from '../given.testkit.ts';
import { staff } from '../world.testkit.ts';
import type { Step } from '../world.testkit.ts';

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

describe('taking a visit', () => {
  it('is for half an hour from now by the server clock, alone', () => {
    given(anna)
      .when(commands.takeVisit, take, { by: AIDE, at: hours(2.99), now: hours(3) })
      .appends(['visit-taken', 'stay/anna', { visit: 'v2', by: 'aide', from: iso(3), until: iso(3.5) }]);
  });
  it('may name a second person and other times', () => {
    given(anna)
      .when(commands.takeVisit, { ...take, second: 'bea', from: iso(5), until: iso(5.5) }, { by: AIDE })
      .appends([
        'visit-taken',
        'stay/anna',
        { visit: 'v2', by: 'aide', second: 'bea', from: iso(5), until: iso(5.5) },
      ]);
  });
  it('is refused while somebody else has it, with who and until when and what to do', () => {
    const told = given(anna, taken('bea', 2.9, 3.4)).when(commands.takeVisit, take, { by: AIDE });
    told.refuses('visit-taken', '/stay');
    expect(told.decision).toMatchObject({
      detail: 'an aide has it until 3 Mar 12:24',
      remedy: 'Choose the next person on the list, or ask them to hand it over to you.',
    });
  });
  it('is refused as well where it was taken for later', () => {
    given(anna, taken('bea', 2.9, 3.4, { from: iso(8), until: iso(8.5) }))
      .when(commands.takeVisit, take, { by: AIDE })
      .refuses('visit-taken');
  });
  it('is taken again by whoever has it, and by anybody once it is over or given back', () => {
    given(anna, taken('aide', 2.9, 3.4))
      .when(commands.takeVisit, take, { by: AIDE })
      .accepts();
    given(anna, taken('bea', 2, 3))
      .when(commands.takeVisit, take, { by: AIDE })
      .accepts();
    const back = fact(visitGivenBack, 'anna', { visit: 'v1', reason: 'not-needed' }, { at: hours(2.95) });
    given(anna, taken('bea', 2.9, 3.4), back)
      .when(commands.takeVisit, take, { by: AIDE })
      .accepts();
  });
  it('takes a second person only who is on the list, active, of the bedside, and not oneself', () => {
    const givenSecond = (who: string) =>
      given(anna).when(commands.takeVisit, { ...take, second: who }, { by: AIDE });
    givenSecond('aide').refuses('second-is-first', '/second');
    givenSecond('nobody').refuses('staff-unknown', '/second');
    givenSecond('records').refuses('staff-unknown', '/second');
    givenSecond('nurse').accepts();
  });
  it('has times that can be: an end after the beginning, four hours at most, not over, 18 hours ahead at most', () => {
    const givenTimes = (from: number, until?: number) =>
      given(anna).when(
        commands.takeVisit,
        { ...take, from: iso(from), ...(until === undefined ? {} : { until: iso(until) }) },
        { by: AIDE },
      );
    givenTimes(4, 4).refuses('visit-times', '/until');
    givenTimes(4, 3.5).refuses('visit-times', '/until');
    givenTimes(4, 8).accepts();
    givenTimes(4, 8.02).refuses('visit-times', '/until');
    givenTimes(2, 3).refuses('visit-times', '/until');
    givenTimes(21).accepts();
    givenTimes(21.02).refuses('visit-times', '/from');
  });
  it('needs a stay that runs, a new id, and a role that goes to the bedside', () => {
    given(anna, left('anna', 'b1', { at: hours(2) }))
      .when(commands.takeVisit, take, { by: AIDE, at: hours(1.9), now: hours(3) })
      .refuses('stay-ended', '/stay');
    given(anna, taken('aide', 2, 2.5))
      .when(commands.takeVisit, { ...take, visit: 'v1' }, { by: AIDE })
      .refuses('visit-known', '/visit');
    for (const who of ['manager', 'records', 'administrator'] as const) {
      given(anna).when(commands.takeVisit, take, { by: STAFF[who] }).refuses('not-your-role');
    }
  });
});

describe('handing a visit over', () => {
  const givenHanded = (to: string, by = AIDE, ...before: Step[]) =>
    given(anna, taken('aide', 2.9, 3.4), before).when(
      commands.handOverVisit,
      { stay: 'anna', visit: 'v1', to },
      { by },
    );
  it('is for who has it, the second person, and a qualified person', () => {
    const event = ['visit-handed-over', 'stay/anna', { visit: 'v1', to: 'bea' }] as const;
    givenHanded('bea').appends(event);
    givenHanded('bea', NURSE).appends(event);
    givenHanded('bea', BEA).refuses('visit-taken', '/visit');
    given(anna, taken('aide', 2.9, 3.4, { second: 'bea' }))
      .when(commands.handOverVisit, { stay: 'anna', visit: 'v1', to: 'bea' }, { by: BEA })
      .appends(event);
  });
  it('to whoever has it already changes nothing', () => givenHanded('aide').appends());
  it('goes to somebody who can go', () => {
    givenHanded('nobody').refuses('staff-unknown', '/to');
    givenHanded('manager').refuses('staff-unknown', '/to');
  });
  it('is refused once nobody has it, or somebody else has another', () => {
    given(anna, taken('aide', 2, 2.5))
      .when(commands.handOverVisit, { stay: 'anna', visit: 'v1', to: 'bea' }, { by: AIDE })
      .refuses('visit-unknown', '/visit');
    given(anna, taken('aide', 2.9, 3.4))
      .when(commands.handOverVisit, { stay: 'anna', visit: 'v0', to: 'bea' }, { by: AIDE })
      .refuses('visit-unknown', '/visit');
  });
  it('leaves the one who had it free to be refused', () => {
    const over = fact(visitHandedOver, 'anna', { visit: 'v1', to: id('bea') }, { at: hours(2.95) });
    given(anna, taken('aide', 2.9, 3.4), over)
      .when(commands.takeVisit, take, { by: AIDE })
      .refuses('visit-taken');
  });
});

describe('giving a visit back', () => {
  const givenBack = (by = AIDE) =>
    given(anna, taken('aide', 2.9, 3.4)).when(
      commands.giveBackVisit,
      { stay: 'anna', visit: 'v1', reason: 'called-away' },
      { by },
    );
  it('is for who goes, and a qualified person', () => {
    const event = ['visit-given-back', 'stay/anna', { visit: 'v1', reason: 'called-away' }] as const;
    givenBack().appends(event);
    givenBack(CHARGE_NURSE).appends(event);
    givenBack(BEA).refuses('visit-taken', '/visit');
  });
  it('is refused once it is over', () => {
    given(anna, taken('aide', 2, 2.5))
      .when(commands.giveBackVisit, { stay: 'anna', visit: 'v1', reason: 'called-away' }, { by: AIDE })
      .refuses('visit-unknown');
  });
});

describe('putting right a visit that was entered wrongly', () => {
  const target = entry('the-visit');
  const own = taken('aide', 2.9, 3.4);
  const givenCorrected = (replacement: Record<string, string | number>) =>
    given(anna, own).when(
      makeCorrection,
      { stay: 'anna', target, reason: 'wrong-value', replacement },
      { by: AIDE },
    );
  const payload = { visit: 'v1', by: 'aide', from: iso(2.9), until: iso(3.4) };
  it('is for an aide too: it lowers no help', () => {
    givenCorrected({ ...payload, until: iso(3.2) }).accepts();
    given(anna, own)
      .when(makeRetraction, { stay: 'anna', target, reason: 'never-happened' }, { by: AIDE })
      .accepts();
  });
  it('keeps the visit and the bounds of its times', () => {
    givenCorrected({ ...payload, visit: 'v9' }).refuses('replacement-names-another', '/replacement/visit');
    givenCorrected({ ...payload, until: iso(9) }).refuses('visit-times', '/replacement/until');
  });
});
