/** What only several connections can prove of accounts: two who are too late, two who switch each other off. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pino } from 'pino';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { openAccounts } from '@footboard/server/access/accounts';
import { accessKeys } from '@footboard/server/access/keys';
import type { AccessParts } from '@footboard/server/access/parts';
import type { Accounts } from '@footboard/server/access/ports';
import { openSessions } from '@footboard/server/access/sessions';
import { readConfig } from '@footboard/server/platform/config';
import { openDatabase } from '@footboard/server/platform/database';
import type { Database } from '@footboard/server/platform/database';
import { systemClock } from '@footboard/server/platform/clock';
import { migrate } from '@footboard/server/platform/migrate';
import { newMasterKey } from '@footboard/server/vault/master-key';
import { ownDatabase } from './postgres.ts';

const PASSWORD = 'lanterns under rain';

describe('accounts on PostgreSQL, raced by two processes', () => {
  let own: Awaited<ReturnType<typeof ownDatabase>>;
  const databases: Database[] = [];
  const keys = accessKeys(newMasterKey());
  let parts: readonly AccessParts[];
  let both: readonly [Accounts, Accounts];

  beforeAll(async () => {
    own = await ownDatabase();
    for (let n = 0; n < 2; n++)
      databases.push(await openDatabase({ databaseUrl: own.url, dataDir: 'unused' }));
    await migrate(databases[0]!);
    parts = databases.map((database) => ({
      database,
      keys,
      clock: systemClock,
      config: readConfig({}),
      logger: pino({ level: 'silent' }),
    }));
    both = [openAccounts(parts[0]!), openAccounts(parts[1]!)];
  });
  afterAll(async () => {
    for (const database of databases) await database.close();
    await own?.drop();
  });

  let people = 0;
  async function ready(wide: boolean): Promise<string> {
    const staff = `person-${++people}` as StaffId;
    const { account } = await both[0].make({ staff, name: staff, wide });
    const { token } = await both[0].invite(account);
    await both[0].accept({ token, signInName: staff, password: PASSWORD });
    return account;
  }

  it('ACCOUNT-3 given one link is used by both at once, one of them gets in', async () => {
    for (let round = 0; round < 10; round++) {
      const { account } = await both[0].make({
        staff: `round-${round}` as StaffId,
        name: 'Round',
        wide: false,
      });
      const { token } = await both[0].invite(account);
      const taken = await Promise.allSettled(
        both.map((one, n) => one.accept({ token, signInName: `round-${round}-${n}`, password: PASSWORD })),
      );
      expect(taken.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    }
  });

  it('ACCOUNT-4 given two who keep the accounts switch each other off at once, one of them stays', async () => {
    const [one, two] = [await ready(true), await ready(true)];
    for (let round = 0; round < 25; round++) {
      const done = await Promise.allSettled([both[0].setActive(one, false), both[1].setActive(two, false)]);
      expect(done.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
      await both[0].setActive(one, true);
      await both[0].setActive(two, true);
    }
  });

  it('ACCOUNT-2 given both start for the first time at once, both links are for one account', async () => {
    await databases[0]!.query('delete from account');
    const links = await Promise.all(both.map((one) => one.inviteFirst()));
    expect(new Set(links.map((link) => link!.account)).size).toBe(1);
    const [row] = await databases[0]!.query<{ n: number }>('select count(*)::bigint as n from account');
    expect(row!.n).toBe(1);
  });

  it('SESSION-3 given a session ends in one process, it is over in the other within some seconds', async () => {
    const account = await ready(false);
    const sessions = parts.map((one, n) => openSessions(one, both[n]!));
    const { token } = await sessions[0]!.begin((await both[0].byId(account))!);
    expect(await sessions[1]!.person(token)).toMatchObject({ account });
    await both[0].setActive(account, false);
    expect(await sessions[0]!.person(token)).toBeNull();
    await expect.poll(() => sessions[1]!.person(token), { timeout: 5_000, interval: 250 }).toBeNull();
  });
});
