import { Controller, Get, Inject, Param, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { aidUsePageOf } from '../capabilities/aids/aid-use.ts';
import { coordinatorPageOf } from '../capabilities/aids/coordinator.ts';
import { labelsOf, labelsPdf } from '../capabilities/aids/labels.ts';
import { fitPageOf, itemsPageOf } from '../capabilities/aids/queries.ts';
import { TOTALS } from '../capabilities/dayplan/queries.ts';
import type { TotalsStore } from '../capabilities/dayplan/queries.ts';
import { Answered, noSuchWard } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { ABOUT } from './about.ts';
import type { About } from './about.ts';
import { Allowed } from './allowed.ts';
import { wardNamed } from './asked.ts';

/** Reads of the equipment list. */
@Controller('api')
export class ItemsController {
  constructor(
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ABOUT) private readonly about: About,
    @Inject(TOTALS) private readonly totals: TotalsStore,
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

  @Get('wards/:ward/coordinator')
  @Allowed('read-coordinator-list')
  async coordinator(@Param('ward') ward: string) {
    return coordinatorPageOf({ streams: this.streams, boards: this.boards }, await this.#asked(ward));
  }

  @Get('wards/:ward/aid-use')
  @Allowed('read-coordinator-list')
  async aidUse(@Param('ward') ward: string) {
    return aidUsePageOf({ streams: this.streams, totals: this.totals }, await this.#asked(ward));
  }

  /** Makes nothing: the same list prints the same labels. */
  @Get('wards/:ward/labels')
  @Allowed('make-labels')
  async labels(@Param('ward') id: string, @Req() request: Request, @Res() response: Response): Promise<void> {
    const { ward } = await this.#asked(id);
    const origin = this.about.publicUrl ?? `${request.protocol}://${request.get('host')}`;
    const labels = labelsOf(ward, origin);
    const pdf = await labelsPdf({ ward: ward.name, language: ward.language, labels });
    const name = `labels-${encodeURIComponent(ward.ward)}.pdf`;
    response.set('Content-Disposition', `inline; filename="${name}"`).type('application/pdf').send(pdf);
  }

  async #asked(id: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(id));
    if (!state || !calendar) throw new Answered(noSuchWard(id));
    return { ward: state, calendar, now: this.clock.now() };
  }
}
