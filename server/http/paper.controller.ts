/** Paper sheets of a ward: one to print now, and which were printed. */
import { Controller, Get, Inject, Param, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { PaperSheets } from '@footboard/shared/wire/paper';
import { lookerOf } from '../access/access-log.ts';
import { PAPER } from '../capabilities/paper/sheets.ts';
import type { Paper } from '../capabilities/paper/sheets.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { Allowed, identityOf } from './allowed.ts';
import { wardNamed } from './asked.ts';

const bodyAnnounced = ({ headers }: Request): boolean =>
  headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0;

@Controller('api/wards/:ward/paper')
export class PaperController {
  constructor(
    @Inject(PAPER) private readonly paper: Paper,
    @Inject(STREAMS) private readonly streams: Streams,
  ) {}

  /** Makes one: a serial is used up, and what it shows is remembered. Nothing goes to the ward's log. */
  @Get('sheet')
  @Allowed('make-sheet')
  async sheet(
    @Param('ward') ward: string,
    @Req() request: Request,
    @Res() response: Response,
  ): Promise<void> {
    const id = await this.#ward(ward);
    // A body that is cut off would have its sheet made all the same, and nobody told its serial.
    if (bodyAnnounced(request)) {
      throw new Answered(
        problem('unreadable-request', 'A sheet is asked for without a body.', 'Open the address itself.'),
      );
    }
    // Who asks only whether it is there uses up no serial.
    if (request.method === 'HEAD') {
      response.type('application/pdf').end();
      return;
    }
    const origin = `${request.protocol}://${request.get('host')}`;
    const { serial, pdf } = await this.paper.make(
      id,
      lookerOf(identityOf(request)).staff ?? 'no-name',
      origin,
    );
    response.set('Content-Disposition', `inline; filename="${serial}.pdf"`).type('application/pdf').send(pdf);
  }

  @Get('sheets')
  @Allowed('read-sheets')
  async sheets(@Param('ward') ward: string): Promise<PaperSheets> {
    const id = await this.#ward(ward);
    return { ward: id, sheets: [...(await this.paper.list(id))] };
  }

  async #ward(id: string): Promise<WardId> {
    const { state } = await this.streams.ward(wardNamed(id));
    if (!state) throw new Answered(noSuchWard(id));
    return state.ward;
  }
}
