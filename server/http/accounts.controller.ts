import { Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import type { Request } from 'express';
import { accountActiveRequest, newAccountRequest } from '@footboard/shared/wire/access';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { noSuchAccount } from '../access/account-rows.ts';
import type { KnownPerson } from '../access/identity.ts';
import { joinPath } from '../access/invitations.ts';
import { ACCESS_LOG, ACCOUNTS } from '../access/ports.ts';
import type { AccessLog, AccountRecord, Accounts } from '../access/ports.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { Allowed, identityOf } from './allowed.ts';
import { wardNamed } from './asked.ts';
import { checked } from './checked.ts';

/**
 * Who may come in. A ward's keepers see to the accounts of its own staff; whoever is an
 * administrator of the server, or on several wards, is for an administrator of the server: a new link
 * is as good as being that person, and a staff list can be written onto by its own ward.
 */
@Controller('api')
export class AccountsController {
  constructor(
    @Inject(ACCOUNTS) private readonly accounts: Accounts,
    @Inject(ACCESS_LOG) private readonly accessLog: AccessLog,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(BOARDS) private readonly boards: Boards,
  ) {}

  @Get('accounts')
  @Allowed('keep-all-accounts')
  async all() {
    return { accounts: (await this.accounts.list()).map(shown) };
  }

  @Post('accounts')
  @HttpCode(200)
  @Allowed('keep-all-accounts')
  async makeAny(@Req() request: Request) {
    const by = keeper(request);
    const account = await this.accounts.make(checked(newAccountRequest, request.body));
    return this.#invite('', by, account);
  }

  @Post('accounts/:account/invitation')
  @HttpCode(200)
  @Allowed('keep-all-accounts')
  async inviteAny(@Param('account') account: string, @Req() request: Request) {
    const by = keeper(request);
    return this.#invite('', by, await this.#account(account));
  }

  @Post('accounts/:account/active')
  @HttpCode(200)
  @Allowed('keep-all-accounts')
  async switchAny(@Param('account') account: string, @Req() request: Request) {
    const by = keeper(request);
    const { active } = checked(accountActiveRequest, request.body);
    return this.#switch('', by, await this.#account(account), active);
  }

  @Get('wards/:ward/accounts')
  @Allowed('keep-accounts')
  async ofWard(@Param('ward') ward: string) {
    const { staff } = await this.#ward(ward);
    const accounts = await this.accounts.list();
    return { accounts: accounts.filter((account) => staff.has(account.staff)).map(shown) };
  }

  @Post('wards/:ward/accounts')
  @HttpCode(200)
  @Allowed('keep-accounts')
  async make(@Param('ward') ward: string, @Req() request: Request) {
    const by = keeper(request);
    const asked = checked(newAccountRequest, request.body);
    const state = await this.#ward(ward);
    if (!state.staff.get(asked.staff)?.active) throw notOnList();
    // An account made here would speak for that id wherever it is on a list.
    if (!by.wide && (asked.wide || (await this.#elsewhere(state, asked)))) throw forAdministrator();
    return this.#invite(state.ward, by, await this.accounts.make(asked));
  }

  @Post('wards/:ward/accounts/:account/invitation')
  @HttpCode(200)
  @Allowed('keep-accounts')
  async invite(@Param('ward') ward: string, @Param('account') account: string, @Req() request: Request) {
    const by = keeper(request);
    const state = await this.#ward(ward);
    return this.#invite(state.ward, by, await this.#accountOf(state, account, by));
  }

  @Post('wards/:ward/accounts/:account/active')
  @HttpCode(200)
  @Allowed('keep-accounts')
  async switch(@Param('ward') ward: string, @Param('account') account: string, @Req() request: Request) {
    const by = keeper(request);
    const { active } = checked(accountActiveRequest, request.body);
    const state = await this.#ward(ward);
    return this.#switch(state.ward, by, await this.#accountOf(state, account, by), active);
  }

  async #invite(ward: WardId | '', by: KnownPerson, { account }: AccountRecord) {
    const invitation = await this.accounts.invite(account);
    this.accessLog.note({ ward, what: 'account-invited', staff: by.staff, words: account });
    return { account, path: joinPath(invitation), ends: invitation.ends };
  }

  async #switch(ward: WardId | '', by: KnownPerson, { account }: AccountRecord, active: boolean) {
    await this.accounts.setActive(account, active);
    const words = `${account} ${active ? 'on' : 'off'}`;
    this.accessLog.note({ ward, what: 'account-switched', staff: by.staff, words });
    return shown(await this.#account(account));
  }

  async #account(id: string): Promise<AccountRecord> {
    const account = await this.accounts.byId(id);
    if (!account) throw noSuchAccount();
    return account;
  }

  async #accountOf(ward: WardState, id: string, by: KnownPerson): Promise<AccountRecord> {
    const account = await this.#account(id);
    if (!ward.staff.has(account.staff)) throw noSuchAccount();
    if (!by.wide && (account.wide || (await this.#elsewhere(ward, account)))) throw forAdministrator();
    return account;
  }

  async #elsewhere(ward: WardState, { staff }: Pick<AccountRecord, 'staff'>): Promise<boolean> {
    const others = this.boards.wards().filter((other) => other !== ward.ward);
    const wards = await Promise.all(others.map((other) => this.streams.ward(other)));
    return wards.some(({ state }) => state?.staff.get(staff)?.active ?? false);
  }

  async #ward(id: string): Promise<WardState> {
    const { state } = await this.streams.ward(wardNamed(id));
    if (!state) throw new Answered(noSuchWard(id));
    return state;
  }
}

/** The edition is the server's own. */
const shown = ({ edition: _edition, ...account }: AccountRecord) => account;

/** @throws Answered sign-in-first: a code of a few digits is too little to hand out links with. */
function keeper(request: Request): KnownPerson {
  const { person } = identityOf(request);
  if (person?.via === 'session') return person;
  throw new Answered(
    problem(
      'sign-in-first',
      'Accounts are kept with a full sign-in.',
      'Sign in with your name and password, then do it again.',
    ),
  );
}

function notOnList(): Answered {
  const detail = 'Nobody active on the staff list of this ward has that id.';
  const remedy = 'Add them to the staff list first.';
  return new Answered(
    problem('invalid-request', detail, remedy, { errors: [{ pointer: '/staff', detail, remedy }] }),
  );
}
const forAdministrator = () =>
  new Answered(
    problem(
      'not-allowed',
      'That person is on another ward too, or keeps the accounts of the whole server.',
      'Ask an administrator of this server.',
    ),
  );
