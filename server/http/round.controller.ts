import { Controller, Get, Inject, Param, Req } from '@nestjs/common';
import type { Request } from 'express';
import { roundPage } from '../capabilities/dayplan/round.ts';
import { Answered, noSuchWard } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { Allowed, identityOf } from './allowed.ts';
import { wardNamed } from './asked.ts';

/** Whom to see next, for whoever asks. */
@Controller('api')
export class RoundController {
  constructor(
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  @Get('wards/:ward/round')
  @Allowed('read-round')
  async round(@Param('ward') ward: string, @Req() request: Request) {
    const { state, calendar } = await this.streams.ward(wardNamed(ward));
    if (!state || !calendar) throw new Answered(noSuchWard(ward));
    const { person, claimed } = identityOf(request);
    return roundPage(this.boards, state, calendar, {
      now: this.clock.now(),
      asker: person?.staff ?? claimed,
    });
  }
}
