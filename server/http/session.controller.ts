import { Controller, Delete, Get, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import {
  acceptInvitationRequest,
  changeSecretRequest,
  invitationRequest,
  signInRequest,
} from '@footboard/shared/wire/access';
import type { Me } from '@footboard/shared/wire/access';
import { COOKIES } from '../access/cookies.ts';
import type { Cookies } from '../access/cookies.ts';
import type { Gate } from '../access/gate.ts';
import { invitationOver } from '../access/invitations.ts';
import { meOf } from '../access/me.ts';
import type { Identity } from '../access/identity.ts';
import { ACCESS_LOG, ACCOUNTS, DEVICES, GATE, SESSIONS, SIGNING, SINGLE_SIGN_ON } from '../access/ports.ts';
import type {
  AccessLog,
  AccountRecord,
  Accounts,
  Devices,
  Sessions,
  SingleSignOn,
  Signing,
} from '../access/ports.ts';
import { signInTries } from '../access/sign-in-tries.ts';
import { Answered, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { Allowed, identityOf } from './allowed.ts';
import { checked } from './checked.ts';
import { signedIn, signedOut } from './signed-in.ts';

/** Signing in and out, one-time links, and one's own password, code and badge. */
@Controller('api')
export class SessionController {
  readonly #tries = signInTries();

  constructor(
    @Inject(ACCOUNTS) readonly accounts: Accounts,
    @Inject(SESSIONS) readonly sessions: Sessions,
    @Inject(SIGNING) readonly signing: Signing,
    @Inject(DEVICES) readonly devices: Devices,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(SINGLE_SIGN_ON) readonly singleSignOn: SingleSignOn | null,
    @Inject(GATE) readonly gate: Gate,
    @Inject(COOKIES) readonly cookies: Cookies,
    @Inject(STREAMS) readonly streams: Streams,
    @Inject(BOARDS) readonly boards: Boards,
  ) {}

  @Get('me')
  @Allowed('read-me')
  me(@Req() request: Request): Promise<Me> {
    return meOf(identityOf(request), this);
  }

  @Post('session')
  @HttpCode(200)
  @Allowed('sign-in')
  async signIn(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<Me> {
    const { signInName, password } = checked(signInRequest, request.body);
    const identity = identityOf(request);
    const giveBack = await this.#tries.count(signInName, identity.origin);
    const account = await this.accounts.check(signInName, password);
    if (!account) {
      this.#note('sign-in-refused', identity);
      throw wrongSignIn();
    }
    await giveBack();
    return this.#come(request, response, account);
  }

  @Delete('session')
  @HttpCode(204)
  @Allowed('sign-out')
  async signOut(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<void> {
    await signedOut(this, request, response);
  }

  @Post('invitations/read')
  @HttpCode(200)
  @Allowed('use-invitation')
  async readInvitation(@Req() request: Request) {
    const { token } = checked(invitationRequest, request.body);
    const invitation = await this.accounts.readInvitation(token);
    if (!invitation) throw invitationOver();
    return invitation;
  }

  @Post('invitations/accept')
  @HttpCode(200)
  @Allowed('use-invitation')
  async acceptInvitation(
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<Me> {
    const asked = checked(acceptInvitationRequest, request.body);
    const account = await this.accounts.accept({ ...asked, avoid: this.#wardNames() });
    return this.#come(request, response, account);
  }

  /** A new password ends every session of the person; this browser gets a new one. */
  @Post('session/secret')
  @HttpCode(204)
  @Allowed('change-own-secret')
  async changeSecret(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<void> {
    const asked = checked(changeSecretRequest, request.body);
    const identity = identityOf(request);
    const { person } = identity;
    // The short code alone opens two minutes of entries, not the account.
    const account = person?.via === 'session' ? await this.accounts.byStaff(person.staff) : null;
    if (!account) throw signInFully();
    const giveBack = await this.#tries.count(account.account, identity.origin);
    const byPassword = account.state !== 'outside';
    if (!byPassword && !(await this.sessions.justBegun(person?.session ?? ''))) throw signOnAgain();
    const password = byPassword ? (asked.password ?? '') : null;
    await this.accounts.changeSecret(account.account, { ...asked, password, avoid: this.#wardNames() });
    await giveBack();
    if (asked.newPassword !== undefined) await signedIn(this, request, response, account);
    else await this.signing.unlock(account.staff);
  }

  async #come(request: Request, response: Response, account: AccountRecord): Promise<Me> {
    const identity = await signedIn(this, request, response, account);
    this.#note('sign-in', identity);
    return meOf(identity, this);
  }

  #note(what: 'sign-in' | 'sign-in-refused', { person, device }: Identity): void {
    this.accessLog.note({
      ward: '',
      what,
      staff: what === 'sign-in' ? person?.staff : null,
      device: device?.device,
    });
  }

  #wardNames(): string[] {
    return this.boards.wards().map((ward) => this.boards.snapshot(ward)?.board.name ?? ward);
  }
}

const wrongSignIn = () =>
  new Answered(
    problem(
      'wrong-sign-in',
      'Name and password do not belong together, or the account is switched off.',
      'Try again, or ask whoever keeps the accounts for a new link.',
    ),
  );
const signInFully = () =>
  new Answered(
    problem(
      'sign-in-first',
      'Password, code and badge are changed with a full sign-in.',
      'Sign in with your name and password, then do it again.',
    ),
  );
const signOnAgain = () =>
  new Answered(
    problem(
      'sign-in-first',
      'You have no password here, and your single sign-on is longer ago than 5 min.',
      'Sign on again, then do it within 5 min.',
    ),
  );
