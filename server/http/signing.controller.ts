/** The short code on a shared device: two minutes in which that person signs there. */
import { Body, Controller, Delete, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { StaffId } from '@footboard/shared/kernel/ids';
import type { z } from 'zod';
import { signingRequest } from '@footboard/shared/wire/access';
import type { signingAnswer } from '@footboard/shared/wire/access';
import { COOKIES } from '../access/cookies.ts';
import type { Cookies } from '../access/cookies.ts';
import { ACCESS_LOG, SIGNING } from '../access/ports.ts';
import type { AccessLog, Signing } from '../access/ports.ts';
import { SIGNING_MS, notShared } from '../access/signing.ts';
import { Answered } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { Allowed, identityOf } from './allowed.ts';
import { checked } from './checked.ts';

@Controller('api/signing')
export class SigningController {
  constructor(
    @Inject(SIGNING) private readonly signing: Signing,
    @Inject(COOKIES) private readonly cookies: Cookies,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
  ) {}

  @Post()
  @HttpCode(200)
  @Allowed('sign-with-code')
  async open(
    @Body() body: unknown,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<z.infer<typeof signingAnswer>> {
    const { device } = identityOf(request);
    if (device?.kind !== 'shared') throw new Answered(notShared());
    const { staff, badge, code } = checked(signingRequest, body);
    const { state } = await this.streams.ward(device.ward);
    const isMember = (id: StaffId) => state?.staff.get(id)?.active === true;
    const opened = await this.signing
      .open(device, { staff, badge }, code, isMember)
      .catch((error: unknown) => {
        if (error instanceof Answered) {
          // Whose code was tried, if it was anybody's of this ward; a badge that is nobody's names nobody.
          const tried = staff !== undefined && isMember(staff) ? staff : null;
          this.accessLog.note({
            ward: device.ward,
            what: 'code-refused',
            staff: tried,
            device: device.device,
          });
        }
        throw error;
      });
    this.cookies.set(response, 'signing', opened.token, SIGNING_MS / 1000);
    return { staff: opened.staff, until: opened.until };
  }

  /** Sign off before the two minutes are over. Twice does no harm. */
  @Delete()
  @HttpCode(204)
  @Allowed('sign-with-code')
  async close(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<void> {
    const token = this.cookies.read(request.headers, 'signing');
    if (token !== null) await this.signing.close(token);
    this.cookies.clear(response, 'signing');
  }
}
