import { Controller, Get, Inject, Param, Query, Req } from '@nestjs/common';
import type { Request } from 'express';
import { isoInstant, toEpoch } from '@footboard/shared/kernel/times';
import type { WardId } from '@footboard/shared/kernel/ids';
import { rowsFor } from '@footboard/shared/capabilities/board/rules/for-wall';
import { lookerOf } from '../access/access-log.ts';
import { Gate } from '../access/gate.ts';
import type { Pass } from '../access/gate.ts';
import { ACCESS_LOG, GATE } from '../access/ports.ts';
import type { AccessLog } from '../access/ports.ts';
import { boardNow, boardThen } from '../capabilities/board/queries.ts';
import type { BoardsAsOf } from '../capabilities/board/queries.ts';
import { TOTALS, huddlePage, totalsPage } from '../capabilities/dayplan/queries.ts';
import type { TotalsStore } from '../capabilities/dayplan/queries.ts';
import { REVIEWS } from '../capabilities/dayplan/review.ts';
import type { Reviews } from '../capabilities/dayplan/review.ts';
import { mayUse } from '../capabilities/people/policy.ts';
import { ownEntriesOf } from '../capabilities/people/own-entries.ts';
import { staffOf } from '../capabilities/people/queries.ts';
import { stayPageOf } from '../capabilities/stays/queries.ts';
import { protocolsInForce, rulesInForce, wardList } from '../capabilities/wards/queries.ts';
import { Answered, noSuchWard } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { LOG } from '../log/log.ts';
import type { Log } from '../log/log.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { BOARDS } from '../projecting/board.ts';
import { VAULT } from '../vault/vault.ts';
import type { Vault } from '../vault/vault.ts';
import { ABOUT } from './about.ts';
import type { About } from './about.ts';
import { Allowed, identityOf, passOf } from './allowed.ts';
import { invalidQuery as invalid, stayNamed, wardNamed } from './asked.ts';

