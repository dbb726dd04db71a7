import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/planning/commands';
import { streamKey } from '@footboard/shared/kernel/event-type';
import { CHARGE_NURSE, given, iso, LARCH, NURSE, STAFF } from '../given.testkit.ts';

const WARD = streamKey('ward', LARCH);
const by = CHARGE_NURSE;
/** 09:00 to 13:00 on the ward's clock, 3 March. */
const aide = { staff: 'aide', from: iso(0), until: iso(4) };
const pause = (from: number, until: number) => ({ from: iso(from), until: iso(until) });
const on = (...people: object[]) => ({ people: people as (typeof aide)[] });

describe('naming who is on the ward', () => {
  it('is recorded for the ward day of the entry', () => {
    const breaks = [pause(1, 1.5)];
    given()
      .when(commands.setPeopleOn, on({ ...aide, breaks }), { by })
      .appends(['people-on-set', WARD, { day: '2026-03-03', people: [{ ...aide, breaks }] }]);
  });
  it('for the next day needs times of that day', () => {
    const tomorrow = { ...aide, from: iso(24), until: iso(32) };
    given()
      .when(commands.setPeopleOn, { day: '2026-03-04', ...on(tomorrow) }, { by })
      .accepts();
    given().when(commands.setPeopleOn, on(tomorrow), { by }).refuses('not-on-that-day', '/people/0/from');
  });
  it('a night that ends on the next date is one of the day it begins in', () => {
    given()
      .when(commands.setPeopleOn, on({ ...aide, from: iso(12), until: iso(22.5) }), { by })
      .accepts();
  });
  it('the same time twice takes somebody off, whatever the time', () => {
    given()
      .when(commands.setPeopleOn, on({ ...aide, from: iso(-40), until: iso(-40) }), { by })
      .accepts();
  });
  it.each([
    ['an end before the beginning', on({ ...aide, until: iso(-1) }), 'on-times', '/people/0/until'],
    ['more than 16 hours', on({ ...aide, until: iso(16.25) }), 'on-times', '/people/0/until'],
    ['somebody twice', on(aide, aide), 'person-named-twice', '/people/1/staff'],
    ['somebody unknown', on({ ...aide, staff: 'nobody' }), 'staff-unknown', '/people/0/staff'],
    [
      'a break before the time on',
      on({ ...aide, breaks: [pause(-1, 1)] }),
      'break-times',
      '/people/0/breaks',
    ],
    ['a break past the end', on({ ...aide, breaks: [pause(3, 5)] }), 'break-times', '/people/0/breaks'],
    ['an empty break', on({ ...aide, breaks: [pause(1, 1)] }), 'break-times', '/people/0/breaks'],
    [
      'breaks that overlap',
      on({ ...aide, breaks: [pause(2, 3), pause(1, 2.5)] }),
      'break-times',
      '/people/0/breaks',
    ],
  ] as const)('%s is refused', (_what, data, code, field) => {
    given().when(commands.setPeopleOn, data, { by }).refuses(code, field);
  });
  it('is for the charge nurse, the coordinator and the manager', () => {
    given().when(commands.setPeopleOn, on(aide), { by: NURSE }).refuses('not-your-role');
    for (const role of ['handling-coordinator', 'manager'] as const) {
      expect(() => given().when(commands.setPeopleOn, on(aide), { by: STAFF[role] }).accepts()).not.toThrow();
    }
  });
});
