/**
 * Who is signed in. A session ends by idling, by its absolute end, by signing out, and by whatever
 * raises the edition of its account: a new password, a role that changed, switching off.
 *
 * What was read is believed for a few seconds, so that a command costs no round trip of its own. An
 * end in this process holds at once; one in another process within that time.
 */
import type { StaffId } from '@footboard/shared/kernel/ids';
import { Answered, problem } from '../commanding/problems.ts';
import { freshId } from '../platform/ids.ts';
import { newToken, tokenHash } from './keys.ts';
import type { KnownPerson } from './identity.ts';
import type { AccessParts } from './parts.ts';
import type { Accounts, Sessions } from './ports.ts';

const BELIEVED_MS = 3_000;
const KEPT_AT_MOST = 5_000;
const SEEN_KEPT_EVERY_MS = 60_000;
/**
 * A session that ran out still says whose entries wait on that device, for a day: they are kept as
 * unconfirmed at most. Ours, no source; owner: whoever runs the server.
 */
export const RAN_OUT_FOR_MS = 24 * 60 * 60_000;

const JUST_BEGUN_MS = 5 * 60_000;

interface Row {
  readonly session: string;
  readonly account: string;
  readonly staff: StaffId;
  readonly wide: boolean;
  readonly began: number;
  readonly seen: number;
  readonly ends: number;
}
/** A session as it was read, and what this process has seen of it since. */
interface Kept {
  readonly row: Row;
  seen: number;
  seenKept: number;
  /** On the machine's own clock, which no setting of time moves. */
  readonly readAt: number;
}

export function openSessions(
  { database, clock, config, logger }: AccessParts,
  accounts: Pick<Accounts, 'onEdition'>,
): Sessions {
  const { sessionIdleMs, sessionMs } = config;
  const kept = new Map<string, Kept>();
  const listeners = new Set<(sessions: readonly string[]) => void>();
  /** Grows with every end: what was asked of the database before it is asked again. */
  let ends = 0;

  const tell = (sessions: readonly string[]) => {
    if (sessions.length === 0) return;
    for (const listener of listeners) listener(sessions);
  };
  function drop(which: (row: Row) => boolean): readonly string[] {
    ends++;
    const gone: string[] = [];
    for (const [hash, { row }] of kept) {
      if (!which(row)) continue;
      kept.delete(hash);
      gone.push(row.session);
    }
    return gone;
  }
  accounts.onEdition((changed) => tell(drop((row) => changed.includes(row.account))));

  async function read(hash: string): Promise<Kept | null> {
    for (;;) {
      const before = ends;
      const readAt = performance.now();
      const [row] = await database.query<Row>(
        `select session.session, session.account, account.staff, account.wide, session.began,
                session.seen, session.ends
         from session join account on account.account = session.account
         where session.token_hash = $1 and session.ended is null and account.active
           and session.edition = account.edition`,
        [hash],
      );
      if (before !== ends) continue;
      const known = kept.get(hash);
      kept.delete(hash);
      if (!row) {
        if (known) tell([known.row.session]);
        return null;
      }
      const seen = Math.max(row.seen, known?.seen ?? 0);
      const now = { row, seen, seenKept: Math.max(row.seen, known?.seenKept ?? 0), readAt };
      kept.set(hash, now);
      if (kept.size > KEPT_AT_MOST) kept.delete(kept.keys().next().value!);
      return now;
    }
  }

  const fresh = (one: Kept | undefined): one is Kept =>
    one !== undefined && performance.now() - one.readAt < BELIEVED_MS;

  function keepSeen(hash: string, one: Kept): void {
    if (one.seen - one.seenKept < SEEN_KEPT_EVERY_MS) return;
    one.seenKept = one.seen;
    database
      .query('update session set seen = greatest(seen, $2) where token_hash = $1', [hash, one.seen])
      .catch((error: unknown) => logger.warn({ err: error }, 'a session was not kept as seen'));
  }

  return {
    async begin(account) {
      const token = newToken();
      const session = freshId();
      const now = clock.now();
      const begun = await database.query(
        `insert into session (token_hash, session, account, edition, began, seen, ends)
         select $1, $2, account.account, account.edition, $4, $4, $5
         from account where account.account = $3 and account.active
         returning session`,
        [tokenHash(token), session, account.account, now, now + sessionMs],
      );
      if (begun.length === 0) throw switchedOff();
      await database.query('delete from session where ends < $1', [now - RAN_OUT_FOR_MS]);
      return { token, session, ends: now + sessionMs };
    },

    async person(token, quietly) {
      const hash = tokenHash(token);
      const known = kept.get(hash);
      const one = fresh(known) ? known : await read(hash);
      if (!one) return null;
      const { row } = one;
      const now = clock.now();
      const until = Math.min(one.seen + sessionIdleMs, row.ends);
      if (now >= until) {
        if (kept.delete(hash)) tell([row.session]);
        return now < until + RAN_OUT_FOR_MS ? { ranOut: row.staff } : null;
      }
      if (quietly === undefined && now > one.seen) {
        one.seen = now;
        keepSeen(hash, one);
      }
      const person: KnownPerson = {
        account: row.account,
        staff: row.staff,
        wide: row.wide,
        via: 'session',
        session: row.session,
        until: Math.min(one.seen + sessionIdleMs, row.ends),
      };
      return person;
    },

    async justBegun(session) {
      const [row] = await database.query<{ began: number }>(
        'select began from session where session = $1 and ended is null',
        [session],
      );
      return row !== undefined && clock.now() - row.began < JUST_BEGUN_MS;
    },

    async end(session) {
      await database.query('update session set ended = $2 where session = $1 and ended is null', [
        session,
        clock.now(),
      ]);
      drop((row) => row.session === session);
      tell([session]);
    },

    onEnd(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

const switchedOff = () =>
  new Answered(
    problem(
      'not-allowed',
      'This account is switched off.',
      'Ask whoever keeps the accounts: an administrator, the manager or the charge nurse.',
    ),
  );
