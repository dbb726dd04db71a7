/** For whoever keeps the records: who looked, one stay to hand over, erasure, what is kept too long. */
import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { z } from 'zod';
import { streamKey } from '@footboard/shared/kernel/event-type';
import { staffId } from '@footboard/shared/kernel/ids';
import { ELAPSED_DAY } from '@footboard/shared/kernel/times';
import { stayEnded } from '@footboard/shared/capabilities/stays/events';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { eraseStaffRequest, eraseStayRequest } from '@footboard/shared/wire/access';
import type { accessLog, retentionPage } from '@footboard/shared/wire/access';
import type { StayExport } from '@footboard/shared/wire/stay-export';
import { lookerOf } from '../access/access-log.ts';
import { namesOf } from '../access/names.ts';
import { ACCESS_LOG, ACCOUNTS, RETENTION } from '../access/ports.ts';
import type { AccessLog, Accounts, Retention } from '../access/ports.ts';
import { stayExportOf } from '../capabilities/stays/export.ts';
import { noSuchStay } from '../capabilities/stays/queries.ts';
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
import { Allowed, identityOf } from './allowed.ts';
import { invalidQuery, stayNamed, wardNamed } from './asked.ts';
import { checked } from './checked.ts';

const LINES_A_PAGE = 100;

