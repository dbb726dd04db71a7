/**
 * The short code on a shared device: it opens two minutes in which that person signs on that device.
 * Wrong tries are counted per person and device; a locked person signs in fully, and raising caution
 * stays possible (it needs no code: author-policy.ts).
 */
import type { DeviceId, StaffId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import type { Problem } from '@footboard/shared/wire/http';
import { Answered, problem } from '../commanding/problems.ts';
import { newToken, tokenHash } from './keys.ts';
import type { AccessParts } from './parts.ts';
import type { Accounts, Signing } from './ports.ts';

/** The user's rule: two minutes, counted from the code, not drawn out by use. */
export const SIGNING_MS = 2 * MINUTE;
/**
 * Wrong codes in a row until a person is locked on a device. Ours; NIST SP 800-63B (5.2.2) allows no
 * more than 100, and a code of six digits asks for far fewer (from memory).
 */
export const TRIES = 5;

export function openSigning(
  { database, clock }: Pick<AccessParts, 'database' | 'clock'>,
  accounts: Pick<Accounts, 'checkCode'>,
): Signing {
  /** One code a device at a time, so that tries sent together are counted one after the other. */
  const turns = new Map<DeviceId, Promise<unknown>>();
  async function inTurn<T>(device: DeviceId, work: () => Promise<T>): Promise<T> {
    const turn = (turns.get(device) ?? Promise.resolve()).catch(() => {}).then(work);
    turns.set(device, turn);
    try {
      return await turn;
    } finally {
      if (turns.get(device) === turn) turns.delete(device);
    }
  }

  const isLocked = async (staff: StaffId, device: DeviceId): Promise<boolean> => {
    const rows = await database.query(
      'select 1 from code_tries where staff = $1 and device = $2 and locked is not null',
      [staff, device],
    );
    return rows.length > 0;
  };

  /** Counts a wrong code. Answers how many tries are left. */
  async function countWrong(staff: StaffId, device: DeviceId): Promise<number> {
    const [row] = await database.query<{ wrong: number }>(
      `insert into code_tries (staff, device, wrong) values ($1, $2, 1)
       on conflict (staff, device) do update set
         wrong = code_tries.wrong + 1,
         locked = case when code_tries.wrong + 1 >= $3 then coalesce(code_tries.locked, $4) end
       returning wrong`,
      [staff, device, TRIES, clock.now()],
    );
    return Math.max(0, TRIES - row!.wrong);
  }

  return {
    open(device, who, code, isMember) {
      return inTurn(device.device, async () => {
        if (device.kind !== 'shared') throw new Answered(notShared());
        if (who.staff !== undefined) {
          if (!isMember(who.staff)) throw new Answered(notHere());
          if (await isLocked(who.staff, device.device)) throw new Answered(locked());
        }
        const checked = await accounts.checkCode(who, code);
        // A name without an account or code is counted like any other: the answer tells nothing.
        const staff = checked?.staff ?? who.staff;
        if (staff === undefined) throw new Answered(wrongBadge());
        if (!isMember(staff)) throw new Answered(checked?.right ? notHere() : wrongBadge());
        if (await isLocked(staff, device.device)) throw new Answered(locked());
        if (!checked?.right) {
          const left = await countWrong(staff, device.device);
          throw new Answered(left === 0 ? locked() : wrongCode(left));
        }
        const token = newToken();
        const until = clock.now() + SIGNING_MS;
        await database.query('delete from code_tries where staff = $1 and device = $2', [
          staff,
          device.device,
        ]);
        // One person at a time signs on a device: whoever came before has gone.
        await database.query('delete from signing_window where device = $1 or ends <= $2', [
          device.device,
          clock.now(),
        ]);
        await database.query(
          'insert into signing_window (token_hash, device, staff, ends) values ($1, $2, $3, $4)',
          [tokenHash(token), device.device, staff, until],
        );
        return { token, staff, until };
      });
    },

    async person(token, device) {
      const [row] = await database.query<{ staff: StaffId; ends: number }>(
        `select signing_window.staff, signing_window.ends
         from signing_window join account on account.staff = signing_window.staff
         where token_hash = $1 and device = $2 and ends > $3 and account.active`,
        [tokenHash(token), device.device, clock.now()],
      );
      if (!row || device.kind !== 'shared') return null;
      // The code is short: it never makes an administrator of the whole server.
      return { account: null, staff: row.staff, wide: false, via: 'signing', session: null, until: row.ends };
    },

    async close(token) {
      await database.query('delete from signing_window where token_hash = $1', [tokenHash(token)]);
    },

    async unlock(staff) {
      await database.query('delete from code_tries where staff = $1', [staff]);
    },
  };
}

const CAUTION = 'Raising caution (a trigger, a hold) stays possible without a code.';

const wrongCode = (left: number): Problem =>
  problem(
    'wrong-code',
    left === 1
      ? 'The code is not right. One try is left on this device.'
      : `The code is not right. ${left} tries are left on this device.`,
    `Type it again, or sign in with name and password. ${CAUTION}`,
  );
const wrongBadge = (): Problem =>
  problem(
    'wrong-code',
    'Badge and code do not belong together, or the badge is not known.',
    `Scan it again, choose your name instead, or sign in with name and password. ${CAUTION}`,
  );
const locked = (): Problem =>
  problem(
    'code-locked',
    `There were ${TRIES} wrong codes for this person on this device.`,
    `Sign in fully, with name and password: that opens the code again. ${CAUTION}`,
  );
const notHere = (): Problem =>
  problem(
    'not-on-this-ward',
    'That person is not an active member of the staff list of this ward.',
    'Choose another name, or ask whoever keeps the staff list.',
  );
export const notShared = (): Problem =>
  problem(
    'not-a-shared-device',
    'A short code works only on a device that is paired with a ward as a shared one.',
    'Sign in with name and password, or have this device paired.',
  );
