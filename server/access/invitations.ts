/** One-time links: the only way to a first password. The database holds the hash of the token. */
import { Answered, problem } from '../commanding/problems.ts';
import { freshId } from '../platform/ids.ts';
import {
  COLUMNS,
  FIRST_ACCOUNT,
  KEEPS_ACCOUNTS,
  foldName,
  noSuchAccount,
  orTaken,
  rowsUnder,
  signInNameTaken,
} from './account-rows.ts';
import type { AccountRow } from './account-rows.ts';
import { newToken, tokenHash } from './keys.ts';
import type { AccessParts } from './parts.ts';
import { hashSecret, refuseCommon, refuseCommonCode } from './passwords.ts';
import type { Accounts, Invitation } from './ports.ts';

const DAY_MS = 24 * 60 * 60_000;
/** Ours, no source; owner: whoever runs the server. A week reaches somebody on nights or on leave. */
const INVITED_FOR_MS = 7 * DAY_MS;
/** The first administrator's link is on a screen or in a console's history: a day is long enough. */
const FIRST_LINK_MS = DAY_MS;

/** Behind `#` a browser keeps it to itself: the token reaches no server's log and no Referer. */
export const joinPath = ({ token }: Pick<Invitation, 'token'>): string => `/join#${token}`;

type Row = AccountRow & { readonly ends: number };

export type Invitations = Pick<Accounts, 'firstRun' | 'inviteFirst' | 'invite' | 'readInvitation' | 'accept'>;

/** @param changed told of the account whose sessions end, because its password is new. */
export function openInvitations(
  { database, keys, clock }: AccessParts,
  changed: (accounts: readonly string[]) => void,
): Invitations {
  const rows = rowsUnder(keys, clock);

  async function firstRun(): Promise<boolean> {
    const [one] = await database.query(`select 1 as kept from account where ${KEEPS_ACCOUNTS} limit 1`);
    return one === undefined;
  }

  /** Earlier links of the account go in the same statement: there is never more than one. */
  async function invite(account: string, forMs: number = INVITED_FOR_MS): Promise<Invitation> {
    const token = newToken();
    const ends = clock.now() + forMs;
    const made = await database.query(
      `with gone as (delete from invitation where account = $2)
       insert into invitation (token_hash, account, ends)
       select $1, account.account, $3 from account where account.account = $2 and account.active
       returning account`,
      [tokenHash(token), account, ends],
    );
    if (made.length === 0) throw noSuchAccount();
    return { account, token, ends };
  }

  /** The account an open link is for. The first run's link is dead once somebody keeps the accounts. */
  async function open(token: string): Promise<Row | null> {
    const [row] = await database.query<Row>(
      `select ${COLUMNS}, invitation.ends as ends
       from invitation join account on account.account = invitation.account
       where invitation.token_hash = $1 and invitation.used is null and invitation.ends > $2
         and account.active`,
      [tokenHash(token), clock.now()],
    );
    if (!row || (row.account === FIRST_ACCOUNT && row.password === null && !(await firstRun()))) return null;
    return row;
  }

  return {
    firstRun,
    invite: (account) => invite(account),

    async inviteFirst() {
      if (!(await firstRun())) return null;
      await database.query(
        `insert into account (account, staff, profile, wide, made) values ($1, $2, $3, true, $4)
         on conflict (account) do nothing`,
        [FIRST_ACCOUNT, freshId(), rows.seal(FIRST_ACCOUNT, { name: '' }), clock.now()],
      );
      return invite(FIRST_ACCOUNT, FIRST_LINK_MS);
    },

    async readInvitation(token) {
      const row = await open(token);
      if (!row) return null;
      const { name } = rows.profileOf(row);
      return name === ''
        ? { kind: 'first-run', name: null, ends: row.ends }
        : { kind: 'account', name, ends: row.ends };
    },

    async accept({ token, name: given, signInName, password, code, avoid = [] }) {
      const row = await open(token);
      if (!row) throw invitationOver();
      const name = rows.profileOf(row).name || given;
      if (name === undefined) throw nameMissing();
      refuseCommon(password, [signInName, name, ...avoid]);
      if (code !== undefined) refuseCommonCode(code);
      const passwordHash = await hashSecret(password);
      const codeHash = code === undefined ? null : await hashSecret(code);
      // One statement: of two who use the link at the same moment one comes too late, a name that is
      // taken leaves the link as it was, and no second link that two servers made at once lives on.
      const [done] = await orTaken(signInNameTaken, () =>
        database.query<AccountRow>(
          `with taken as (
             update invitation set used = $2
             where token_hash = $1 and used is null and ends > $2 returning account
           ), others as (
             delete from invitation using taken
             where invitation.account = taken.account and invitation.token_hash <> $1
           )
           update account set sign_in_key = $3, password = $4, code = coalesce($5, code), profile = $6,
             edition = edition + 1
           from taken
           where account.account = taken.account and account.active
           returning ${COLUMNS}`,
          [
            tokenHash(token),
            clock.now(),
            keys.lookUp('sign-in-name', foldName(signInName)),
            passwordHash,
            codeHash,
            rows.seal(row.account, { name, signInName: signInName.trim() }),
          ],
        ),
      );
      if (!done) throw invitationOver();
      changed([done.account]);
      return rows.recordOf(done);
    },
  };
}

export const invitationOver = () =>
  new Answered(
    problem(
      'invitation-over',
      'That link was used already, has run out, or a newer one was made.',
      'Ask whoever gave it to you for a new one. The first link of all is printed when the server starts.',
    ),
  );

function nameMissing(): Answered {
  const detail = 'this field is missing';
  const remedy = 'give the name that others know you by';
  return new Answered(
    problem('invalid-request', `/name: ${detail}`, remedy, {
      errors: [{ pointer: '/name', detail, remedy }],
    }),
  );
}
