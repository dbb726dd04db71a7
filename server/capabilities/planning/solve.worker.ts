/** What the pool runs in a thread. */
import type { DayProblem } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { greedyProposal } from '@footboard/shared/capabilities/planning/rules/propose';
import { solveDay, solveWhole, type Limits } from './solve.ts';

export const solve = ({ problem, limits }: { problem: DayProblem; limits: Limits }): Promise<DayProposal> =>
  solveDay(problem, limits);

export const whole = ({
  problem,
  limits,
  until,
}: {
  problem: DayProblem;
  limits: Limits;
  /** By the clock of this machine (epoch ms): a task that waited in line begins late, and ends in time. */
  until: number;
}): Promise<DayProposal | null> => solveWhole(problem, { ...limits, seconds: (until - Date.now()) / 1_000 });

export const greedy = ({
  problem,
  why,
}: {
  problem: DayProblem;
  why: DayProposal['fallback'];
}): DayProposal => greedyProposal(problem, why);
