import { Controller, Get, Inject, Param, Req } from '@nestjs/common';
import type { Request } from 'express';
import { roundPage } from '../capabilities/dayplan/round.ts';
import { fairnessPage } from '../capabilities/dayplan/fairness.ts';
import { TOTALS } from '../capabilities/dayplan/queries.ts';
import type { TotalsStore } from '../capabilities/dayplan/queries.ts';
import { ROUND_LISTS } from '../capabilities/dayplan/round-lists.ts';
import type { RoundLists } from '../capabilities/dayplan/round-lists.ts';
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
    @Inject(ROUND_LISTS) private readonly lists: RoundLists,
    @Inject(TOTALS) private readonly totals: TotalsStore,
  ) {}

  @Get('wards/:ward/fairness')
  @Allowed('read-fairness')
  async fairness(@Param('ward') ward: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(ward));
    if (!state || !calendar) throw new Answered(noSuchWard(ward));
    const ports = { streams: this.streams, totals: this.totals };
    return fairnessPage(ports, state, calendar, this.clock.now());
  }

  @Get('wards/:ward/round/acts')
  @Allowed('read-round-acts')
  async acts(@Param('ward') ward: string) {
    return this.lists.acts(wardNamed(ward), this.clock.now());
  }

  @Get('wards/:ward/round/acts/:event')
  @Allowed('read-round-acts')
  async actThen(@Param('ward') ward: string, @Param('event') event: string) {
    return this.lists.actThen(wardNamed(ward), event);
  }

  @Get('wards/:ward/round')
  @Allowed('read-round')
  async round(@Param('ward') ward: string, @Req() request: Request) {
    const { state, calendar } = await this.streams.ward(wardNamed(ward));
    if (!state || !calendar) throw new Answered(noSuchWard(ward));
    const { person, claimed } = identityOf(request);
    const asked = { now: this.clock.now(), asker: person?.staff ?? claimed };
    return roundPage(this.boards, state, calendar, asked, (digest, text) =>
      this.lists.remember(digest, text),
    );
  }
}