/** Reads. None of them writes to a ward's log; who looked at what goes to the access log. */
@Controller('api')
export class QueriesController {
  constructor(
    @Inject(BOARDS) private readonly boards: BoardsAsOf,
    @Inject(LOG) private readonly log: Log,
    @Inject(VAULT) private readonly vault: Vault,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(TOTALS) private readonly totalsStore: TotalsStore,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ABOUT) private readonly about: About,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(GATE) private readonly gate: Gate,
    @Inject(REVIEWS) private readonly reviews: Reviews,
  ) {}

  @Get('wards')
  @Allowed('list-wards')
  async wards(@Req() request: Request) {
    const { wards, ...about } = wardList(this.boards, this.about);
    const identity = identityOf(request);
    if (identity.access === 'open') return { wards, ...about };
    // Whoever has no business on a ward does not learn that there is one.
    const theirs = await Promise.all(
      wards.map(async (one) => {
        const { state } = await this.streams.ward(one.ward);
        return (await this.gate.passes(identity, one.ward, state)).length > 0 ? [one] : [];
      }),
    );
    return { wards: theirs.flat(), ...about };
  }

  @Get('wards/:ward/board')
  @Allowed('read-board')
  async board(
    @Param('ward') ward: string,
    @Query('at') at: string | undefined,
    @Query('p') p: string | undefined,
    @Req() request: Request,
  ) {
    const id = wardNamed(ward);
    const then = at !== undefined || p !== undefined;
    const { level } = then
      ? await this.#mayReadThen(request, id)
      : (passOf(request) ?? { level: 'bed-only' });
    const page = then
      ? await boardThen({ boards: this.boards, log: this.log, now: this.clock.now() }, id, {
          t: at === undefined ? undefined : instantOf(at),
          p: p === undefined ? undefined : positionOf(p),
        })
      : boardNow(this.boards, id);
    // A board that shows less than the whole (a wall) is nobody's look at anybody.
    if (level === 'whole') {
      const what = then ? 'read-board-then' : 'read-board-whole';
      this.accessLog.note({ ward: id, what, ...lookerOf(identityOf(request)) });
    }
    return { ...page, board: rowsFor(page.board, level) };
  }

  @Get('wards/:ward/staff')
  @Allowed('read-staff')
  async staff(@Param('ward') ward: string) {
    return staffOf((await this.#ward(ward)).state, this.vault);
  }

  @Get('wards/:ward/own-entries')
  @Allowed('read-own-entries')
  async ownEntries(@Param('ward') ward: string, @Req() request: Request) {
    const { state } = await this.#ward(ward);
    const { person, claimed } = identityOf(request);
    // The guard let in a role, so there is somebody; with sign-in off the claim is believed.
    const staff = person?.staff ?? claimed!;
    const actor = passOf(request)?.actor;
    const maySign =
      actor !== undefined && actor !== 'wall' && actor !== 'device' && mayUse('cosign-entry', actor);
    const board = this.boards.snapshot(state.ward)?.board ?? null;
    return ownEntriesOf({ log: this.log, vault: this.vault }, state, { staff, maySign, board });
  }

  @Get('wards/:ward/stays/:stay')
  @Allowed('read-stay')
  async stay(@Param('ward') ward: string, @Param('stay') stay: string, @Req() request: Request) {
    const { state } = await this.#ward(ward);
    const id = stayNamed(stay);
    const page = await stayPageOf({ boards: this.boards, log: this.log, vault: this.vault }, state, id);
    this.accessLog.note({ ward: state.ward, what: 'read-stay', stay: id, ...lookerOf(identityOf(request)) });
    return page;
  }

  @Get('wards/:ward/huddle')
  @Allowed('read-huddle')
  async huddle(@Param('ward') ward: string) {
    const { state, calendar } = await this.#ward(ward);
    return huddlePage(
      { boards: this.boards, reviews: this.reviews, vault: this.vault },
      state,
      calendar,
      this.clock.now(),
    );
  }

  @Get('wards/:ward/totals')
  @Allowed('read-totals')
  async totals(@Param('ward') ward: string, @Query('day') day: string | undefined) {
    const { state, calendar } = await this.#ward(ward);
    return totalsPage(this.totalsStore, state, calendar, { day, now: this.clock.now() });
  }

  @Get('wards/:ward/rules')
  @Allowed('read-rules')
  async rules(@Param('ward') ward: string) {
    return rulesInForce((await this.#ward(ward)).state);
  }

  @Get('wards/:ward/protocols')
  @Allowed('read-protocols')
  async protocols(@Param('ward') ward: string) {
    return protocolsInForce((await this.#ward(ward)).state);
  }

  /** With `position` and `chain` of an anchor exported earlier, a log cut short shows too. */
  @Get('verify/:ward')
  @Allowed('verify-log')
  async verify(
    @Param('ward') ward: string,
    @Query('position') position: string | undefined,
    @Query('chain') chain: string | undefined,
  ) {
    const { state } = await this.#ward(ward);
    if (position === undefined && chain === undefined) return this.log.verify(state.ward);
    if (!/^[0-9a-f]{64}$/.test(chain ?? '')) {
      throw invalid(
        '/chain',
        'An anchor has a chain hash of 64 hexadecimal digits.',
        'Send "position" and "chain" as an earlier answer gave them in "head".',
      );
    }
    return this.log.verify(state.ward, { position: positionOf(position ?? ''), chain: chain! });
  }

  /** An earlier board is an action of its own: a wall reads only the one of now. */
  async #mayReadThen(request: Request, ward: WardId): Promise<Pass> {
    const { state } = await this.streams.ward(ward);
    const passed = await this.gate.on(identityOf(request), 'read-board-then', ward, state);
    if ('problem' in passed) throw new Answered(passed.problem);
    return passed.pass;
  }

  async #ward(id: string) {
    const { state, calendar } = await this.streams.ward(wardNamed(id));
    if (!state || !calendar) throw new Answered(noSuchWard(id));
    return { state, calendar };
  }
}

function instantOf(text: string): number {
  const at = isoInstant.safeParse(text);
  if (!at.success) {
    throw invalid('/at', at.error.issues[0]!.message, 'Write the instant in UTC, like 2026-10-25T01:40:00Z.');
  }
  return toEpoch(at.data);
}

function positionOf(text: string): number {
  if (!/^\d{1,15}$/.test(text) || Number(text) < 1) {
    throw invalid('/p', 'A position is a whole number from 1.', 'Leave it out for all that is known now.');
  }
  return Number(text);
}
