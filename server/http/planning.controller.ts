import { Controller, Get, Inject, Param, Query } from '@nestjs/common';
import { peopleOnPage } from '../capabilities/planning/queries.ts';
import { Answered, noSuchWard } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { Allowed } from './allowed.ts';
import { wardNamed } from './asked.ts';

/** Who is on, and the plan of the day. */
@Controller('api/wards/:ward')
export class PlanningController {
  constructor(
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  @Get('people-on')
  @Allowed('read-people-on')
  async peopleOn(@Param('ward') ward: string, @Query('day') day: string | undefined) {
    const { state, calendar } = await this.#ward(ward);
    return peopleOnPage(state, calendar, { day, now: this.clock.now() });
  }

  async #ward(id: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(id));
    if (!state || !calendar) throw new Answered(noSuchWard(id));
    return { state, calendar };
  }
}
