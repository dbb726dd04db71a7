/**
 * Pairing: a screen shows a code, somebody of the ward approves it, the screen fetches its key once.
 * The code is short because a person types it; it is good for ten minutes and for approving only. The
 * key is 256 random bits; after the screen has it, the database holds nothing but its hash.
 */
import { randomInt } from 'node:crypto';
import type { DeviceId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { BoardLevel } from '@footboard/shared/capabilities/people/policy/document';
import { MINUTE } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { Answered, problem } from '../commanding/problems.ts';
import { freshId } from '../platform/ids.ts';
import type { KnownDevice } from './identity.ts';
import { newToken, tokenHash } from './keys.ts';
import type { AccessParts } from './parts.ts';

/** Ours, no source: long enough to walk to a workstation, short enough that a code left behind is dead. */
export const PAIRING_MS = 10 * MINUTE;
/** Screens that wait to be paired from one place at a time, and in all. Ours, no source. */
export const OPEN_PER_ORIGIN = 10;
export const OPEN_IN_ALL = 500;
/** An approved screen that was away for a moment may still fetch its key. */
const FETCH_GRACE_MS = 5 * MINUTE;

/**
 * Letters and digits that are not taken for one another on a screen across a room, and no vowels, so
 * that no word comes out. 20 signs, 8 of them: 34 bits, for ten minutes.
 */
const SIGNS = 'CDFHJKMNPQRTVWXY3479';
const freshCode = () => Array.from({ length: 8 }, () => SIGNS[randomInt(SIGNS.length)]!).join('');
/** As a person types it: small letters, spaces and dashes do not matter. */
const foldCode = (typed: string) => typed.toUpperCase().replaceAll(/[^A-Z0-9]/g, '');
const inGroups = (code: string) => `${code.slice(0, 4)} ${code.slice(4)}`;

export interface Approved {
  readonly device: DeviceId;
  readonly level: BoardLevel;
  readonly at: EpochMs;
}

export function openPairing({ database, keys, clock }: Pick<AccessParts, 'database' | 'keys' | 'clock'>) {
  /** Pairings that wait, by the hash of their poll token, in this process. */
  const open = new Map<string, { readonly origin: string; readonly ends: EpochMs }>();

  /** @throws Answered too-many-requests */
  function mayOpen(origin: string, now: EpochMs): void {
    for (const [hash, { ends }] of open) if (ends <= now) open.delete(hash);
    const own = [...open.values()].filter((one) => one.origin === origin).length;
    if (own < OPEN_PER_ORIGIN && open.size < OPEN_IN_ALL) return;
    throw new Answered(
      problem(
        'too-many-requests',
        own < OPEN_PER_ORIGIN
          ? `${open.size} screens are waiting to be paired with this server.`
          : `${own} screens that ask from here are waiting to be paired.`,
        'Approve those first, or wait ten minutes and ask again.',
      ),
    );
  }

  return {
    async begin(kind: KnownDevice['kind'], origin: string) {
      const now = clock.now();
      const ends = now + PAIRING_MS;
      mayOpen(origin, now);
      await database.query('delete from pairing where ends < $1', [now - FETCH_GRACE_MS]);
      const code = freshCode();
      const poll = newToken();
      open.set(tokenHash(poll), { origin, ends });
      await database.query('insert into pairing (code_hash, poll_hash, kind, ends) values ($1, $2, $3, $4)', [
        keys.lookUp('pairing-code', code),
        tokenHash(poll),
        kind,
        ends,
      ]);
      return { code: inGroups(code), poll, ends };
    },

    /** @throws Answered no-such-pairing-code, invalid-request */
    async approve(
      ward: WardId,
      by: StaffId,
      { code, kind, level, place }: Pick<KnownDevice, 'kind' | 'level'> & { code: string; place: string },
    ): Promise<Approved> {
      if (kind === 'wall' && level === 'whole') throw new Answered(notOnAWall());
      const given = kind === 'shared' ? 'whole' : level;
      const device = freshId() as DeviceId;
      const key = newToken();
      const at = clock.now();
      // One statement, so that of two approvals at the same moment one finds the code used.
      const made = await database.query(
        `with asked as (
           select code_hash from pairing
           where code_hash = $1 and kind = $2 and device is null and ends > $3
           for update
         ), made as (
           insert into device (device, kind, ward, level, key_hash, place, approved_by, approved)
           select $4, $2, $5, $6, $7, $8, $9, $3 from asked
           returning device
         )
         update pairing set device = made.device, key_kept = $10 from made
         where code_hash in (select code_hash from asked)
         returning made.device`,
        [
          keys.lookUp('pairing-code', foldCode(code)),
          kind,
          at,
          device,
          ward,
          given,
          tokenHash(key),
          place,
          by,
          keys.seal(`device ${device}`, key),
        ],
      );
      if (made.length === 0) throw new Answered(noSuchCode());
      return { device, level: given, at };
    },

    async claim(
      poll: string,
    ): Promise<{ state: 'waiting' | 'over' } | { state: 'paired'; key: string; device: KnownDevice }> {
      const now = clock.now();
      const hash = tokenHash(poll);
      // Taken out and handed over in one statement: the key comes out once, however many ask.
      const [taken] = await database.query<KnownDevice & { key_kept: Uint8Array }>(
        `with kept as (
           select poll_hash, device, key_kept from pairing
           where poll_hash = $1 and key_kept is not null and ends > $2
           for update
         ), taken as (
           update pairing set key_kept = null from kept where pairing.poll_hash = kept.poll_hash
           returning kept.device, kept.key_kept
         )
         select device.device, device.kind, device.ward, device.level, taken.key_kept
         from taken join device on device.device = taken.device
         where device.revoked is null`,
        [hash, now - FETCH_GRACE_MS],
      );
      if (taken) {
        open.delete(hash);
        const { key_kept, ...device } = taken;
        return { state: 'paired', key: keys.open(`device ${device.device}`, key_kept), device };
      }
      const waiting = await database.query(
        'select 1 from pairing where poll_hash = $1 and device is null and ends > $2',
        [hash, now],
      );
      return { state: waiting.length > 0 ? 'waiting' : 'over' };
    },
  };
}

const noSuchCode = () =>
  problem(
    'no-such-pairing-code',
    'No screen that waits to be paired shows that code. A code is good for ten minutes and for one approval.',
    'Look at the screen again; take a new code there if it asks for one. Choose the kind that the screen says.',
  );

function notOnAWall() {
  const detail = 'A wall never shows the whole board.';
  const remedy = 'Choose initials, bed only or visitors; pair a shared device for the whole board.';
  return problem('invalid-request', detail, remedy, { errors: [{ pointer: '/level', detail, remedy }] });
}
