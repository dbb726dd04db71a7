/** The simulator in the pool's threads: the server goes on answering and beating meanwhile. */
import type { Forecast } from '@footboard/shared/capabilities/forecast/rules/types';
import { builtFile, type WorkerPool } from '../../platform/worker-pool.ts';
import type { Simulate } from './forecasts.ts';

export function openSimulator(pool: WorkerPool): Simulate {
  const file = builtFile(new URL('./simulate.worker.ts', import.meta.url));
  return (input) => pool.run<Forecast>(file, 'simulate', input);
}
