/** Works out one forecast in a thread of its own. */
import { parentPort, workerData } from 'node:worker_threads';
import { forecastOf } from '@footboard/shared/capabilities/forecast/rules/forecast';
import type { ForecastInput } from '@footboard/shared/capabilities/forecast/rules/forecast';

parentPort!.postMessage(forecastOf(workerData as ForecastInput));
