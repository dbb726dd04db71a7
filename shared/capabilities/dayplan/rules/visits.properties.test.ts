/** Who goes next says nothing of how to move anybody: visits change no help, no trust and no due time. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { canonical, hours, recordOf, type Told } from '../../board/rules/history.testkit.ts';
import { asRecorded, histories } from '../../board/rules/random-history.testkit.ts';
import { anyWard } from '../../board/rules/random-ward.testkit.ts';

const quarter = fc.integer({ min: 0, max: 4 * 80 }).map((q) => q / 4);
const visit = fc.constantFrom('one', 'two');
const staff = fc.constantFrom('staff-aide', 'staff-nurse', 'bea');
const role = fc.constantFrom<Told['role'] & string>('aide', 'nurse', 'charge-nurse');
const anyVisit: fc.Arbitrary<Told> = fc.oneof(
  fc.tuple(quarter, visit, staff, role, fc.integer({ min: 1, max: 8 })).map(([at, id, by, who, long]) => ({
    type: 'visit-taken',
    at,
    role: who,
    payload: { visit: id, by, from: toIso(hours(at)), until: toIso(hours(at + long / 4)) },
  })),
  fc.tuple(quarter, visit, staff).map(([at, id, to]): Told => ({
    type: 'visit-handed-over',
    at,
    role: 'aide',
    payload: { visit: id, to },
  })),
  fc.tuple(quarter, visit).map(([at, id]): Told => ({
    type: 'visit-given-back',
    at,
    role: 'aide',
    payload: { visit: id, reason: 'not-needed' },
  })),
);
const anyTime = fc.integer({ min: 0, max: 4 * 100 }).map((q) => q / 4 + 1 / 60);
/** Hours after the first of the visits was told, where one may stand; null for any time. */
const soonAfter = fc.option(
  fc.integer({ min: 0, max: 8 }).map((n) => n / 16 + 1 / 60),
  { freq: 2 },
);

describe('visits among the facts of a stay', { timeout: patience }, () => {
  it('leave everything but the visit itself as it is, the version aside', () => {
    let held = 0;
    fc.assert(
      fc.property(
        histories,
        fc.array(anyVisit, { minLength: 1, maxLength: 6 }),
        anyTime,
        soonAfter,
        anyWard,
        fc.boolean(),
        (all, visits, any, soon, { ward, calendar }, late) => {
          const t = hours(soon === null ? any : visits[0]!.at! + soon);
          const more = visits.map((one, i): Told => ({ ...one, id: `visit-${i}` }));
          // Told in between by when they occurred; `late`: each entry as a log records one told after another.
          const told = late
            ? asRecorded([...all, ...more])
            : [...all, ...more].toSorted((a, b) => (a.at ?? 0) - (b.at ?? 0));
          const without = told.filter(({ id }) => !id!.startsWith('visit-'));
          // No arrival is ever corrected or withdrawn (placement-stands): without one there is no stay to visit.
          fc.pre(all.every(({ payload }) => (payload as { target?: string }).target !== all[0]!.id));
          const rest = (of: readonly Told[]) => {
            const { view } = evaluateStay(recordOf(of), ward, calendar, t);
            if (view.visit) held++;
            return canonical({ ...view, visit: null, version: 0 });
          };
          expect(rest(told)).toBe(rest(without));
        },
      ),
      runs(150),
    );
    // Had no visit stood at any of the instants, nothing would have been shown.
    expect(held).toBeGreaterThan(0);
  });
});
