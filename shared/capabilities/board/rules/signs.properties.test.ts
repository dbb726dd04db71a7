/** Every sign of decline and of readiness, over random stays: what it names exists, and no alarm is spoken. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, hours, recordOf, ward } from './history.testkit.ts';
import { histories } from './random-history.testkit.ts';

describe('every sign, over random histories', { timeout: patience }, () => {
  it('SIGN-5 names facts that exist, and never speaks like an alarm', () => {
    const at = fc.integer({ min: 0, max: 480 }).map((q) => hours(q / 4));
    fc.assert(
      fc.property(histories, at, (told, t) => {
        const record = recordOf(told);
        const known = new Set<string>(record.events.map((e) => e.id));
        for (const one of evaluateStay(record, ward, calendar, t).view.signs) {
          for (const { facts } of one.because) {
            expect(facts.length).toBeGreaterThan(0);
            expect(facts.filter((f) => !known.has(f))).toEqual([]);
          }
          expect(one.words).not.toMatch(/alarm|alert|urgent|danger|critical|warning|!/i);
        }
      }),
      runs(150),
    );
  });
});
