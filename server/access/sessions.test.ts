import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { HOUR, MINUTE } from '@footboard/shared/kernel/times';
import { Answered } from '../commanding/problems.ts';
import { openAccounts } from './accounts.ts';
import { tokenHash } from './keys.ts';
import { openParts } from './parts.testkit.ts';
import type { TestParts } from './parts.testkit.ts';
import type { AccountRecord, Accounts, Sessions } from './ports.ts';
import { openSessions } from './sessions.ts';

let parts: TestParts;
let accounts: Accounts;
let sessions: Sessions;
let ended: string[];
let noor: AccountRecord;
let people = 0;

beforeAll(async () => {
  parts = await openParts({ SESSION_IDLE_MINUTES: '20', SESSION_HOURS: '8' });
}, 60_000);
afterAll(() => parts?.close());
beforeEach(async () => {
  accounts = openAccounts(parts);
  sessions = openSessions(parts, accounts);
  ended = [];
  sessions.onEnd((ids) => ended.push(...ids));
  noor = await accounts.make({ staff: `noor-${++people}` as StaffId, name: 'Noor Haddad', wide: false });
});

const signedIn = { via: 'session' };
const rowOf = async (token: string) =>
  (
    await parts.database.query<{ seen: number; ended: number | null }>(
      'select seen, ended from session where token_hash = $1',
      [tokenHash(token)],
    )
  )[0]!;
/** Another process on the same database. */
const elsewhere = () => {
  const others = openAccounts(parts);
  return { accounts: others, sessions: openSessions(parts, others) };
};

