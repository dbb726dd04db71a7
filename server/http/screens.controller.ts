/** What the ward's screens may show beside the board, and what each of them has painted. */
import { Controller, Get, Inject, Param, Req } from '@nestjs/common';
import type { Request } from 'express';
import type { z } from 'zod';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { initialsPage, receiptsPage } from '@footboard/shared/wire/access';
import { DEVICES } from '../access/ports.ts';
import type { Devices } from '../access/ports.ts';
import { initialsOf } from '../capabilities/stays/initials.ts';
import { receiptsOf } from '../capabilities/corrections/receipts.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { LOG } from '../log/log.ts';
import type { Log } from '../log/log.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { VAULT } from '../vault/vault.ts';
import type { Vault } from '../vault/vault.ts';
import { Allowed, passOf } from './allowed.ts';
import { wardNamed } from './asked.ts';

@Controller('api/wards/:ward')
export class ScreensController {
  constructor(
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(LOG) private readonly log: Log,
    @Inject(VAULT) private readonly vault: Vault,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(DEVICES) private readonly devices: Devices,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Only where this screen's level has them: the policy row is wider than a level. */
  @Get('initials')
  @Allowed('read-initials')
  async initials(
    @Param('ward') ward: string,
    @Req() request: Request,
  ): Promise<z.infer<typeof initialsPage>> {
    const level = passOf(request)?.level;
    if (level !== 'initials' && level !== 'whole') {
      throw new Answered(
        problem(
          'not-allowed',
          'This screen was paired to show beds without initials.',
          'Pair it again with initials if the ward wants them there.',
        ),
      );
    }
    const { boards, log, vault } = this;
    return { initials: await initialsOf({ boards, log, vault }, await this.#ward(ward)) };
  }

  @Get('receipts')
  @Allowed('read-receipts')
  async receipts(@Param('ward') ward: string): Promise<z.infer<typeof receiptsPage>> {
    const id = await this.#ward(ward);
    const lines = await this.devices.list(id);
    const screens = lines.flatMap(({ device, place, kind, connected, painted, paintedAt, revoked }) =>
      revoked === null ? [{ device, place, kind, connected, painted, paintedAt }] : [],
    );
    const { boards, log } = this;
    return {
      feed: boards.snapshot(id)?.feed ?? 0,
      screens,
      changes: await receiptsOf({ boards, log }, id, screens, this.clock.now()),
    };
  }

  async #ward(id: string): Promise<WardId> {
    const { state } = await this.streams.ward(wardNamed(id));
    if (!state) throw new Answered(noSuchWard(id));
    return state.ward;
  }
}
