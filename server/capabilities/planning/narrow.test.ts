/** A bound is a promise: whatever the prices, no plan is worth more. Judged by everything tried. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '@footboard/shared/kernel/runs.testkit';
import { bestOfAll } from '@footboard/shared/capabilities/planning/rules/exhaustive.testkit';
import { greedyPlan } from '@footboard/shared/capabilities/planning/rules/greedy';
import { modelOf } from '@footboard/shared/capabilities/planning/rules/model';
import { asSolution, readSolution } from '@footboard/shared/capabilities/planning/rules/read-solution';
import { anyProblem } from '@footboard/shared/capabilities/planning/rules/random-problem.testkit';
import { worthOf } from '@footboard/shared/capabilities/planning/rules/worth';
import { narrowed, partOf, priced, safeBound, startsByLoss } from './narrow.ts';

const anyPrices = fc.array(fc.double({ min: -30, max: 30, noNaN: true }), { minLength: 50, maxLength: 50 });

describe('what the relaxation says', { timeout: patience }, () => {
  it('DAYPLAN-2 bounds every plan, at any prices', () => {
    fc.assert(
      fc.property(anyProblem, anyPrices, (day, prices) => {
        const model = modelOf(day);
        const duals = priced(
          model,
          Float64Array.from(model.rows, (_, r) => prices[r % prices.length]!),
        );
        expect(safeBound(model, duals)).toBeGreaterThanOrEqual(bestOfAll(day).value - 1e-6);
      }),
      runs(150, 'cases'),
    );
  });

  it('keeps the plan to begin from among the columns it narrows to', () => {
    fc.assert(
      fc.property(anyProblem, anyPrices, fc.integer({ min: 0, max: 40 }), (day, prices, most) => {
        const model = modelOf(day);
        const duals = priced(
          model,
          Float64Array.from(model.rows, (_, r) => prices[r % prices.length]!),
        );
        const begin = asSolution(model, greedyPlan(day, model.feasible));
        const { part, of } = partOf(model, narrowed(model, startsByLoss(model, duals), begin, most));
        const values = of.map((c) => begin[c]!);
        expect(readSolution(part, values)).toEqual(readSolution(model, begin));
        for (const { low, high, columns, values: by } of part.rows) {
          const sum = columns.reduce((is, c, i) => is + values[c]! * by[i]!, 0);
          expect(sum).toBeGreaterThanOrEqual(low - 1e-9);
          expect(sum).toBeLessThanOrEqual(high + 1e-9);
        }
      }),
      runs(150, 'cases'),
    );
  });

  it('counts in its columns what the plan is worth', () => {
    fc.assert(
      fc.property(anyProblem, (day) => {
        const model = modelOf(day);
        const plan = greedyPlan(day, model.feasible);
        const worth = asSolution(model, plan).reduce(
          (sum, is, c) => sum + is * model.worth[c]!,
          model.offset,
        );
        expect(worth).toBeCloseTo(worthOf(day, plan).value, 6);
      }),
      runs(150, 'cases'),
    );
  });
});
