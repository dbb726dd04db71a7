import { Controller, Get, Inject, Param, Query, Req } from '@nestjs/common';
import type { Request } from 'express';
import { lookerOf } from '../access/access-log.ts';
import { ACCESS_LOG } from '../access/ports.ts';
import type { AccessLog } from '../access/ports.ts';
import { coursePage } from '../capabilities/board/course.ts';
import { TOTALS } from '../capabilities/dayplan/queries.ts';
import type { TotalsStore } from '../capabilities/dayplan/queries.ts';
import { hoursPage } from '../capabilities/dayplan/hours.ts';
import { Answered, noSuchWard } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { Allowed, identityOf } from './allowed.ts';
import { stayNamed, wardNamed } from './asked.ts';

/** What pictures are drawn from: asked for only where one is looked at. */
@Controller('api/wards/:ward')
export class PicturesController {
  constructor(
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(TOTALS) private readonly totals: TotalsStore,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
  ) {}

  @Get('stays/:stay/course')
  @Allowed('read-stay')
  async course(@Param('ward') ward: string, @Param('stay') stay: string, @Req() request: Request) {
    const known = await this.#ward(ward);
    const id = stayNamed(stay);
    const page = await coursePage(this.streams, known, id, this.clock.now());
    this.accessLog.note({
      ward: known.state.ward,
      what: 'read-stay',
      stay: id,
      ...lookerOf(identityOf(request)),
    });
    return page;
  }

  @Get('hours')
  @Allowed('read-totals')
  async hours(@Param('ward') ward: string, @Query('day') day: string | undefined) {
    const known = await this.#ward(ward);
    return hoursPage({ streams: this.streams, totals: this.totals }, known, { day, now: this.clock.now() });
  }

  async #ward(id: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(id));
    if (!state || !calendar) throw new Answered(noSuchWard(id));
    return { state, calendar };
  }
}
