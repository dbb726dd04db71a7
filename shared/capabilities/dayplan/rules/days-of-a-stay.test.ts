/** Which days of a stay count towards who was got up, and where they lay. Ours, practice. */
import { describe, expect, it } from 'vitest';
import type { BedId } from '../../../kernel/ids.ts';
import { begun, calendar, hours, recordOf, session, type Told } from '../../board/rules/history.testkit.ts';
import { fairnessOf, personDaysOf, type PersonDay } from './fairness.ts';
import { totalsOf } from './totals.ts';

/** The first ward day ends at 07:00, 14 h after the arrival with the hour that the clocks went back. */
const DAY_ENDS = 14;
const daysOf = (...told: readonly Told[]) => {
  const record = recordOf([begun(), ...told]);
  return personDaysOf(record, totalsOf(record, calendar, hours(30)));
};
const scope = (at: number, more: object): Told => ({ type: 'scope-set', at, payload: more });

describe('a day of a stay', () => {
  it('given a move just when the ward day ends, then the day before still counts for the old bed', () => {
    const moved = (at: number): Told => ({
      type: 'stay-moved',
      at,
      payload: { from: 'bed-1', to: 'bed-2' },
    });
    expect(daysOf(moved(DAY_ENDS)).map(({ bed }) => bed)).toEqual(['bed-1', 'bed-2']);
    expect(daysOf(moved(DAY_ENDS - 0.1)).map(({ bed }) => bed)).toEqual(['bed-2', 'bed-2']);
  });
  it('given an arrival set right to a later day, then a day counted before it belongs to no bed', () => {
    const counted = totalsOf(recordOf([begun()]), calendar, hours(30));
    const later = recordOf([{ ...begun('stay-1', 'bed-3'), at: DAY_ENDS + 1 }]);
    expect(counted.map(({ day }) => day)).toEqual(['2026-10-24', '2026-10-25']);
    expect(personDaysOf(later, counted).map(({ day, bed }) => [day, bed])).toEqual([['2026-10-25', 'bed-3']]);
  });
  it('given sessions done, done in part and stopped, then each was a time of getting up', () => {
    const found = daysOf(
      session(1),
      session(2, { outcome: 'part' }),
      session(3, { outcome: 'part' }),
      session(4, { outcome: 'stopped' }),
    );
    expect(found[0]).toMatchObject({ recorded: true, visits: 4 });
  });
  it('given a comfort or clinician’s plan by its end, then it is counted apart; staged it is not', () => {
    const apart = (...told: readonly Told[]) => daysOf(...told).map((day) => day.apart);
    expect(apart()).toEqual([false, false]);
    expect(apart(scope(1, { scope: 'staged' }))).toEqual([false, false]);
    expect(apart(scope(DAY_ENDS + 1, { scope: 'comfort' }))).toEqual([false, true]);
    const own = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan-text' } };
    expect(apart(scope(1, own), scope(DAY_ENDS + 1, { scope: 'staged' }))).toEqual([true, false]);
  });
});

it('given people in isolation and not, then the two are told beside each other', () => {
  const day = (isolated: boolean): PersonDay => ({
    day: '2026-10-26',
    bed: 'b1' as BedId,
    isolated,
    apart: false,
    recorded: true,
    visits: 1,
  });
  const { groups } = fairnessOf([day(true), day(false), day(false)], [], { from: 0, to: 1, wardDays: 28 });
  expect(groups.isolation.map(({ key, days }) => [key, days])).toEqual([
    ['isolated', 1],
    ['not-isolated', 2],
  ]);
});
