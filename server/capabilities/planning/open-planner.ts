/** The planner in the pool's threads: bounded time, and a greedy plan when the solver's thread fails. */
import type { DayProblem } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { gapOf } from '@footboard/shared/capabilities/planning/rules/propose';
import { builtFile, PoolBusy, type WorkerPool } from '../../platform/worker-pool.ts';
import type { Planner } from './planner.ts';
import { PRODUCT_LIMITS } from './solve.ts';

/** Longer than its time a search never takes but by a fault: then its thread is ended. */
const GRACE_MS = 4_000;
/** The search for the bound is over by so much before the other. */
const EARLIER_MS = 300;

/** Looked for when it is needed: a server without it serves everything else. */
const built = (): string => builtFile(new URL('./solve.worker.ts', import.meta.url));

export function openPlanner(pool: WorkerPool): Planner {
  return {
    async plan(problem: DayProblem, { seconds, signal }): Promise<DayProposal> {
      signal.throwIfAborted();
      const file = built();
      const over = AbortSignal.any([signal, AbortSignal.timeout(seconds * 1_000 + GRACE_MS)]);
      const limits = { ...PRODUCT_LIMITS, seconds };
      const until = Date.now() + seconds * 1_000 - EARLIER_MS;
      // Beside the search, where there is a thread for it: what it comes to is never waited for.
      const enough = new AbortController();
      let whole: DayProposal | null = null;
      if (pool.threads > 1) {
        const ends = AbortSignal.any([over, enough.signal]);
        pool
          .run<DayProposal | null>(file, 'whole', { problem, limits, until }, ends)
          .then((found) => (whole = found))
          .catch(() => null);
      }
      try {
        const found = await pool.run<DayProposal>(file, 'solve', { problem, limits }, over);
        return better(found, whole);
      } catch (error) {
        signal.throwIfAborted();
        if (error instanceof PoolBusy) throw error;
        const why: DayProposal['fallback'] = over.aborted ? 'out-of-time' : 'solver-failed';
        return await pool.run<DayProposal>(file, 'greedy', { problem, why }, signal);
      } finally {
        enough.abort();
      }
    },
  };
}

/** The plan that is worth more, with the tighter of the two bounds. */
function better(found: DayProposal, whole: DayProposal | null): DayProposal {
  if (!whole) return found;
  const best = whole.objective.value > found.objective.value ? whole : found;
  const bound = Math.min(found.bound ?? Infinity, whole.bound ?? Infinity);
  if (best.how !== 'solver' || bound === Infinity) return best;
  const nodes = (found.nodes ?? 0) + (whole.nodes ?? 0);
  return { ...best, bound, gap: gapOf(best.objective.value, bound), nodes };
}
