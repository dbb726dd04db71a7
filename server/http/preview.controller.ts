import { Controller, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import type { Request } from 'express';
import { isoInstant, toEpoch } from '@footboard/shared/kernel/times';
import type { StayId } from '@footboard/shared/kernel/ids';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import { lookerOf } from '../access/access-log.ts';
import { ACCESS_LOG } from '../access/ports.ts';
import type { AccessLog } from '../access/ports.ts';
import { previewOf } from '../capabilities/board/preview.ts';
import { COMMANDS } from '../commanding/handle-command.ts';
import type { Commands } from '../commanding/handle-command.ts';
import { Answered } from '../commanding/problems.ts';
import { Allowed, identityOf } from './allowed.ts';
import { DEVICE_CLOCK_HEADER } from './commands.controller.ts';
import { notJson } from './problem-filter.ts';

/** What an entry would come to before it is sent. A read: it takes a body and writes nothing. */
@Controller('api/wards/:ward/previews')
export class PreviewController {
  constructor(
    @Inject(COMMANDS) private readonly commands: Commands,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
  ) {}

  @Post('record-assessment')
  @HttpCode(200)
  @Allowed('read-stay')
  async assessment(@Param('ward') ward: string, @Req() request: Request) {
    const body: unknown = request.body;
    if (body === undefined) throw new Answered(notJson());
    const identity = identityOf(request);
    const deviceClock = isoInstant.safeParse(request.header(DEVICE_CLOCK_HEADER));
    const draft = await this.commands.draft({
      ward,
      name: recordAssessment.name,
      body,
      claim: identity,
      ...(deviceClock.success ? { deviceClock: toEpoch(deviceClock.data) } : {}),
    });
    if ('problem' in draft) throw new Answered(draft.problem);
    const { stay } = (body as { data: { stay: StayId } }).data;
    this.accessLog.note({ ward: draft.request.command.ward, what: 'read-stay', stay, ...lookerOf(identity) });
    return previewOf(draft, stay);
  }
}
