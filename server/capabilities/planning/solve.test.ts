/**
 * Plans of the solver against two judges that share no code with it: the checker, and for small
 * problems everything tried. Bounded by nodes and seed, never by time.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '@footboard/shared/kernel/runs.testkit';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { bestOfAll } from '@footboard/shared/capabilities/planning/rules/exhaustive.testkit';
import { greedyProposal } from '@footboard/shared/capabilities/planning/rules/propose';
import { at, kept, problem, visit } from '@footboard/shared/capabilities/planning/rules/planning.testkit';
import { anyProblem } from '@footboard/shared/capabilities/planning/rules/random-problem.testkit';
import { dayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { solveDay, type Limits } from './solve.ts';

const exact: Limits = { seconds: null, nodes: 5_000, seed: 7, gap: 0 };

describe('a day planned by the solver', { timeout: patience }, () => {
  it('DAYPLAN-1 keeps every rule, is worth what the best of all plans is worth, and says so itself', async () => {
    let placed = 0;
    let left = 0;
    await fc.assert(
      fc.asyncProperty(anyProblem, async (day) => {
        const proposal = await solveDay(day, exact);
        expect(dayProposal.parse(proposal)).toEqual(proposal);
        expect(proposal.how).toBe('solver');
        expect(checkPlan(day, proposal.placed)).toEqual([]);
        expect(proposal.objective.value).toBeCloseTo(bestOfAll(day).value, 5);
        expect(proposal.bound).toBeGreaterThanOrEqual(proposal.objective.value - 1e-5);
        const named = [...proposal.placed, ...proposal.unplaced].map((one) => one.visit).toSorted();
        expect(named).toEqual(day.visits.map((one) => one.visit).toSorted());
        placed += proposal.placed.length;
        left += proposal.unplaced.length;
      }),
      runs(120, 'cases'),
    );
    // Problems in which all or nothing fits would prove little.
    expect(placed).toBeGreaterThan(0);
    expect(left).toBeGreaterThan(0);
  });

  it('DAYPLAN-3 without a solver also keeps every rule, is marked, and is never worth more', async () => {
    await fc.assert(
      fc.asyncProperty(anyProblem, async (day) => {
        const greedy = greedyProposal(day, 'solver-failed');
        expect(checkPlan(day, greedy.placed)).toEqual([]);
        expect(greedy).toMatchObject({ how: 'greedy', fallback: 'solver-failed', bound: null, gap: null });
        expect(greedy.objective.value).toBeLessThanOrEqual(bestOfAll(day).value + 1e-6);
      }),
      runs(120, 'cases'),
    );
  });

  it('comes out the same each time from the same seed', async () => {
    await fc.assert(
      fc.asyncProperty(anyProblem, async (day) => {
        expect(await solveDay(day, exact)).toEqual(await solveDay(day, exact));
      }),
      runs(15, 'cases'),
    );
  });

  it('stays as it was after a change, and shows the few moves', async () => {
    const day = problem({
      visits: ['a', 'b', 'c', 'd'].map((name) => visit(name)),
      previous: [kept(at('a', 3)), kept(at('b', 1, ['ben'])), kept(at('c', 6)), kept(at('d', 6, ['ben']))],
      weights: { ...problem({}).weights, moved: 4, otherCrew: 2 },
    });
    expect((await solveDay(day, exact)).moves).toEqual([]);
    const called = {
      ...day,
      staff: day.staff.map((one) => (one.staff === 'ben' ? { ...one, taken: [{ from: 5, until: 8 }] } : one)),
    };
    const { moves, placed } = await solveDay(called, exact);
    expect(placed).toHaveLength(4);
    expect(moves.map(({ visit: name }) => name)).toHaveLength(1);
  });

  it('says greedy where the time is over before the solver has begun', async () => {
    const beds = Array.from({ length: 40 }, (_, i) => visit(`v${i}`, { people: 2 }));
    const late = await solveDay(problem({ visits: beds }), { ...exact, seconds: 0 });
    expect(late).toMatchObject({ how: 'greedy', gap: null });
    expect(checkPlan(problem({ visits: beds }), late.placed)).toEqual([]);
  });
});
