/** Answers kept between two looks: the same as worked out anew. What one answer promises is in kept-answers.test.ts. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { evaluateFacts } from './evaluate-stay.ts';
import { calendar, canonical, hours, recordOf, ward } from './history.testkit.ts';
import { histories } from './random-history.testkit.ts';

const instant = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));

describe('a stay looked at again and again', { timeout: patience }, () => {
  it('reads as one looked at for the first time, at whatever instants and in whatever order', () => {
    fc.assert(
      fc.property(histories, fc.array(instant, { minLength: 2, maxLength: 8 }), (all, instants) => {
        const record = recordOf(all);
        const effective = effectiveFacts(record);
        for (const t of instants) {
          const again = evaluateFacts(record, effective, ward, calendar, t);
          const first = evaluateFacts(record, effectiveFacts(record), ward, calendar, t);
          expect(again.nextChange).toBe(first.nextChange);
          expect(canonical(again.view)).toBe(canonical(first.view));
        }
      }),
      runs(100),
    );
  });
});
