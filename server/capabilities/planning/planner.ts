import type { DayProblem } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';

export const PLANNER = Symbol('Planner');

/** Makes a plan away from the thread that answers requests and beats. */
export interface Planner {
  /** Ends after `seconds` with the best so far. @throws when `signal` is aborted before that */
  plan(
    problem: DayProblem,
    how: { readonly seconds: number; readonly signal: AbortSignal },
  ): Promise<DayProposal>;
}
