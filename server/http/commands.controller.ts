import { Controller, Inject, Param, Post, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { isoInstant, toEpoch } from '@footboard/shared/kernel/times';
import { COMMANDS } from '../commanding/handle-command.ts';
import type { Commands } from '../commanding/handle-command.ts';
import { Answered } from '../commanding/problems.ts';
import { Allowed, identityOf } from './allowed.ts';
import { notJson } from './problem-filter.ts';
import { sendProblem } from './send.ts';

/** The device's clock when the request leaves (ISO instant): measures how far it runs ahead. */
export const DEVICE_CLOCK_HEADER = 'x-footboard-device-clock';

@Controller('api/wards/:ward/commands')
export class CommandsController {
  constructor(@Inject(COMMANDS) private readonly commands: Commands) {}

  @Post(':name')
  @Allowed('command')
  async take(
    @Param('ward') ward: string,
    @Param('name') name: string,
    @Req() request: Request,
    @Res() response: Response,
  ): Promise<void> {
    const body: unknown = request.body;
    if (body === undefined) throw new Answered(notJson());
    const deviceClock = isoInstant.safeParse(request.header(DEVICE_CLOCK_HEADER));
    const answer = await this.commands.handle({
      ward,
      name,
      body,
      claim: identityOf(request),
      ...(deviceClock.success ? { deviceClock: toEpoch(deviceClock.data) } : {}),
    });
    if ('problem' in answer) {
      // Turned away: noted where all that is turned away is.
      if (answer.problem.status === 401 || answer.problem.status === 403) throw new Answered(answer.problem);
      sendProblem(response, answer.problem);
    } else response.status(200).json(answer.accepted);
  }
}
