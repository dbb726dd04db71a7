/** What stands beside the plan changes nothing of the plan, over random histories (design rule 1: help changes by no accident). */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { canonical, hours, recordOf } from './history.testkit.ts';
import { besideThePlan } from './random-entries.testkit.ts';
import { asRecorded, histories } from './random-history.testkit.ts';
import { anyWard } from './random-ward.testkit.ts';

const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const told = fc.oneof(histories, histories.map(asRecorded));
const who = fc.constantFrom('aide', 'nurse', 'therapist', 'charge-nurse', 'manager', 'administrator');

describe('infection steps, leaving, the line for the bedside and visits', { timeout: patience }, () => {
  it('BOARD-15 change no plan, trust, due time or sign, whoever says them and whenever; of the goal only how much of the day of leaving counts', () => {
    fc.assert(
      fc.property(told, besideThePlan, who, at, anyWard, (all, extra, role, t, { ward, calendar }) => {
        // Where the arrival itself was changed, the first fact of any kind stands in for it.
        fc.pre(!all.some((x) => (x.payload as { target?: string }).target === 'e00000'));
        const rest = (...more: readonly (typeof all)[number][]) => {
          const { view } = evaluateStay(recordOf([...all, ...more]), ward, calendar, t);
          const beside = { version: 0, isolation: false, leaving: null, therapistLine: null, visit: null };
          const { goal, met, because, ...done } = view.today;
          // On the day of leaving the goal counts in part, by when that is expected (leaving-day.test.ts).
          const leaves = extra.type === 'leaving-expected';
          const asked = leaves ? goal?.activity : { goal, met, because };
          // What clears the debt says how many more times meet that goal.
          const debt = leaves && view.debt ? { ...view.debt, clears: null } : view.debt;
          return canonical({ ...view, ...beside, debt, today: { ...done, asked } });
        };
        expect(rest({ ...extra, role, id: 'added' } as (typeof all)[number]) === rest()).toBe(true);
      }),
      runs(150),
    );
  });
});
