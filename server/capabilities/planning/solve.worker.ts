/** What the pool runs in a thread. */
import type { DayProblem } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { greedyProposal } from '@footboard/shared/capabilities/planning/rules/propose';
import { solveDay, type Limits } from './solve.ts';

export const solve = ({ problem, limits }: { problem: DayProblem; limits: Limits }): Promise<DayProposal> =>
  solveDay(problem, limits);

export const greedy = ({
  problem,
  why,
}: {
  problem: DayProblem;
  why: DayProposal['fallback'];
}): DayProposal => greedyProposal(problem, why);
