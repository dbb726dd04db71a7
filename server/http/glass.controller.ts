/** Breaking the glass: open a ward for an emergency, see who did, look at it afterwards. */
import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import type { Request } from 'express';
import type { z } from 'zod';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { breakGlassRequest, glassReason, reviewGlassRequest } from '@footboard/shared/wire/access';
import type { glassLine, glassList } from '@footboard/shared/wire/access';
import { lookerOf } from '../access/access-log.ts';
import { namesOf } from '../access/names.ts';
import { ACCESS_LOG, ACCOUNTS, GLASS } from '../access/ports.ts';
import type { AccessLog, Accounts, Glass, GlassRecord } from '../access/ports.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { VAULT } from '../vault/vault.ts';
import type { Vault } from '../vault/vault.ts';
import { Allowed, identityOf } from './allowed.ts';
import { wardNamed } from './asked.ts';
import { checked } from './checked.ts';

type Line = z.infer<typeof glassLine>;
const NO_NAME = '(name not known)';

@Controller('api/wards/:ward/glass')
export class GlassController {
  constructor(
    @Inject(GLASS) private readonly glass: Glass,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(ACCOUNTS) private readonly accounts: Accounts,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(VAULT) private readonly vault: Vault,
  ) {}

  @Post()
  @HttpCode(200)
  @Allowed('break-glass')
  async open(@Param('ward') ward: string, @Body() body: unknown, @Req() request: Request): Promise<Line> {
    const identity = identityOf(request);
    const { person } = identity;
    // A code signed on a device counts on that device's ward only; the opening would not be seen.
    if (!person || person.via === 'signing') throw new Answered(signInFully());
    const state = await this.#ward(ward);
    const { reason, words } = checked(breakGlassRequest, body);
    if (state.staff.get(person.staff)?.active) throw new Answered(needNot());
    // Noted first: there is no opening that the log does not know of.
    this.accessLog.note({ ward: state.ward, what: 'break-glass', words, ...lookerOf(identity) });
    await this.accessLog.flush();
    const begun = await this.glass.begin(state.ward, person.staff, reason, words);
    const [line] = await this.#lines(state, [{ ...begun, looked: 0 }]);
    return line!;
  }

  @Get()
  @Allowed('read-glass')
  async list(@Param('ward') ward: string): Promise<z.infer<typeof glassList>> {
    const state = await this.#ward(ward);
    await this.accessLog.flush();
    return { glass: await this.#lines(state, await this.glass.list(state.ward)) };
  }

  @Post(':glass/review')
  @HttpCode(204)
  @Allowed('review-glass')
  async review(
    @Param('ward') ward: string,
    @Param('glass') glass: string,
    @Body() body: unknown,
    @Req() request: Request,
  ): Promise<void> {
    const identity = identityOf(request);
    const { staff } = lookerOf(identity);
    if (!staff) throw new Answered(signInFully());
    const state = await this.#ward(ward);
    const { words } = checked(reviewGlassRequest, body);
    await this.glass.review(state.ward, glass, staff, words);
    this.accessLog.note({ ward: state.ward, what: 'review-glass', words, ...lookerOf(identity) });
    await this.accessLog.flush();
  }

  async #lines(
    state: WardState,
    records: readonly (GlassRecord & { readonly looked: number })[],
  ): Promise<Line[]> {
    const people = new Set(
      records.flatMap(({ staff, reviewed }) => [staff, ...(reviewed ? [reviewed.by] : [])]),
    );
    const names = await namesOf({ ward: state, vault: this.vault, accounts: this.accounts }, [...people]);
    return records.map(({ glass, staff, reason, words, began, ends, looked, reviewed }) => ({
      glass,
      staff,
      name: names.get(staff) ?? NO_NAME,
      reason: glassReason.parse(reason),
      words,
      began,
      ends,
      looked,
      reviewed: reviewed && { ...reviewed, by: names.get(reviewed.by) ?? NO_NAME },
    }));
  }

  async #ward(id: string): Promise<WardState> {
    const { state } = await this.streams.ward(wardNamed(id));
    if (!state) throw new Answered(noSuchWard(id));
    return state;
  }
}

const signInFully = () =>
  problem(
    'sign-in-first',
    'A ward is opened by somebody who has signed in with their own name and password.',
    'Sign in fully, then do it again.',
  );

const needNot = () =>
  problem(
    'not-allowed',
    'You need not: you are on the staff list of this ward.',
    'Open the ward as usual. If your role there does not reach far enough, ask whoever keeps the staff list.',
  );
