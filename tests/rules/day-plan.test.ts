/**
 * Whole invented wards through the solver's long way (relaxation, few stays, few starts): what it hands
 * on keeps every rule by the checker's judgement. Bounded by nodes and seed.
 */
import { describe, expect, it } from 'vitest';
import { plannedWard } from '../../demo/planned-ward.ts';
import { checkPlan } from '../../shared/capabilities/planning/rules/check-plan.ts';
import { greedyProposal } from '../../shared/capabilities/planning/rules/propose.ts';
import { solveDay } from '../../server/capabilities/planning/solve.ts';

describe('an invented ward', () => {
  it.each([
    [1, 12],
    [2, 18],
  ])('number %i of %i beds is planned by every rule, no worse than without a solver', async (seed, beds) => {
    const ward = plannedWard(seed, beds);
    const proposal = await solveDay(ward, { seconds: null, nodes: 1, seed: 1, gap: 0.05 });
    expect(proposal.how).toBe('solver');
    expect(checkPlan(ward, proposal.placed)).toEqual([]);
    expect(proposal.objective.value).toBeGreaterThanOrEqual(greedyProposal(ward, null).objective.value);
    expect(proposal.bound).toBeGreaterThanOrEqual(proposal.objective.value);
    expect(proposal.placed.length + proposal.unplaced.length).toBe(ward.visits.length);
  });

  it('of 36 beds is planned without a solver by every rule too', () => {
    const ward = plannedWard(3, 36);
    expect(checkPlan(ward, greedyProposal(ward, 'solver-failed').placed)).toEqual([]);
  });
});
