/** The planner in the pool's threads: bounded time, and a greedy plan when the solver's thread fails. */
import type { DayProblem } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { builtFile, PoolBusy, type WorkerPool } from '../../platform/worker-pool.ts';
import type { Planner } from './planner.ts';
import { PRODUCT_LIMITS } from './solve.ts';

/** Longer than its time a search never takes but by a fault: then its thread is ended. */
const GRACE_MS = 4_000;

/** Looked for when it is needed: a server without it serves everything else. */
const built = (): string => builtFile(new URL('./solve.worker.ts', import.meta.url));

export function openPlanner(pool: WorkerPool): Planner {
  return {
    async plan(problem: DayProblem, { seconds, signal }): Promise<DayProposal> {
      signal.throwIfAborted();
      const file = built();
      const over = AbortSignal.any([signal, AbortSignal.timeout(seconds * 1_000 + GRACE_MS)]);
      const limits = { ...PRODUCT_LIMITS, seconds };
      try {
        return await pool.run<DayProposal>(file, 'solve', { problem, limits }, over);
      } catch (error) {
        signal.throwIfAborted();
        if (error instanceof PoolBusy) throw error;
        const why: DayProposal['fallback'] = over.aborted ? 'out-of-time' : 'solver-failed';
        return await pool.run<DayProposal>(file, 'greedy', { problem, why }, signal);
      }
    },
  };
}
