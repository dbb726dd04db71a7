/** A row of the account table, and what the parts of access make of it. */
import type { StaffId } from '@footboard/shared/kernel/ids';
import { Answered, problem } from '../commanding/problems.ts';
import type { ProblemCode } from '../commanding/problems.ts';
import { refusalOf } from '../platform/database-errors.ts';
import type { Clock } from '../platform/clock.ts';
import type { AccessKeys } from './keys.ts';
import type { AccountRecord } from './ports.ts';

/** The account that the first run's link fills; hidden until then. */
export const FIRST_ACCOUNT = 'first-administrator';

export interface AccountRow {
  readonly account: string;
  readonly staff: StaffId;
  readonly password: string | null;
  readonly code: string | null;
  readonly outside_key: string | null;
  readonly profile: Uint8Array;
  readonly wide: boolean;
  readonly active: boolean;
  readonly edition: number;
  /** End of an open invitation. */
  readonly invited: number | null;
}

export const COLUMNS = `account.account, account.staff, account.password, account.code, account.outside_key,
  account.profile, account.wide, account.active, account.edition,
  (select max(i.ends) from invitation i where i.account = account.account and i.used is null) as invited`;

/** SQL over account: could sign in and keep the accounts of the whole server. */
export const KEEPS_ACCOUNTS =
  '(account.wide and (account.password is not null or account.outside_key is not null))';

/** Sealed beside the row; the name is empty until the first administrator gives theirs. */
export interface Profile {
  readonly name: string;
  readonly signInName?: string;
}

/** Typed on whatever keyboard, in whatever case, it is one name (Unicode NFKC, then lower case). */
export const foldName = (signInName: string): string => signInName.normalize('NFKC').trim().toLowerCase();

export interface Rows {
  seal(account: string, profile: Profile): Buffer;
  profileOf(row: Pick<AccountRow, 'account' | 'profile'>): Profile;
  recordOf(row: AccountRow): AccountRecord;
}

const context = (account: string) => `profile of ${account}`;

export function rowsUnder(keys: AccessKeys, clock: Clock): Rows {
  const profileOf: Rows['profileOf'] = ({ account, profile }) =>
    JSON.parse(keys.open(context(account), profile)) as Profile;
  return {
    seal: (account, profile) => keys.seal(context(account), JSON.stringify(profile)),
    profileOf,
    recordOf: (row) => ({
      account: row.account,
      staff: row.staff,
      name: profileOf(row).name,
      wide: row.wide,
      active: row.active,
      edition: row.edition,
      state:
        row.password !== null
          ? 'ready'
          : row.outside_key !== null
            ? 'outside'
            : row.invited !== null && row.invited > clock.now()
              ? 'invited'
              : 'none',
      hasCode: row.code !== null,
    }),
  };
}

/** SQLSTATE 23505: a unique key holds that value already (PostgreSQL manual, appendix A). */
export async function orTaken<T>(answer: () => Answered, run: () => Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    throw refusalOf(error)?.code === '23505' ? answer() : error;
  }
}

const atField = (code: ProblemCode, field: string, detail: string, remedy: string) =>
  new Answered(problem(code, detail, remedy, { errors: [{ pointer: field, detail, remedy }] }));

export const signInNameTaken = () =>
  atField(
    'sign-in-name-taken',
    '/signInName',
    'Somebody else signs in with that name.',
    'Choose another one.',
  );
export const badgeTaken = () =>
  atField(
    'badge-taken',
    '/newBadge',
    'That badge belongs to somebody else.',
    'Scan your own, or ask whoever keeps the accounts.',
  );
export const wrongPassword = () =>
  atField('wrong-password', '/password', 'That is not your password now.', 'Type the one you sign in with.');
export const noSuchAccount = () =>
  new Answered(
    problem('no-such-account', 'There is no account with that id here.', 'Choose one from the list.'),
  );
