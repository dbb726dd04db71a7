import { Controller, Get, Inject, Param } from '@nestjs/common';
import { FORECASTS } from '../capabilities/forecast/forecasts.ts';
import type { Forecasts } from '../capabilities/forecast/forecasts.ts';
import { Answered, noSuchWard } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { Allowed } from './allowed.ts';
import { wardNamed } from './asked.ts';
import { unlessBusy } from './planning.controller.ts';

/** Demand for lifts and hands by quarter hour: asked for where it is looked at. */
@Controller('api/wards/:ward')
export class ForecastController {
  constructor(
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(FORECASTS) private readonly forecasts: Forecasts,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  @Get('forecast')
  @Allowed('read-forecast')
  async forecast(@Param('ward') id: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(id));
    if (!state || !calendar) throw new Answered(noSuchWard(id));
    return unlessBusy(this.forecasts.page({ ward: state, calendar, now: this.clock.now() }));
  }
}
