/** A thread for each forecast, one at a time: the server goes on answering and beating meanwhile. */
import { Worker } from 'node:worker_threads';
import type { Forecast, ForecastInput } from '@footboard/shared/capabilities/forecast/rules/types';
import type { Simulate } from './forecasts.ts';

/** Run from its sources (in tests) there is only the built file for the thread. */
const WORKER = import.meta.url.endsWith('.ts')
  ? new URL('../../dist/capabilities/forecast/worker.js', import.meta.url)
  : new URL('./worker.js', import.meta.url);

export interface Simulator {
  readonly simulate: Simulate;
  /** Ends what runs and what waits: they fail. */
  close(): Promise<void>;
}

export function openSimulator(): Simulator {
  let running: Worker | null = null;
  let closed = false;
  let before: Promise<unknown> = Promise.resolve();
  const one = (input: ForecastInput): Promise<Forecast> =>
    new Promise((resolve, reject) => {
      if (closed) {
        reject(new Error('the server is closing'));
        return;
      }
      // Without the arguments of this process: tests run it with another way to find files.
      const worker = new Worker(WORKER, { workerData: input, execArgv: [] });
      running = worker;
      worker.once('message', resolve);
      worker.once('error', reject);
      // After an answer this changes nothing.
      worker.once('exit', () => {
        running = null;
        reject(new Error('the forecast was ended before it was made'));
      });
    });
  return {
    simulate(input) {
      const turn = before.then(() => one(input));
      before = turn.catch(() => undefined);
      return turn;
    },
    async close() {
      closed = true;
      await running?.terminate();
      await before;
    },
  };
}
