import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { planToCheck, proposeDay, whatIfAsked } from '@footboard/shared/wire/planning';
import { checkedPlan, dayPlanPage, proposedDay, whatIf } from '../capabilities/planning/day-plan.ts';
import { PLANNER } from '../capabilities/planning/planner.ts';
import type { Planner } from '../capabilities/planning/planner.ts';
import { peopleOnPage } from '../capabilities/planning/queries.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { PoolBusy } from '../platform/worker-pool.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { Allowed } from './allowed.ts';
import { wardNamed } from './asked.ts';
import { checked } from './checked.ts';

/** Who is on, and the plan of the day. Proposals write nothing. */
@Controller('api/wards/:ward')
export class PlanningController {
  constructor(
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(PLANNER) private readonly planner: Planner,
  ) {}

  @Get('people-on')
  @Allowed('read-people-on')
  async peopleOn(@Param('ward') ward: string, @Query('day') day: string | undefined) {
    const { ward: state, calendar, now } = await this.#asked(ward);
    return peopleOnPage(state, calendar, { day, now });
  }

  @Get('day-plan')
  @Allowed('read-day-plan')
  async dayPlan(@Param('ward') ward: string) {
    return dayPlanPage(this.#ports(), await this.#asked(ward));
  }

  @Post('day-plan')
  @HttpCode(200)
  @Allowed('propose-day-plan')
  async propose(
    @Param('ward') ward: string,
    @Body() body: unknown,
    @Res({ passthrough: true }) response: Response,
  ) {
    checked(proposeDay, body);
    const asked = await this.#asked(ward);
    return unlessBusy(proposedDay(this.#ports(), asked, untilClosed(response)));
  }

  @Post('day-plan/what-if')
  @HttpCode(200)
  @Allowed('propose-day-plan')
  async whatIf(
    @Param('ward') ward: string,
    @Body() body: unknown,
    @Res({ passthrough: true }) response: Response,
  ) {
    const change = checked(whatIfAsked, body);
    const asked = await this.#asked(ward);
    return unlessBusy(whatIf(this.#ports(), asked, change, untilClosed(response)));
  }

  @Post('day-plan/check')
  @HttpCode(200)
  @Allowed('propose-day-plan')
  async check(@Param('ward') ward: string, @Body() body: unknown) {
    const plan = checked(planToCheck, body);
    return checkedPlan(this.#ports(), await this.#asked(ward), plan);
  }

  #ports() {
    return { streams: this.streams, boards: this.boards, planner: this.planner };
  }

  async #asked(id: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(id));
    if (!state || !calendar) throw new Answered(noSuchWard(id));
    return { ward: state, calendar, now: this.clock.now() };
  }
}

/** Too many wait for a thread: said in words, and not as a fault. */
export async function unlessBusy<T>(working: Promise<T>): Promise<T> {
  try {
    return await working;
  } catch (error) {
    if (!(error instanceof PoolBusy)) throw error;
    throw new Answered(
      problem('not-ready', 'Too much is being worked out at once.', 'Try again in a moment.'),
    );
  }
}

/** Whoever asked has gone: nobody waits for the plan any more. */
function untilClosed(response: Response): AbortSignal {
  const gone = new AbortController();
  response.once('close', () => {
    if (!response.writableFinished) gone.abort();
  });
  return gone.signal;
}