describe('a session', () => {
  it('SESSION-1 has a token of 256 random bits, of which the database holds the hash alone', async () => {
    const { token, session } = await sessions.begin(noor);
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    const rows = await parts.database.query('select * from session');
    expect(JSON.stringify(rows)).toContain(session);
    expect(JSON.stringify(rows)).not.toContain(token);
    expect(await sessions.person(token)).toMatchObject({ ...signedIn, staff: noor.staff, session });
    expect(await sessions.person(`${token.slice(0, -1)}_`)).toBeNull();
    expect(await sessions.person(session)).toBeNull();
    expect(await sessions.person(tokenHash(token))).toBeNull();
  });

  it('SESSION-2 ends after its idle time, one moment before it does not', async () => {
    const { token, session } = await sessions.begin(noor);
    parts.clock.at += 20 * MINUTE - 1;
    expect(await sessions.person(token)).toMatchObject(signedIn);
    parts.clock.at += 20 * MINUTE;
    expect(await sessions.person(token)).toEqual({ ranOut: noor.staff });
    expect(ended).toEqual([session]);
    // It does not come back by being used.
    expect(await sessions.person(token)).toEqual({ ranOut: noor.staff });
  });

  it('SESSION-2 is not kept going by looks that nobody asked for', async () => {
    const { token } = await sessions.begin(noor);
    for (let minute = 0; minute < 19; minute++) {
      parts.clock.at += MINUTE;
      expect(await sessions.person(token, 'quietly')).toMatchObject(signedIn);
    }
    parts.clock.at += MINUTE;
    expect(await sessions.person(token, 'quietly')).toEqual({ ranOut: noor.staff });
  });

  it('SESSION-2 ends after its absolute time however busy it was', async () => {
    const { token } = await sessions.begin(noor);
    for (let quarter = 0; quarter < 31; quarter++) {
      parts.clock.at += 15 * MINUTE;
      expect(await sessions.person(token)).toMatchObject(signedIn);
    }
    const last = await sessions.person(token);
    expect(last && 'until' in last && last.until - parts.clock.at).toBe(15 * MINUTE);
    parts.clock.at += 15 * MINUTE;
    expect(await sessions.person(token)).toEqual({ ranOut: noor.staff });
  });

  it('says for a day whose it was when it ran out, then nothing', async () => {
    const { token } = await sessions.begin(noor);
    parts.clock.at += 20 * MINUTE + 24 * HOUR - 1;
    expect(await sessions.person(token)).toEqual({ ranOut: noor.staff });
    parts.clock.at += 1;
    expect(await sessions.person(token)).toBeNull();
  });

  it('is kept as seen once a minute at most, so that another process knows of it', async () => {
    const { token } = await sessions.begin(noor);
    const began = parts.clock.at;
    parts.clock.at += 30_000;
    await sessions.person(token);
    expect((await rowOf(token)).seen).toBe(began);
    parts.clock.at += 30_000;
    await sessions.person(token);
    await expect.poll(async () => (await rowOf(token)).seen).toBe(began + MINUTE);
    parts.clock.at += 19 * MINUTE + 30_000;
    expect(await elsewhere().sessions.person(token)).toMatchObject(signedIn);
  });

  it('given signing out, it is over at once, here and for whoever asks the database, and not as run out', async () => {
    const { token, session } = await sessions.begin(noor);
    await sessions.person(token);
    await sessions.end(session);
    expect(await sessions.person(token)).toBeNull();
    expect(await elsewhere().sessions.person(token)).toBeNull();
    expect(ended).toEqual([session]);
    expect((await rowOf(token)).ended).toBe(parts.clock.at);
  });

  it.each([
    ['a role that changed', () => accounts.raiseEdition([noor.staff])],
    ['switching off', () => accounts.setActive(noor.account, false)],
    ['a new password', () => joined('a first password of mine')],
  ])(
    'SESSION-3 given %s, every session of that person ends at once, and nobody else’s',
    async (_why, end) => {
      const mine = [await sessions.begin(noor), await sessions.begin(noor)];
      const other = await sessions.begin(
        await accounts.make({ staff: `ada-${people}` as StaffId, name: 'Ada', wide: false }),
      );
      for (const { token } of [...mine, other]) expect(await sessions.person(token)).toMatchObject(signedIn);
      await end();
      for (const { token } of mine) expect(await sessions.person(token)).toBeNull();
      expect(await sessions.person(other.token)).toMatchObject(signedIn);
      expect(ended.toSorted()).toEqual(mine.map(({ session }) => session).toSorted());
    },
  );

  it('SESSION-3 given an end in another process, it is over here within some seconds', async () => {
    const { token } = await sessions.begin(noor);
    await sessions.person(token);
    await elsewhere().accounts.raiseEdition([noor.staff]);
    await expect.poll(() => sessions.person(token), { timeout: 5_000, interval: 250 }).toBeNull();
  });

  it('given an end while it is being looked up, the look does not bring it back', async () => {
    const { token, session } = await sessions.begin(noor);
    let read = () => {};
    const wasRead = new Promise<void>((done) => (read = done));
    let go = () => {};
    const mayGo = new Promise<void>((done) => (go = done));
    /** The first look at the session is read, and its answer kept back. */
    const slow = openSessions(
      {
        ...parts,
        database: {
          ...parts.database,
          query: async <Row>(sql: string, params?: readonly unknown[]): Promise<Row[]> => {
            const rows = await parts.database.query<Row>(sql, params);
            if (sql.includes('from session join')) {
              read();
              await mayGo;
            }
            return rows;
          },
        },
      },
      accounts,
    );
    const looking = slow.person(token);
    await wasRead;
    await slow.end(session);
    go();
    expect(await looking).toBeNull();
    expect(await slow.person(token)).toBeNull();
  });

  it('is not begun for somebody switched off, not even with an older record of them', async () => {
    await accounts.setActive(noor.account, false);
    await expect(sessions.begin(noor)).rejects.toBeInstanceOf(Answered);
  });

  it('counts as just begun for five minutes', async () => {
    const { session } = await sessions.begin(noor);
    expect(await sessions.justBegun(session)).toBe(true);
    parts.clock.at += 5 * MINUTE;
    expect(await sessions.justBegun(session)).toBe(false);
    expect(await sessions.justBegun('no-such-session')).toBe(false);
  });
});

async function joined(password: string): Promise<void> {
  const { token } = await accounts.invite(noor.account);
  await accounts.accept({ token, signInName: `noor-${people}`, password });
}
