/**
 * Who looked at what. Lines are put aside and written together, so that no read waits for them; a
 * database that is away is tried again. Reading the log back is itself noted (by its controller).
 */
import type { DeviceId, StaffId, StayId } from '@footboard/shared/kernel/ids';
import { HOUR, SECOND } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { asReadError } from '../log/errors.ts';
import type { Identity } from './identity.ts';
import type { AccessParts } from './parts.ts';
import type { AccessLog, Looked } from './ports.ts';

const WRITE_EVERY_MS = 2 * SECOND;
const WRITE_AT = 200;
/** While the database is away; beyond it the oldest lines go, and the server's log says how many. */
const WAIT_AT_MOST = 10_000;
/** A screen that is looked at all day, or a slider that asks a hundred times, makes one line an hour. */
const ONCE_AN_HOUR: ReadonlySet<Looked> = new Set<Looked>(['read-board-whole', 'read-board-then']);
const HOURS_KEPT = 5_000;

interface Line {
  readonly at: EpochMs;
  readonly ward: string;
  readonly stay: string | null;
  readonly staff: string | null;
  readonly device: string | null;
  readonly what: Looked;
  readonly words: Buffer | null;
}
interface Row {
  readonly number: number;
  readonly at: EpochMs;
  readonly stay: StayId | null;
  readonly staff: StaffId | null;
  readonly device: DeviceId | null;
  readonly what: string;
  readonly words: Uint8Array | null;
}

/** Bound to the line: words moved to another line do not open. */
const wordsContext = (ward: string, what: string, at: EpochMs) => `access record ${ward} ${what} ${at}`;

/** Whom a line names for a request. With sign-in off (the demo) the claim is all there is. */
export const lookerOf = ({ access, person, device, claimed }: Identity) => ({
  staff: person?.staff ?? (access === 'open' ? claimed : null),
  device: device?.device ?? null,
});

export function openAccessLog({ database, keys, clock, logger }: AccessParts): AccessLog {
  let waiting: Line[] = [];
  let lost = 0;
  let away = false;
  let timer: NodeJS.Timeout | null = null;
  let writing: Promise<void> = Promise.resolve();
  const noted = new Map<string, number>();

  /** True for the first of its kind in this hour, by this person, on this ward. */
  function firstThisHour(key: string, at: EpochMs): boolean {
    const hour = Math.floor(at / HOUR);
    if (noted.get(key) === hour) return false;
    if (noted.size >= HOURS_KEPT) noted.clear();
    noted.set(key, hour);
    return true;
  }

  /** An answer lost on the way may leave a line written twice; none is left out. */
  async function write(lines: readonly Line[]): Promise<void> {
    const column = (of: (line: Line) => string | number | null) => lines.map(of);
    await database.query(
      `insert into access_record (at, ward, stay, staff, device, what, words)
       select at, ward, stay, staff, device, what, decode(words, 'hex')
         from unnest($1::bigint[], $2::text[], $3::text[], $4::text[], $5::text[], $6::text[], $7::text[])
              with ordinality as line (at, ward, stay, staff, device, what, words, place)
        order by place`,
      [
        column((line) => line.at),
        column((line) => line.ward),
        column((line) => line.stay),
        column((line) => line.staff),
        column((line) => line.device),
        column((line) => line.what),
        column((line) => line.words?.toString('hex') ?? null),
      ],
    );
  }

  async function writeAll(): Promise<void> {
    while (waiting.length > 0) {
      const lines = waiting.slice(0, WRITE_AT);
      waiting = waiting.slice(lines.length);
      try {
        await write(lines);
      } catch (error) {
        waiting = [...lines, ...waiting];
        bound();
        if (!away) logger.warn({ waiting: waiting.length, err: error }, 'access log waits for the database');
        away = true;
        throw error;
      }
    }
    if (away) logger.warn({ lost }, 'access log is written again');
    away = false;
    lost = 0;
  }

  function bound(): void {
    const over = waiting.length - WAIT_AT_MOST;
    if (over <= 0) return;
    if (lost === 0) logger.error({ waiting: WAIT_AT_MOST }, 'access log is full: its oldest lines are lost');
    waiting = waiting.slice(over);
    lost += over;
  }

  /** One write at a time, in the order of the notes. */
  function inTurn(): Promise<void> {
    const mine = writing.then(writeAll);
    writing = mine.catch(() => undefined);
    return mine;
  }

  function later(): void {
    if (timer) return;
    timer = setTimeout(() => {
      timer = null;
      // What fails stays waiting; the next turn comes by itself.
      inTurn().catch(() => later());
    }, WRITE_EVERY_MS);
    timer.unref();
  }

  return {
    note({ ward, what, stay, staff, device, words }) {
      const at = clock.now();
      if (ONCE_AN_HOUR.has(what)) {
        if (!staff || !firstThisHour(`${what} ${ward} ${staff}`, at)) return;
      }
      waiting.push({
        at,
        ward,
        stay: stay ?? null,
        staff: staff ?? null,
        device: device ?? null,
        what,
        words: words === undefined ? null : keys.seal(wordsContext(ward, what, at), words),
      });
      bound();
      if (waiting.length >= WRITE_AT && !away) inTurn().catch(() => later());
      else later();
    },

    async read(ward, { stay, before, limit }) {
      try {
        const rows = await database.query<Row>(
          `select number, at, stay, staff, device, what, words from access_record
            where ward = $1 and ($2::text is null or stay = $2) and number < $3
            order by number desc limit $4`,
          [ward, stay ?? null, before ?? Number.MAX_SAFE_INTEGER, limit],
        );
        return rows.map((row) => ({
          ...row,
          words: row.words && keys.open(wordsContext(ward, row.what, row.at), row.words),
        }));
      } catch (error) {
        throw asReadError(error);
      }
    },

    async flush() {
      try {
        await inTurn();
      } catch (error) {
        throw asReadError(error);
      }
    },

    async stop() {
      if (timer) clearTimeout(timer);
      try {
        await inTurn();
      } catch (error) {
        logger.error({ lost: waiting.length, err: error }, 'access log could not be written at the end');
      }
    },
  };
}