@Controller('api/wards/:ward')
export class PrivacyController {
  constructor(
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(ACCOUNTS) private readonly accounts: Accounts,
    @Inject(RETENTION) private readonly retention: Retention,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(BOARDS) private readonly boards: Boards,
    @Inject(LOG) private readonly log: Log,
    @Inject(VAULT) private readonly vault: Vault,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Newest first. What was looked up here is itself a line, from the next reading on. */
  @Get('access-log')
  @Allowed('read-access-log')
  async looked(
    @Param('ward') ward: string,
    @Query('stay') stay: string | undefined,
    @Query('before') before: string | undefined,
    @Req() request: Request,
  ): Promise<z.infer<typeof accessLog>> {
    const state = await this.#ward(ward);
    const asked = {
      ...(stay === undefined ? {} : { stay: stayNamed(stay) }),
      ...(before === undefined ? {} : { before: numberOf(before) }),
    };
    await this.accessLog.flush();
    const found = await this.accessLog.read(state.ward, { ...asked, limit: LINES_A_PAGE + 1 });
    const lines = found.slice(0, LINES_A_PAGE);
    const names = await this.#names(state, [...new Set(lines.flatMap(({ staff }) => staff ?? []))]);
    this.accessLog.note({
      ward: state.ward,
      what: 'read-access-log',
      ...(asked.stay === undefined ? {} : { stay: asked.stay }),
      ...lookerOf(identityOf(request)),
    });
    return {
      lines: lines.map((line) => ({ ...line, name: (line.staff && names.get(line.staff)) ?? null })),
      next: found.length > lines.length ? (lines.at(-1)?.number ?? null) : null,
    };
  }

  /** Noted before it leaves: what cannot be noted is not handed over. */
  @Get('stays/:stay/export')
  @Allowed('export-stay')
  async export(
    @Param('ward') ward: string,
    @Param('stay') stay: string,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StayExport> {
    const state = await this.#ward(ward);
    const id = stayNamed(stay);
    const looker = lookerOf(identityOf(request));
    const staff = staffId.safeParse(looker.staff).data;
    const names = await this.#names(state, staff ? [staff] : []);
    const { boards, log, vault, retention } = this;
    const made = {
      at: this.clock.now(),
      by: staff ? { staff, name: names.get(staff) ?? '' } : null,
    };
    const answer = await stayExportOf({ boards, log, vault, retention }, state, id, made);
    this.accessLog.note({ ward: state.ward, what: 'export-stay', stay: id, ...looker });
    await this.accessLog.flush();
    // Ids are opaque: the name says nothing of the person, wherever the file comes to lie.
    response.setHeader('Content-Disposition', `attachment; filename="footboard-${id}.json"`);
    return answer;
  }

  /**
   * Only after the stay has ended, whatever the reason. While a person lies in the bed their name
   * tells the right person at the bedside, and after erasure no text (a clinician's plan, why a hold
   * is on) could be kept for them any more. A stay entered by mistake is ended first.
   */
  @Post('stays/:stay/erase')
  @HttpCode(204)
  @Allowed('erase-stay')
  async erase(
    @Param('ward') ward: string,
    @Param('stay') stay: string,
    @Body() body: unknown,
    @Req() request: Request,
  ): Promise<void> {
    const state = await this.#ward(ward);
    const id = stayNamed(stay);
    const { reason, words } = checked(eraseStayRequest, body);
    const stream = streamKey('stay', id);
    const { events, version } = await this.log.readStream(state.ward, stream);
    if (version === 0) throw new Answered(noSuchStay(state.ward, id));
    if (!events.some((event) => event.type === stayEnded.name)) throw new Answered(notEnded());
    if ((await this.retention.alsoOn(state.ward, id)).length > 0) throw new Answered(sharedKey());
    // First the line, then the deed: nothing is erased that nobody can account for.
    this.accessLog.note({
      ward: state.ward,
      what: 'erase-stay',
      stay: id,
      words: `${reason.replaceAll('-', ' ')}: ${words}`,
      ...lookerOf(identityOf(request)),
    });
    await this.accessLog.flush();
    await this.vault.destroyKey(`stay/${id}`);
  }

  /**
   * The name of somebody who works on no ward of this server any more, with their account. Their
   * entries stay under their id: who did what is part of the record.
   */
  @Post('staff/:staff/erase')
  @HttpCode(204)
  @Allowed('erase-staff')
  async eraseStaff(
    @Param('ward') ward: string,
    @Param('staff') staff: string,
    @Body() body: unknown,
    @Req() request: Request,
  ): Promise<void> {
    const state = await this.#ward(ward);
    const id = staffId.safeParse(staff);
    if (!id.success || !state.staff.has(id.data)) throw new Answered(nobodyHere());
    const { words } = checked(eraseStaffRequest, body);
    const account = await this.accounts.byStaff(id.data);
    if (account?.active && account.wide) throw new Answered(stillKeeps());
    for (const one of this.boards.wards()) {
      const { state: other } = await this.streams.ward(one);
      if (other?.staff.get(id.data)?.active) throw new Answered(stillWorks(other.name));
    }
    this.accessLog.note({
      ward: state.ward,
      what: 'erase-staff',
      words: `${id.data}: ${words}`,
      ...lookerOf(identityOf(request)),
    });
    await this.accessLog.flush();
    await this.accounts.remove(id.data);
    await this.vault.destroyKey(`staff/${id.data}`);
  }

  @Get('retention')
  @Allowed('read-retention')
  async kept(@Param('ward') ward: string): Promise<z.infer<typeof retentionPage>> {
    const state = await this.#ward(ward);
    const { keepDays } = this.retention;
    if (keepDays === null) return { keepDays, over: [] };
    const before = this.clock.now() - keepDays * ELAPSED_DAY;
    return { keepDays, over: [...(await this.retention.endedBefore(state.ward, before))] };
  }

  #names(state: WardState, staff: Parameters<typeof namesOf>[1]) {
    return namesOf({ ward: state, vault: this.vault, accounts: this.accounts }, staff);
  }

  async #ward(id: string): Promise<WardState> {
    const { state } = await this.streams.ward(wardNamed(id));
    if (!state) throw new Answered(noSuchWard(id));
    return state;
  }
}

function numberOf(text: string): number {
  if (!/^\d{1,15}$/.test(text)) {
    throw invalidQuery(
      '/before',
      'That is not the number of a line.',
      'Send the "next" of the page before, or leave it out.',
    );
  }
  return Number(text);
}

const nobodyHere = () =>
  problem(
    'no-such-account',
    'Nobody on the staff list of this ward has that id.',
    'Choose somebody from the staff list.',
  );

const stillWorks = (ward: string) =>
  problem(
    'conflict',
    `They are still active on the staff list of ${ward}: others must know who they are.`,
    'Mark them as no longer active on every ward first.',
  );

const stillKeeps = () =>
  problem('conflict', 'They are an administrator of this server.', 'Switch their account off first.');

const notEnded = () =>
  problem(
    'stay-not-ended',
    'The person is still in a bed of this ward: their name is needed to tell the right person.',
    'End the stay first (also one entered by mistake), then erase it.',
  );

const sharedKey = () =>
  problem(
    'conflict',
    'Another ward has a stay of the same id; its names and texts are under the same key.',
    'Tell whoever runs Footboard: the two cannot be erased apart.',
  );
