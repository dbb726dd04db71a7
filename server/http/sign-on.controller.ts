import { Controller, Get, Inject, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { COOKIES } from '../access/cookies.ts';
import type { Cookies } from '../access/cookies.ts';
import { ACCESS_LOG, ACCOUNTS, SESSIONS, SIGNING, SINGLE_SIGN_ON } from '../access/ports.ts';
import type { AccessLog, Accounts, Sessions, SingleSignOn, Signing } from '../access/ports.ts';
import { rolesByGroups } from '../access/roles-by-groups.ts';
import { KEPT_FOR_MS } from '../access/single-sign-on.ts';
import { COMMANDS } from '../commanding/handle-command.ts';
import type { Commands } from '../commanding/handle-command.ts';
import { Answered, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { Allowed } from './allowed.ts';
import { signedIn } from './signed-in.ts';

/** Where a browser goes when single sign-on did not work: the page says it by the code. */
const signInPage = (code: string) => `/sign-in?problem=${code}`;

/** Leaving for the single sign-on provider, and coming back. Both are navigations of the browser. */
@Controller('api/sign-on')
export class SignOnController {
  constructor(
    @Inject(SINGLE_SIGN_ON) private readonly singleSignOn: SingleSignOn | null,
    @Inject(ACCOUNTS) private readonly accounts: Accounts,
    @Inject(SESSIONS) readonly sessions: Sessions,
    @Inject(SIGNING) readonly signing: Signing,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(COOKIES) readonly cookies: Cookies,
    @Inject(COMMANDS) private readonly commands: Commands,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(BOARDS) private readonly boards: Pick<Boards, 'wards'>,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  @Get('begin')
  @Allowed('begin-single-sign-on')
  async begin(
    @Query('returnTo') returnTo: unknown,
    @Req() request: Request,
    @Res() response: Response,
  ): Promise<void> {
    await this.#orTold(request, response, async (single) => {
      const { url, kept } = await single.begin(typeof returnTo === 'string' ? returnTo : '/');
      this.cookies.set(response, 'signOn', kept, KEPT_FOR_MS / 1000);
      return url;
    });
  }

  @Get('return')
  @Allowed('begin-single-sign-on')
  async return(@Req() request: Request, @Res() response: Response): Promise<void> {
    await this.#orTold(request, response, async (single) => {
      const kept = this.cookies.read(request.headers, 'signOn') ?? '';
      this.cookies.clear(response, 'signOn');
      const came = await single.finish(new URL(request.originalUrl, 'http://own.invalid'), kept);
      const account = await this.accounts.outside(came);
      const { staff } = account;
      if (!account.active) {
        this.accessLog.note({ ward: '', what: 'sign-in-refused', staff });
        throw withoutRole('Your account on this server is switched off.');
      }
      const { placed, changed } = await rolesByGroups(
        {
          commands: this.commands,
          streams: this.streams,
          wards: this.boards.wards(),
          clock: this.clock,
        },
        account,
        { managed: single.wards, roles: came.roles },
      );
      if (changed) await this.accounts.raiseEdition([staff]);
      if (!placed && !account.wide) {
        this.accessLog.note({ ward: '', what: 'sign-in-refused', staff });
        throw withoutRole('None of your groups has a role on a ward here.');
      }
      await signedIn(this, request, response, account);
      this.accessLog.note({ ward: '', what: 'sign-in', staff });
      return came.returnTo;
    });
  }

  /** Sends the browser on. What went wrong is told on the sign-in page; a program gets the problem itself. */
  async #orTold(
    request: Request,
    response: Response,
    doing: (single: SingleSignOn) => Promise<string>,
  ): Promise<void> {
    try {
      if (!this.singleSignOn) throw notSetUp();
      response.redirect(302, await doing(this.singleSignOn));
    } catch (error) {
      if (!(error instanceof Answered) || request.accepts(['json', 'html']) !== 'html') throw error;
      response.redirect(302, signInPage(error.answer.type.slice('/problems/'.length)));
    }
  }
}

const notSetUp = () =>
  new Answered(
    problem(
      'no-such-page',
      'Single sign-on is not set up on this server.',
      'Sign in with a name and password of this server.',
    ),
  );

const withoutRole = (detail: string) =>
  new Answered(
    problem(
      'sign-on-without-role',
      detail,
      'Ask whoever keeps the groups, or an administrator of this server, to add you.',
    ),
  );
