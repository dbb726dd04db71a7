/**
 * One kept pool of threads for what takes longer than a beat: the day plan, and whatever else is worked
 * out at length. The thread that answers requests and beats never computes; a task can be stopped.
 */
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';

export interface WorkerPool {
  /**
   * Runs the export `task` of the module at `file` (see `builtFile`) in a thread.
   * @throws an AbortError when `signal` is aborted; what the task threw; `PoolBusy` when too many wait
   */
  run<T>(file: string, task: string, input: unknown, signal?: AbortSignal): Promise<T>;
  /** Ends what runs and what waits: they fail. */
  close(): Promise<void>;
  /** How many tasks run at once at most. */
  readonly threads: number;
}

export class PoolBusy extends Error {
  override readonly name = 'PoolBusy';
  constructor() {
    super('too much is being worked out at once: try again in a moment');
  }
}

/** Tasks that may wait; each is somebody looking at a screen. */
const MOST_WAITING = 16;

export function openWorkerPool(): WorkerPool {
  // The threads stand behind requests and beats in line where the system can do that; two are enough for a plan.
  const threads = Math.min(2, availableParallelism());
  const pool = new Piscina({
    minThreads: 0,
    maxThreads: threads,
    maxQueue: MOST_WAITING,
    // A thread that has just compiled the solver is worth keeping for the next plan.
    idleTimeout: 10 * 60_000,
    concurrentTasksPerWorker: 1,
    niceIncrement: 4,
    // Without the arguments of this process: tests run it with another way to find files.
    execArgv: [],
  });
  return {
    async run<T>(file: string, task: string, input: unknown, signal?: AbortSignal): Promise<T> {
      try {
        return (await pool.run(input, { filename: file, name: task, ...(signal ? { signal } : {}) })) as T;
      } catch (error) {
        throw error instanceof Error && error.message === 'Task queue is at limit' ? new PoolBusy() : error;
      }
    },
    threads,
    async close() {
      await pool.destroy();
    },
  };
}

/**
 * The built file of a worker named by its source, as a thread can load it: run from the sources (in
 * tests) there is only the one in `dist`. @throws when it was not built
 */
export function builtFile(source: URL): string {
  const path = fileURLToPath(source);
  const built = path.includes('/dist/') ? path : path.replace(/\/server\/(?!.*\/server\/)/, '/server/dist/');
  const file = built.replace(/\.ts$/, '.js');
  if (!existsSync(file)) throw new Error(`${file} is not there: run "npm run build" first`);
  return file;
}
