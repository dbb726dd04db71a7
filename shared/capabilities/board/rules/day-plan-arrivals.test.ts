/** Whom the accepted plan expects, in order beside the beds; and a row for which nothing is planned. */
import { describe, expect, it } from 'vitest';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import type { AcceptedPlacement, AcceptedPlan } from '../../planning/rules/accepted.ts';
import type { PlannedVisitId } from '../../planning/problem.ts';
import { dayPlanOf, withPlanned } from './day-plan.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, hours, stayOf, ward } from './history.testkit.ts';

/** A first check half an hour long of somebody who is expected. */
const arrival = (who: string, start: number): AcceptedPlacement => ({
  visit: `${who}-a` as PlannedVisitId,
  stay: who as StayId,
  kind: 'check',
  start: hours(start),
  minutes: 30,
  crew: ['staff-aide' as StaffId],
  items: [],
});
const planOf = (...placements: readonly AcceptedPlacement[]): AcceptedPlan => ({
  day: '2026-10-24',
  at: hours(1),
  by: 'staff-charge-nurse' as StaffId,
  hash: 'a'.repeat(64),
  weightsVersion: 1,
  how: 'solver',
  gap: null,
  edited: false,
  placements,
  unplaced: null,
});
const notExpected: ReadonlyMap<StayId, StayId | null> = new Map();
const silent = () => undefined;

describe('people who are expected', () => {
  const arrivals = (plan: AcceptedPlan, t: number, note: (at: number) => void = silent) =>
    dayPlanOf(plan, [], { notExpected }, hours(t), note)?.arrivals ?? null;
  const idsAt = (plan: AcceptedPlan, t: number) => arrivals(plan, t)?.map(({ expected }) => expected) ?? null;
  const [early, late] = [arrival('exp-c', 3), arrival('exp-a', 5)];
  const [one, other] = [arrival('exp-b', 4), arrival('exp-d', 4)];

  it.each([
    ['as accepted', [early, one, other, late]],
    ['the other way round', [late, other, one, early]],
    ['mixed', [other, late, early, one]],
    ['mixed another way', [one, early, late, other]],
  ])(
    'stand by the time they are to be checked, of one time by their visit, however accepted: %s',
    (_what, all) => {
      expect(idsAt(planOf(...all), 2)).toEqual(['exp-c', 'exp-b', 'exp-d', 'exp-a']);
    },
  );
  it('stand with their time and who goes, until that time is over, which is told', () => {
    const noted: number[] = [];
    expect(arrivals(planOf(early, one), 3.4, (at) => noted.push(at))).toEqual([
      { visit: 'exp-c-a', expected: 'exp-c', from: hours(3), until: hours(3.5), crew: ['staff-aide'] },
      { visit: 'exp-b-a', expected: 'exp-b', from: hours(4), until: hours(4.5), crew: ['staff-aide'] },
    ]);
    expect(noted).toEqual([hours(3.5), hours(4.5)]);
    expect(idsAt(planOf(early, one), 3.5)).toEqual(['exp-b']);
    expect(idsAt(planOf(early, one), 4.5)).toBeNull();
  });
});

describe('a row', () => {
  const { view } = evaluateStay(stayOf(), ward, calendar, hours(2));
  const rowWith = (plan: AcceptedPlan) =>
    withPlanned(view, [], { t: hours(2), ward, items: new Map(), plan, calendar }, silent).view;

  it('for which nothing is planned is the row it was', () => {
    expect(rowWith(planOf())).toBe(view);
    expect(rowWith(planOf(arrival('exp-a', 3)))).toBe(view);
  });
  it('for which something is planned has it, and all else as it was', () => {
    const visit = { ...arrival('stay-1', 3), visit: 'stay-1-c' as PlannedVisitId };
    const { planned, ...rest } = rowWith(planOf(visit));
    expect(planned).toMatchObject([{ visit: 'stay-1-c', from: hours(3), until: hours(3.5) }]);
    expect(rest).toEqual(view);
  });
});
