/** Works out one forecast in a thread of its own. */
import { parentPort, workerData } from 'node:worker_threads';
import { forecastOf } from '@footboard/shared/capabilities/forecast/rules/forecast';
import type { ForecastInput } from '@footboard/shared/capabilities/forecast/rules/types';

// oxlint-disable-next-line unicorn/require-post-message-target-origin -- a port between threads has no origin
parentPort!.postMessage(forecastOf(workerData as ForecastInput));
