/** Taking out and putting in again, judged by the checker and, for small days, by everything tried. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { checkPlan, keepable } from './check-plan.ts';
import { bestOfAll } from './exhaustive.testkit.ts';
import { feasibleVisits } from './feasible.ts';
import { greedyPlan } from './greedy.ts';
import { at, problem, visit } from './planning.testkit.ts';
import { anyProblem } from './random-problem.testkit.ts';
import { shaken } from './shaken.ts';
import { worthOf } from './worth.ts';

const tries = (many: number) => {
  let done = 0;
  return () => done++ / many;
};

describe('a plan that is shaken', { timeout: patience }, () => {
  it('DAYPLAN-3 keeps every rule, what is pinned stays, and it is never worth less', () => {
    let better = 0;
    fc.assert(
      fc.property(anyProblem, (day) => {
        const feasible = feasibleVisits(day);
        const greedy = greedyPlan(day, feasible);
        const plan = shaken(day, feasible, greedy, 3, tries(60));
        expect(checkPlan(day, plan)).toEqual([]);
        for (const { visit: id, start, crew } of keepable(day)) {
          expect(plan.find((one) => one.visit === id)).toMatchObject({ start, crew });
        }
        const [was, is] = [greedy, plan].map((one) => worthOf(day, one).value) as [number, number];
        expect(is).toBeGreaterThanOrEqual(was - 1e-6);
        expect(is).toBeLessThanOrEqual(bestOfAll(day).value + 1e-6);
        if (is > was + 1e-6) better += 1;
      }),
      runs(120, 'cases'),
    );
    // Where the greedy plan was the best already nothing is shown.
    expect(better).toBeGreaterThan(0);
  });

  it('comes out the same from the same seed, and is what it began from when there is no time', () => {
    const day = problem({ visits: ['a', 'b', 'c', 'd'].map((name) => visit(name)) });
    const feasible = feasibleVisits(day);
    const from = greedyPlan(day, feasible);
    const once = () => shaken(day, feasible, from, 9, tries(200));
    expect(once()).toEqual(once());
    expect(shaken(day, feasible, [at('a', 5)], 9, () => 1)).toEqual([at('a', 5)]);
  });
});
