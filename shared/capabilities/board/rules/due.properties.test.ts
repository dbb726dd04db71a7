/** Due times over random histories and rules of a ward: they hold as long as said, and sleep changes nothing else. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE } from '../../../kernel/times.ts';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import type { StayView } from '../view.ts';
import { rulesWith } from './due.testkit.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { canonical, hours, recordOf, ward, type Told } from './history.testkit.ts';
import { histories } from './random-history.testkit.ts';

const rules = fc.record({
  eachShift: fc.boolean(),
  intoShiftHours: fc.constantFrom(0, 2, 4),
  graceMinutes: fc.constantFrom(0, 45),
  unsettledHours: fc.constantFrom(6, 12),
  settledAfterHours: fc.constantFrom(6, 48),
  afterReturnHours: fc.constantFrom(0, 1, 3),
  asleepHours: fc.constantFrom(1, 4),
  roster: fc.constantFrom(
    ['07:00', '19:00'],
    ['07:00', '15:00', '23:00'],
    ['02:30', '07:00', '11:00', '15:30', '21:30'],
  ),
});
type Values = typeof rules extends fc.Arbitrary<infer V> ? V : never;
const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));

const lookWith = ({ roster, ...values }: Values) => {
  const here = { ...ward, rules: rulesWith(values, roster) };
  const calendar = wardCalendar(here);
  return (told: readonly Told[], t: number) => evaluateStay(recordOf(told), here, calendar, t);
};

describe('due times under any rules', { timeout: patience }, () => {
  it('BOARD-2 a view stays the same until the next change that it names', () => {
    fc.assert(
      fc.property(
        rules,
        histories,
        at,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (given, told, t, part) => {
          const look = lookWith(given);
          const { view, nextChange } = look(told, t);
          const until = nextChange ?? t + 1_000 * HOUR;
          const later = Math.min(until - 1, t + Math.floor((until - t) * part));
          expect(canonical(look(told, later).view)).toBe(canonical(view));
          expect(canonical(look(told, until - 1).view)).toBe(canonical(view));
        },
      ),
      runs(60),
    );
  });

  it('a due time lies ahead while not due, has come when due, and grace lies between due and overdue', () => {
    fc.assert(
      fc.property(rules, histories, at, (given, told, t) => {
        const { due, away } = lookWith(given)(told, t).view;
        const overdueAt = due.at === null ? null : due.at + given.graceMinutes * MINUTE;
        const means: Record<typeof due.state, boolean> = {
          'not-due': due.at !== null && t < due.at,
          due: due.at !== null && due.at <= t && t < overdueAt! && away === null,
          overdue: due.at !== null && overdueAt! <= t && away === null,
          'at-next-move': due.at === null,
          none: due.at === null,
        };
        expect(means[due.state], `${due.state} ${due.at} at ${t}`).toBe(true);
        expect(due.because.length).toBeGreaterThan(0);
      }),
      runs(60),
    );
  });

  it('whoever was seen asleep has the same trust, plan and holds; only a check that waits for the move differs', () => {
    // With its arrival withdrawn a stay begins with its first entry, whatever that is.
    const without = ({ due: _due, began: _began, ...rest }: StayView) => canonical({ ...rest, version: 0 });
    fc.assert(
      fc.property(rules, histories, at, fc.integer({ min: 0, max: 40 }), (given, told, t, q) => {
        // An arrival is never withdrawn (refusal placement-stands): without one there is nothing to count from.
        fc.pre(!told.some((x) => (x.payload as { target?: string }).target === told[0]!.id));
        const look = lookWith(given);
        const awake = told.filter((x) => x.type !== 'asleep-seen');
        const seen: Told = { type: 'asleep-seen', at: (t - hours(0)) / HOUR - q / 4, payload: {}, id: 'zz' };
        fc.pre(seen.at! >= 0);
        const before = look(awake, t).view;
        fc.pre(before.began <= hours(seen.at!));
        const after = look([...awake, seen], t).view;
        expect(without(after)).toBe(without(before));
        const same = canonical(after.due) === canonical(before.due);
        const putOff = ['due', 'overdue'].includes(before.due.state) && before.trust.state === 're-check';
        expect(same || putOff).toBe(true);
        expect(after.due.state === 'not-due').toBe(before.due.state === 'not-due');
      }),
      runs(60),
    );
  });

  it('nothing but time off the ward, sleep and the next move makes a check due later than its validity', () => {
    fc.assert(
      fc.property(rules, histories, at, (given, told, t) => {
        const still = told.filter((x) => !['went-off-ward', 'came-back', 'asleep-seen'].includes(x.type));
        const { due, trust } = lookWith(given)(still, t).view;
        const ranOut = trust.because.some((b) => b.rule === 'trust/ran-out');
        fc.pre(ranOut);
        const waits = trust.openTriggers.some((o) => /surgery|dialysis|sedation|block/.test(o.kind));
        expect(waits ? ['due', 'overdue', 'at-next-move'] : ['due', 'overdue']).toContain(due.state);
      }),
      runs(30),
    );
  });
});
