/** Screens and shared devices of a ward: pair one by the code it shows, list them, take one off. */
import { Body, Controller, Delete, Get, HttpCode, Inject, Param, Post, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { z } from 'zod';
import { deviceId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import {
  approvePairingRequest,
  beginPairingRequest,
  claimPairingRequest,
} from '@footboard/shared/wire/access';
import type { deviceLine, deviceList, pairingBegun, pairingState } from '@footboard/shared/wire/access';
import { COOKIES } from '../access/cookies.ts';
import type { Cookies } from '../access/cookies.ts';
import { namesOf } from '../access/names.ts';
import { ACCESS_LOG, ACCOUNTS, DEVICES, SESSIONS } from '../access/ports.ts';
import type { AccessLog, Accounts, DeviceLine, Devices, Sessions } from '../access/ports.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { VAULT } from '../vault/vault.ts';
import type { Vault } from '../vault/vault.ts';
import { Allowed, identityOf } from './allowed.ts';
import { wardNamed } from './asked.ts';
import { checked } from './checked.ts';

type Line = z.infer<typeof deviceLine>;

/** A browser keeps a cookie for 400 days at most (RFC 6265bis draft, from memory); then it is paired again. */
const KEY_COOKIE_SECONDS = 400 * 24 * 60 * 60;
const NO_NAME = '(name not known)';

@Controller('api')
export class DevicesController {
  constructor(
    @Inject(DEVICES) private readonly devices: Devices,
    @Inject(SESSIONS) private readonly sessions: Sessions,
    @Inject(ACCOUNTS) private readonly accounts: Accounts,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(COOKIES) private readonly cookies: Cookies,
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(VAULT) private readonly vault: Vault,
  ) {}

  @Post('pairings')
  @HttpCode(200)
  @Allowed('begin-pairing')
  begin(@Body() body: unknown, @Req() request: Request): Promise<z.infer<typeof pairingBegun>> {
    const { kind } = checked(beginPairingRequest, body);
    return this.devices.beginPairing(kind, identityOf(request).origin);
  }

  /** The key goes into a cookie that no script can read, once; never into an answer. */
  @Post('pairings/claim')
  @HttpCode(200)
  @Allowed('begin-pairing')
  async claim(
    @Body() body: unknown,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<z.infer<typeof pairingState>> {
    const claimed = await this.devices.claim(checked(claimPairingRequest, body).poll);
    if (claimed.state === 'paired') {
      this.cookies.set(response, 'device', claimed.key, KEY_COOKIE_SECONDS);
      // Whoever signed with a code on this device under its old key did not do so under the new one.
      this.cookies.clear(response, 'signing');
      if (claimed.device.kind === 'wall') await this.#nobodyOn(request, response);
    }
    return { state: claimed.state };
  }

  @Post('wards/:ward/devices')
  @HttpCode(200)
  @Allowed('approve-device')
  async approve(@Param('ward') ward: string, @Body() body: unknown, @Req() request: Request): Promise<Line> {
    const { state, staff } = await this.#asked(ward, request);
    const line = await this.devices.approve(state.ward, staff, checked(approvePairingRequest, body));
    this.accessLog.note({ ward: state.ward, what: 'device-approved', staff, device: line.device });
    return (await this.#lines(state, [line]))[0]!;
  }

  @Get('wards/:ward/devices')
  @Allowed('list-devices')
  async list(@Param('ward') ward: string, @Req() request: Request): Promise<z.infer<typeof deviceList>> {
    const { state } = await this.#asked(ward, request);
    const lines = await this.devices.list(state.ward);
    return {
      feed: this.boards.snapshot(state.ward)?.feed ?? 0,
      devices: await this.#lines(state, lines),
    };
  }

  @Delete('wards/:ward/devices/:device')
  @HttpCode(204)
  @Allowed('revoke-device')
  async revoke(
    @Param('ward') ward: string,
    @Param('device') device: string,
    @Req() request: Request,
  ): Promise<void> {
    const { state, staff } = await this.#asked(ward, request);
    const id = deviceId.safeParse(device);
    if (!id.success) throw new Answered(noSuchDevice());
    await this.devices.revoke(state.ward, id.data, staff);
    this.accessLog.note({ ward: state.ward, what: 'device-revoked', staff, device: id.data });
  }

  /** Whoever set a wall up in their own browser must not stay signed in where everybody passes. */
  async #nobodyOn(request: Request, response: Response): Promise<void> {
    const session = identityOf(request).person?.session;
    if (session) await this.sessions.end(session);
    this.cookies.clear(response, 'session');
  }

  async #asked(id: string, request: Request) {
    const { state } = await this.streams.ward(wardNamed(id));
    const { person } = identityOf(request);
    if (!state) throw new Answered(noSuchWard(id));
    // The gate asks for a person; this says it once more to the compiler.
    if (!person) throw new Answered(problem('sign-in-first', 'Nobody is signed in here.', 'Sign in first.'));
    return { state, staff: person.staff };
  }

  async #lines(state: WardState, lines: readonly DeviceLine[]): Promise<Line[]> {
    const approvers = [...new Set(lines.map(({ approvedBy }) => approvedBy))];
    const names = await namesOf({ ward: state, vault: this.vault, accounts: this.accounts }, approvers);
    return lines.map(({ ward: _ward, approvedBy, ...line }) => ({
      ...line,
      approvedBy: names.get(approvedBy) ?? NO_NAME,
    }));
  }
}

const noSuchDevice = () =>
  problem(
    'no-such-device',
    'No device of this ward has that id.',
    'Open the list of devices again and choose one of it.',
  );
