/** Near misses and strain: told by anybody of the ward, read by the handling coordinator, counted for the manager. */
import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import type { Request } from 'express';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { tellConcern } from '@footboard/shared/wire/concerns';
import type { ConcernCounts, ConcernList } from '@footboard/shared/wire/concerns';
import { lookerOf } from '../access/access-log.ts';
import { namesOf } from '../access/names.ts';
import { ACCESS_LOG, ACCOUNTS } from '../access/ports.ts';
import type { AccessLog, Accounts } from '../access/ports.ts';
import { CONCERNS } from '../capabilities/concerns/concerns.ts';
import type { Concerns } from '../capabilities/concerns/concerns.ts';
import { countsOf } from '../capabilities/concerns/counts.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { CLOCK } from '../platform/clock.ts';
import type { Clock } from '../platform/clock.ts';
import { VAULT } from '../vault/vault.ts';
import type { Vault } from '../vault/vault.ts';
import { Allowed, identityOf } from './allowed.ts';
import { wardNamed } from './asked.ts';
import { checked } from './checked.ts';

const NO_NAME = '(name not known)';

@Controller('api/wards/:ward')
export class ConcernsController {
  constructor(
    @Inject(CONCERNS) private readonly concerns: Concerns,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(ACCOUNTS) private readonly accounts: Accounts,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(VAULT) private readonly vault: Vault,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Makes no line in the access log: who told it is nobody's business but theirs. */
  @Post('concerns')
  @HttpCode(204)
  @Allowed('tell-concern')
  async tell(@Param('ward') ward: string, @Body() body: unknown, @Req() request: Request): Promise<void> {
    const state = await this.#ward(ward);
    const told = checked(tellConcern, body);
    const { staff } = lookerOf(identityOf(request));
    if (told.named && staff === null) throw new Answered(nobodyToName());
    await this.concerns.tell(state.ward, told, told.named ? staff : null);
  }

  @Get('concerns')
  @Allowed('read-concerns')
  async list(@Param('ward') ward: string, @Req() request: Request): Promise<ConcernList> {
    const state = await this.#ward(ward);
    this.accessLog.note({ ward: state.ward, what: 'read-concerns', ...lookerOf(identityOf(request)) });
    const found = await this.concerns.list(state.ward);
    const people = [...new Set(found.flatMap(({ by }) => (by === null ? [] : [by])))];
    const names = await namesOf({ ward: state, vault: this.vault, accounts: this.accounts }, people);
    return {
      ward: state.ward,
      concerns: found.map(({ by, about, words, ...one }) => ({
        ...one,
        about: [...about],
        words: [...words],
        by: by === null ? null : { staff: by, name: names.get(by) ?? NO_NAME },
      })),
    };
  }

  @Get('concern-counts')
  @Allowed('count-concerns')
  async counts(@Param('ward') ward: string): Promise<ConcernCounts> {
    const state = await this.#ward(ward);
    return { ward: state.ward, ...countsOf(await this.concerns.list(state.ward), this.clock.now()) };
  }

  async #ward(id: string): Promise<WardState> {
    const { state } = await this.streams.ward(wardNamed(id));
    if (!state) throw new Answered(noSuchWard(id));
    return state;
  }
}

const nobodyToName = () =>
  problem(
    'sign-in-first',
    'Nobody has signed in here, so there is no name to put to it.',
    'Tell it without a name, or sign in first.',
  );
