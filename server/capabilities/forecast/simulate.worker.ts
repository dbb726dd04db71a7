/** What the pool runs in a thread. */
import { forecastOf } from '@footboard/shared/capabilities/forecast/rules/forecast';
import type { Forecast, ForecastInput } from '@footboard/shared/capabilities/forecast/rules/types';

export const simulate = (input: ForecastInput): Forecast => forecastOf(input);
