import { Controller, Get, Inject } from '@nestjs/common';
import { SECOND } from '@footboard/shared/kernel/times';
import { Answered, problem } from '../commanding/problems.ts';
import { LOG } from '../log/log.ts';
import type { Log } from '../log/log.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { Allowed } from './allowed.ts';

/** A board further behind than this would read LAST KNOWN on a screen (design rule 5). */
const MAY_TRAIL_MS = 10 * SECOND;

@Controller('health')
export class HealthController {
  constructor(
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(LOG) private readonly log: Log,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** The process answers. */
  @Get('live')
  @Allowed('read-health')
  live() {
    return { status: 'live' as const };
  }

  /** Screens can be served: the database answers, and every ward's board has caught up with its log. */
  @Get('ready')
  @Allowed('read-health')
  async ready() {
    const heads = await this.log.heads();
    const behind = [...heads]
      .filter(([ward, head]) => head > 0 && !this.#current(ward))
      .map(([ward]) => ward);
    if (behind.length === 0) return { status: 'ready' as const };
    throw new Answered(
      problem(
        'not-ready',
        `The board is still catching up for: ${behind.join(', ')}.`,
        'Ask again in a few seconds; if it goes on, the server log says why.',
      ),
    );
  }

  #current(ward: Parameters<Boards['heartbeat']>[0]): boolean {
    const beat = this.boards.snapshot(ward) && this.boards.heartbeat(ward);
    if (!beat) return false;
    const { trailingSince } = beat;
    return trailingSince === null || this.clock.now() - trailingSince < MAY_TRAIL_MS * this.clock.rate;
  }
}
