import { Controller, Get, Inject, Param } from '@nestjs/common';
import { fitPageOf, itemsPageOf } from '../capabilities/aids/queries.ts';
import { Answered, noSuchWard } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { Allowed } from './allowed.ts';
import { wardNamed } from './asked.ts';

/** Reads of the equipment list. */
@Controller('api')
export class ItemsController {
  constructor(
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  @Get('wards/:ward/items')
  @Allowed('read-items')
  async items(@Param('ward') ward: string) {
    return itemsPageOf(this.streams, await this.#asked(ward));
  }

  @Get('wards/:ward/fit')
  @Allowed('read-fit')
  async fit(@Param('ward') ward: string) {
    return fitPageOf({ streams: this.streams, boards: this.boards }, await this.#asked(ward));
  }

  async #asked(id: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(id));
    if (!state || !calendar) throw new Answered(noSuchWard(id));
    return { ward: state, calendar, now: this.clock.now() };
  }
}
