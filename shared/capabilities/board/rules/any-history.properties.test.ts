/** Design rules 2, 7 and 10 over every history that the schemas admit, on wards with rules of their own. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs, whole } from '../../../kernel/runs.testkit.ts';
import { stayView } from '../view.ts';
import { anyHistory, STAY_EVENTS } from './any-history.testkit.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { canonical, hours, recordOf } from './history.testkit.ts';
import { asRecorded } from './random-history.testkit.ts';
import { anyWard } from './random-ward.testkit.ts';

const told = fc.oneof(anyHistory, anyHistory.map(asRecorded));
const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));

describe('any history that the schemas admit', { timeout: patience }, () => {
  it("BOARD-1 throws nowhere and gives a view of the wire's shape, whatever the ward turned on", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(told, at, anyWard, (all, t, { ward, calendar }) => {
        for (const one of all) seen.add(one.type);
        const { view, nextChange } = evaluateStay(recordOf(all), ward, calendar, t);
        expect(stayView.safeParse(view).error).toBeUndefined();
        expect(nextChange ?? Infinity).toBeGreaterThan(t);
      }),
      runs(100),
    );
    const missed = STAY_EVENTS.map((e) => e.name).filter((name) => !seen.has(name));
    expect(whole ? missed : []).toEqual([]);
  });

  it('BOARD-2 stays the same, byte for byte, until the next change it names', () => {
    fc.assert(
      fc.property(told, at, anyWard, (all, t, { ward, calendar }) => {
        const record = recordOf(all);
        const { view, nextChange } = evaluateStay(record, ward, calendar, t);
        const until = nextChange ?? t + 1_000 * 3_600_000;
        expect(canonical(evaluateStay(record, ward, calendar, until - 1).view)).toBe(canonical(view));
      }),
      runs(60),
    );
  });

  it('BOARD-3 does not depend on the order in which the entries arrived', () => {
    const shuffled = told.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray([...all], { minLength: all.length })),
    );
    fc.assert(
      fc.property(shuffled, at, anyWard, ([all, other], t, { ward, calendar }) => {
        const one = evaluateStay(recordOf(all), ward, calendar, t).view;
        const two = evaluateStay(recordOf(other), ward, calendar, t).view;
        expect(canonical(two)).toBe(canonical(one));
      }),
      runs(60),
    );
  });
});
