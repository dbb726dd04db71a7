/** Makes sheets, remembers what each was printed from, and says which of them no longer hold. */
import type { EventId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import { streamKey, type LoggedEvent } from '@footboard/shared/kernel/event-type';
import { ELAPSED_DAY } from '@footboard/shared/kernel/times';
import { sayDayTime, localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { LAST_KNOWN_AFTER_MS } from '@footboard/shared/wire/messages';
import type { PaperSheet } from '@footboard/shared/wire/paper';
import type { Log } from '../../log/log.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database } from '../../platform/database.ts';
import type { Boards } from '../../projecting/board.ts';
import type { Streams } from '../../commanding/streams.ts';
import type { Vault } from '../../vault/vault.ts';
import { Answered, noSuchWard } from '../../commanding/problems.ts';
import { boardNow } from '../board/queries.ts';
import { staffNames } from '../people/queries.ts';
import { sheetPdf } from './pdf.ts';
import { SHEET_AT_MOST_MS, saidOfAll, sheetLines } from './sheet.ts';
import { paperTold } from './words.ts';

export interface PaperParts {
  readonly database: Pick<Database, 'query'>;
  readonly boards: Boards;
  readonly log: Pick<Log, 'readWard' | 'readStream' | 'head'>;
  readonly streams: Pick<Streams, 'ward'>;
  readonly vault: Vault;
  readonly clock: Clock;
  readonly demo: boolean;
  /** What people type to get here; without it the address that the sheet was asked for at. */
  readonly publicUrl: string | null;
}
export interface MadeSheet {
  readonly serial: string;
  readonly pdf: Buffer;
}
export interface Paper {
  /** @param by null for the hourly one; no-name where a device asked and nobody had signed in.
   * @param origin what a phone opens: "https://board.ward.example" */
  make(ward: WardId, by: StaffId | 'no-name' | null, origin: string): Promise<MadeSheet>;
  list(ward: WardId): Promise<readonly PaperSheet[]>;
}
export const PAPER = Symbol('Paper');

const LISTED_FOR_MS = 2 * ELAPSED_DAY;
const A_READ = 500;
/** An addendum changes nothing that was printed. */
const CHANGES: ReadonlySet<string> = new Set(['amendment-made', 'correction-made', 'retraction-made']);

interface Row {
  readonly serial: string;
  readonly made: number;
  readonly position: number;
  readonly t: number;
  readonly validUntil: number;
  readonly madeBy: string | null;
  readonly beds: string;
}

export function openPaper(parts: PaperParts): Paper {
  const { database, boards, log, streams, vault, clock, demo, publicUrl } = parts;

  /** "alder-20261125-1405-01": the ward's clock, and a number that no other sheet of that minute has. */
  async function claim(
    ward: WardId,
    zone: string,
    row: Omit<Row, 'serial' | 'madeBy'> & { feed: number; by: string | null },
  ) {
    const day = localDate(zone, row.made).replaceAll('-', '');
    const minute = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    })
      .format(row.made)
      .replace(':', '');
    for (let number = 1; ; number++) {
      const serial = `${ward.slice(0, 40)}-${day}-${minute}-${String(number).padStart(2, '0')}`;
      const made = await database.query<{ serial: string }>(
        `insert into paper_sheet (serial, ward, made, position, feed, t, valid_until, made_by, beds)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9) on conflict do nothing returning serial`,
        [serial, ward, row.made, row.position, row.feed, row.t, row.validUntil, row.by, row.beds],
      );
      if (made.length > 0) return serial;
    }
  }

  /** Stays with a change since, and where in the log the entry stands that it changed. */
  async function changesAfter(ward: WardId, position: number) {
    const changes: { stay: string; at: number; target: number }[] = [];
    const found: LoggedEvent[] = [];
    for (let after = position; ;) {
      const read = await log.readWard(ward, after, A_READ);
      found.push(...read.filter(({ type }) => CHANGES.has(type)));
      if (read.length < A_READ) break;
      after = read.at(-1)!.position;
    }
    for (const one of found) {
      const stay = /^stay\/(.+)$/.exec(one.stream)?.[1];
      if (stay === undefined) continue;
      const { events } = await log.readStream(ward, streamKey('stay', stay));
      const { target } = one.payload as { target: EventId };
      changes.push({ stay, at: one.position, target: events.find(({ id }) => id === target)?.position ?? 0 });
    }
    return changes;
  }

  return {
    async make(ward, by, origin) {
      const { state } = await streams.ward(ward);
      if (!state) throw new Answered(noSuchWard(ward));
      const { board, p, t, feed } = boardNow(boards, ward);
      const beat = boards.heartbeat(ward);
      const made = clock.now();
      const known = beat ? Math.min(beat.readAt, beat.evaluatedAt, beat.trailingSince ?? made) : t;
      const validUntil = known + SHEET_AT_MOST_MS;
      const names = await staffNames(state, vault);
      const lines = sheetLines(board, made, (staff) => names.get(staff as StaffId) ?? '?');
      const beds = board.beds.map(({ bed, label, stay }) => ({ bed, label, stay: stay?.stay ?? null }));
      const serial = await claim(ward, board.zone, {
        made,
        position: p,
        feed,
        t,
        validUntil,
        by,
        beds: JSON.stringify(beds),
      });
      const time = (at: number) => paperTold(board.language)(sayDayTime(board.zone, at));
      const pdf = await sheetPdf({
        ward: board.name,
        serial,
        language: board.language,
        demo,
        known: time(known),
        printed: time(made),
        until: time(validUntil),
        stale: (made - known) / clock.rate > LAST_KNOWN_AFTER_MS,
        lines,
        ofAll: saidOfAll(board),
        address: (bed) => `${publicUrl ?? origin}/wards/${ward}/paper/${serial}/${bed}`,
      });
      return { serial, pdf };
    },

    async list(ward) {
      const rows = await database.query<Row>(
        `select serial, made, position, t, valid_until as "validUntil", made_by as "madeBy", beds
           from paper_sheet where ward = $1 and made > $2 order by made desc, serial desc limit 100`,
        [ward, clock.now() - LISTED_FOR_MS],
      );
      if (rows.length === 0) return [];
      const changes = await changesAfter(ward, Math.min(...rows.map(({ position }) => position)));
      return rows.map(({ madeBy, beds, ...row }) => {
        const printed = JSON.parse(beds) as PaperSheet['beds'];
        const wrong = (stay: string | null) =>
          changes.some((one) => one.stay === stay && one.at > row.position && one.target <= row.position);
        return {
          ...row,
          byItself: madeBy === null,
          beds: printed,
          superseded: printed.filter(({ stay }) => wrong(stay)).map(({ bed }) => bed),
        };
      });
    },
  };
}
