/** People who may come in. Names, sign-in names and badges never stand in clear in the database. */
import { Answered, problem } from '../commanding/problems.ts';
import { freshId } from '../platform/ids.ts';
import {
  COLUMNS,
  FIRST_ACCOUNT,
  KEEPS_ACCOUNTS,
  badgeTaken,
  foldName,
  noSuchAccount,
  orTaken,
  rowsUnder,
  wrongPassword,
} from './account-rows.ts';
import type { AccountRow } from './account-rows.ts';
import { openInvitations } from './invitations.ts';
import type { AccessParts } from './parts.ts';
import { hashSecret, isSecret, refuseCommon, refuseCommonCode } from './passwords.ts';
import type { AccountRecord, Accounts } from './ports.ts';

export function openAccounts(parts: AccessParts): Accounts {
  const { database, keys, clock } = parts;
  const rows = rowsUnder(keys, clock);
  const listeners = new Set<(accounts: readonly string[]) => void>();
  /** Whatever ends sessions is told at once, so that nobody goes on in this process for a moment. */
  const changed = (accounts: readonly string[]) => {
    for (const listener of listeners) listener(accounts);
  };

  async function oneWhere(condition: string, value: string): Promise<AccountRow | null> {
    const [row] = await database.query<AccountRow>(`select ${COLUMNS} from account where ${condition}`, [
      value,
    ]);
    return row ?? null;
  }
  const record = (row: AccountRow | null): AccountRecord | null => row && rows.recordOf(row);

  return {
    ...openInvitations(parts, changed),

    async list() {
      const found = await database.query<AccountRow>(
        `select ${COLUMNS} from account where account <> $1 or password is not null`,
        [FIRST_ACCOUNT],
      );
      return found.map(rows.recordOf).toSorted((a, b) => a.name.localeCompare(b.name));
    },
    byStaff: async (staff) => record(await oneWhere('staff = $1', staff)),
    byId: async (account) => record(await oneWhere('account = $1', account)),

    async make({ staff, name, wide }) {
      const account = freshId();
      const [row] = await database.query<AccountRow>(
        `insert into account (account, staff, profile, wide, made) values ($1, $2, $3, $4, $5)
         on conflict (staff) do nothing returning ${COLUMNS}`,
        [account, staff, rows.seal(account, { name }), wide, clock.now()],
      );
      if (!row) {
        throw new Answered(
          problem(
            'staff-has-account',
            'That person has an account already.',
            'Make a new link for the account they have.',
          ),
        );
      }
      return rows.recordOf(row);
    },

    async check(signInName, password) {
      const row = await oneWhere('sign_in_key = $1', keys.lookUp('sign-in-name', foldName(signInName)));
      const right = await isSecret(row?.password ?? null, password);
      return right && row?.active ? rows.recordOf(row) : null;
    },

    async checkCode({ staff, badge }, code) {
      const row =
        staff === undefined
          ? await oneWhere('badge_key = $1', keys.lookUp('badge', badge ?? ''))
          : await oneWhere('staff = $1', staff);
      const right = await isSecret(row?.code ?? null, code);
      return row?.active && row.code !== null ? { staff: row.staff, right } : null;
    },

    async changeSecret(account, { password, newPassword, newCode, newBadge, avoid = [] }) {
      const row = await oneWhere('account = $1', account);
      // Without a password of ours there is only the sign-on just now, which the caller has seen to.
      const proven =
        password === null
          ? row !== null && row.password === null && newPassword === undefined
          : await isSecret(row?.password ?? null, password);
      if (!row || !proven) throw wrongPassword();
      if (newPassword !== undefined) {
        const { name, signInName = '' } = rows.profileOf(row);
        refuseCommon(newPassword, [name, signInName, ...avoid]);
      }
      if (newCode !== undefined) refuseCommonCode(newCode);
      const [newHash, newCodeHash] = await Promise.all(
        [newPassword, newCode].map((secret) => (secret === undefined ? null : hashSecret(secret))),
      );
      await orTaken(badgeTaken, () =>
        database.query(
          `update account set password = coalesce($2, password), code = coalesce($3, code),
             badge_key = coalesce($4, badge_key),
             edition = edition + case when $2::text is null then 0 else 1 end
           where account = $1`,
          [account, newHash, newCodeHash, newBadge === undefined ? null : keys.lookUp('badge', newBadge)],
        ),
      );
      if (newPassword !== undefined) changed([account]);
    },

    async setActive(account, active) {
      // Rows of all who keep accounts are held, so that two of them cannot switch each other off.
      const done = await database.query(
        `with keepers as (
           select account from account where active and ${KEEPS_ACCOUNTS} order by account for update
         )
         update account set active = $2, edition = edition + 1
         where account = $1 and ($2 or not (${KEEPS_ACCOUNTS})
           or exists (select 1 from keepers where keepers.account <> $1))
         returning account`,
        [account, active],
      );
      if (done.length > 0) {
        changed([account]);
        return;
      }
      if (!(await oneWhere('account = $1', account))) throw noSuchAccount();
      throw new Answered(
        problem(
          'last-administrator',
          'Nobody else could keep the accounts of this server then.',
          'Make another administrator first, and let them sign in once.',
        ),
      );
    },

    async outside({ issuer, subject, name, wide }) {
      const key = keys.lookUp('outside', `${issuer}\0${subject}`);
      const account = freshId();
      await database.query(
        `insert into account (account, staff, outside_key, profile, wide, made)
         values ($1, $2, $3, $4, $5, $6) on conflict (outside_key) do nothing`,
        [account, freshId(), key, rows.seal(account, { name }), wide, clock.now()],
      );
      const known = (await oneWhere('outside_key = $1', key))!;
      const before = rows.recordOf(known);
      if (before.name === name && before.wide === wide) return before;
      const profile = rows.seal(known.account, { ...rows.profileOf(known), name });
      const [row] = await database.query<AccountRow>(
        `update account set profile = $2, wide = $3,
           edition = edition + case when wide = $3 then 0 else 1 end
         where account = $1 returning ${COLUMNS}`,
        [known.account, profile, wide],
      );
      if (before.wide !== wide) changed([known.account]);
      return rows.recordOf(row!);
    },

    async remove(staff) {
      // A switched-off account keeps nothing up: who keeps the accounts is settled before, by setActive.
      const gone = await database.query<{ account: string }>(
        'delete from account where staff = $1 and not (active and wide) returning account',
        [staff],
      );
      changed(gone.map(({ account }) => account));
    },

    async raiseEdition(staff) {
      const raised = await database.query<{ account: string }>(
        'update account set edition = edition + 1 where staff = any ($1) returning account',
        [[...staff]],
      );
      changed(raised.map(({ account }) => account));
    },

    onEdition(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
