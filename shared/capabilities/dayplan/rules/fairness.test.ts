/** Whom the ward got up, by where they lay. Ours, practice: no published measure is known to us. */
import { describe, expect, it } from 'vitest';
import type { BedId } from '../../../kernel/ids.ts';
import { calendar, hours, recordOf, session, notDone, type Told } from '../../board/rules/history.testkit.ts';
import { CLOSED, fairnessOf, FEW_DAYS, personDaysOf, type PersonDay } from './fairness.ts';
import { totalsOf } from './totals.ts';

const day = (more: Partial<PersonDay> = {}): PersonDay => ({
  day: '2026-10-26',
  bed: 'b1' as BedId,
  isolated: false,
  apart: false,
  recorded: true,
  visits: 1,
  ...more,
});
const beds = [
  { bed: 'b1' as BedId, bay: 'North' },
  { bed: 'b2' as BedId, bay: 'North' },
  { bed: 'b3' as BedId, bay: 'South' },
];
const of = (days: readonly PersonDay[]) => fairnessOf(days, beds, { from: 0, to: 1, wardDays: 28 });
const many = (n: number, more: Partial<PersonDay> = {}) => Array.from({ length: n }, () => day(more));

describe('who was got up', () => {
  it('counts each person-day once: got up, not done, or not recorded', () => {
    const { all } = of([...many(6), ...many(3, { visits: 0 }), ...many(2, { visits: 0, recorded: false })]);
    expect(all).toEqual({
      key: 'all',
      days: 11,
      visited: 6,
      notDone: 3,
      notRecorded: 2,
      visits: 6,
      share: 6 / 11,
    });
  });
  it('ROUND-7 says no share of fewer than ten person-days, and keeps nothing recorded out of not done', () => {
    const { groups } = of([
      ...many(FEW_DAYS, { visits: 0, recorded: false }),
      ...many(FEW_DAYS - 1, { bed: 'b3' as BedId }),
    ]);
    const [b1, , b3] = groups.bed;
    expect(b1).toMatchObject({ days: 10, notDone: 0, notRecorded: 10, share: 0 });
    expect(b3).toMatchObject({ days: 9, visited: 9, share: null });
  });
  it('names every bed, bay and weekday, and puts closed beds together', () => {
    const { groups } = of([day({ bed: 'gone' as BedId, isolated: true })]);
    expect(groups.bed.map(({ key }) => key)).toEqual(['b1', 'b2', 'b3', CLOSED]);
    expect(groups.bay.map(({ key, days }) => [key, days])).toEqual([
      ['North', 0],
      ['South', 0],
      [CLOSED, 1],
    ]);
    expect(groups.isolation.map(({ days }) => days)).toEqual([1, 0]);
    // 26 October 2026 is a Monday (ISO 8601 calendar).
    expect(groups.weekday.map(({ days }) => days)).toEqual([1, 0, 0, 0, 0, 0, 0]);
  });
  it('keeps a comfort or clinician’s plan out of the counts, and says how many', () => {
    const { all, apart } = of([day(), day({ apart: true })]);
    expect([all.days, apart]).toEqual([1, 1]);
  });
});

describe('the days of a stay', () => {
  const daysOf = (...told: readonly Told[]) => {
    const record = recordOf(told);
    return personDaysOf(record, totalsOf(record, calendar, hours(60)));
  };
  const begun: Told = {
    type: 'stay-begun',
    at: 0,
    payload: { stay: 's', person: 'p', bed: 'b1', from: 'home' },
  };
  it('have the bed and the isolation that held at their end, and what was done on them', () => {
    const found = daysOf(
      begun,
      session(15),
      { type: 'isolation-set', at: 39, payload: { on: true } },
      { type: 'stay-moved', at: 40, payload: { from: 'b1', to: 'b2' } },
      notDone(41, 'said-no'),
    );
    expect(found.map(({ bed, isolated, recorded, visits }) => [bed, isolated, recorded, visits])).toEqual([
      ['b1', false, false, 0],
      ['b1', false, true, 1],
      ['b2', true, true, 0],
    ]);
  });
});
