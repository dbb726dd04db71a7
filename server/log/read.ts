import { eventTypeNamed } from '@footboard/shared/capabilities/registry';
import type { Author, Source } from '@footboard/shared/kernel/author';
import { saidBy, upcast } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { CommandId, EventId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { Precision } from '@footboard/shared/kernel/times';
import type { Database } from '../platform/database.ts';
import { canonical } from './canonical.ts';
import { asReadError } from './errors.ts';
import type { CommandOutcome, StreamSlice } from './log.ts';
import type { EventRow, OutcomeRow } from './tables.ts';

type ReadRow = Omit<EventRow, 'payload_hash' | 'command_id' | 'chain'>;
const COLUMNS = `ward, position, stream, version, id, type, schema_version, payload, occurred, precision,
  entered, entered_offset, recorded, author_staff, author_role, source`;

/**
 * A row as one text: its fields in order, told apart by a sign that none of them can hold (ids and
 * codes have no control signs, JSON escapes them). Taking fifty rows of sixteen columns apart costs
 * the driver more than finding them costs the database, and a command waits for it.
 */
const PACKED = `concat_ws(chr(31), stream, position, version, id, type, schema_version, payload, occurred,
  precision, entered, entered_offset, recorded, author_staff, author_role, source) as packed`;

function unpack(ward: string, { packed }: { packed: string }): ReadRow {
  const field = packed.split('\u001f');
  return {
    ward,
    stream: field[0]!,
    position: Number(field[1]),
    version: Number(field[2]),
    id: field[3]!,
    type: field[4]!,
    schema_version: Number(field[5]),
    payload: field[6]!,
    occurred: Number(field[7]),
    precision: field[8]!,
    entered: Number(field[9]),
    entered_offset: Number(field[10]),
    recorded: Number(field[11]),
    author_staff: field[12]!,
    author_role: field[13]!,
    source: field[14]!,
  };
}

/** The few sources and authors that a ward's million events share, each made once. */
const sources = new Map<string, Source>();
const authors = new Map<string, Author>();
const SHARED_AT_MOST = 5_000;

function shared<T>(known: Map<string, T>, key: string, make: () => T): T {
  const found = known.get(key);
  if (found !== undefined) return found;
  if (known.size >= SHARED_AT_MOST) known.clear();
  const made = Object.freeze(make());
  known.set(key, made);
  return made;
}

const authorOf = (row: ReadRow): Author =>
  shared(
    authors,
    `${row.author_role} ${row.author_staff}`,
    () => ({ staff: row.author_staff as StaffId, role: row.author_role }) as Author,
  );
const sourceOf = (row: ReadRow): Source =>
  shared(sources, row.source, () => JSON.parse(row.source) as Source);

/**
 * Validated when appended, so not parsed by its schema again; only raised to the current version.
 * The payload is parsed when somebody looks at it: a rebuild that reads a million events looks at
 * those of the people who are still in a bed, and a decision at a few of a stay's. It is read through
 * the class, as a getter of each event's own costs a rebuild a fifth of its time; so a copy by
 * `{ ...event }` loses it: use `saidBy`, or copy field by field.
 * @throws for a version of the future, at once.
 */
class StoredEvent implements LoggedEvent {
  readonly ward: WardId;
  readonly position: number;
  readonly stream: StreamKey;
  readonly version: number;
  readonly id: EventId;
  readonly type: string;
  readonly occurred: number;
  readonly precision: Precision;
  readonly entered: number;
  readonly enteredOffsetMinutes: number;
  readonly recorded: number;
  readonly author: Author;
  readonly source: Source;
  readonly #schemaVersion: number;
  /** Null once it has been parsed. */
  #text: string | null;
  #payload: unknown = undefined;

  constructor(row: ReadRow) {
    this.ward = row.ward as WardId;
    this.position = row.position;
    this.stream = row.stream as StreamKey;
    this.version = row.version;
    this.id = row.id as EventId;
    this.type = row.type;
    this.occurred = row.occurred;
    this.precision = row.precision as Precision;
    this.entered = row.entered;
    this.enteredOffsetMinutes = row.entered_offset;
    this.recorded = row.recorded;
    this.author = authorOf(row);
    this.source = sourceOf(row);
    this.#schemaVersion = row.schema_version;
    this.#text = row.payload;
    if (row.schema_version > eventTypeNamed(row.type).version) this.#parse();
  }

  get payload(): unknown {
    if (this.#text !== null) this.#parse();
    return this.#payload;
  }

  #parse(): void {
    this.#payload = upcast(eventTypeNamed(this.type), this.#schemaVersion, JSON.parse(this.#text!));
    this.#text = null;
  }
}

/** With its payload as its own property, for whoever copies or compares events. */
const whole = (event: LoggedEvent): LoggedEvent => saidBy(event, event.author);

/**
 * Several slices in one statement: one walk of the index for each, in its order, so that nothing is
 * sorted. A command waits for this; there are as many statements as there are numbers of streams.
 */
const slicesOf = (count: number): string =>
  Array.from(
    { length: count },
    (_, n) =>
      `(select ${PACKED} from event
         where ward = $1 and stream = $${2 * n + 2} and version > $${2 * n + 3} order by version)`,
  ).join(' union all ');

/** The reading side of the log. Every error of the connection is LogUnavailable. */
export function openReader(database: Database) {
  const query = async <Row>(sql: string, params: readonly unknown[]): Promise<Row[]> => {
    try {
      return await database.query<Row>(sql, params);
    } catch (error) {
      throw asReadError(error);
    }
  };

  const rowsOfWard = (ward: WardId, after: number, limit: number, upTo: number) =>
    query<ReadRow>(
      `select ${COLUMNS} from event
        where ward = $1 and position > $2 and position <= $3 order by position limit $4`,
      [ward, after, upTo, limit],
    );

  return {
    async outcomeOf(ward: string, commandId: string): Promise<CommandOutcome | null> {
      const [row] = await query<OutcomeRow>(
        `select c.ward, c.command_id, c.name, c.body_hash, c.author_staff, c.author_role, c.outcome,
                c.result, coalesce(e.position, 0) as position
           from command_outcome c left join event e on e.ward = c.ward and e.id = c.last_event
          where c.ward = $1 and c.command_id = $2`,
        [ward, commandId],
      );
      if (!row) return null;
      return {
        commandId: row.command_id as CommandId,
        ward: row.ward as WardId,
        name: row.name,
        bodyHash: row.body_hash,
        author: { staff: row.author_staff, role: row.author_role } as Author,
        outcome: row.outcome,
        result: JSON.parse(row.result) as unknown,
        position: row.position,
      };
    },

    async readStream(
      ward: WardId,
      stream: StreamKey,
      after = 0,
      upTo = Number.MAX_SAFE_INTEGER,
    ): Promise<StreamSlice> {
      const packed = await query<{ packed: string }>(
        `select ${PACKED} from event
          where ward = $1 and stream = $2 and version > $3 and position <= $4 order by version`,
        [ward, stream, after, upTo],
      );
      const rows = packed.map((row) => unpack(ward, row));
      return {
        stream,
        version: rows.at(-1)?.version ?? after,
        events: rows.map((row) => whole(new StoredEvent(row))),
      };
    },

    async readStreams(
      ward: WardId,
      streams: readonly StreamKey[],
      after: ReadonlyMap<StreamKey, number> = new Map(),
    ): Promise<ReadonlyMap<StreamKey, StreamSlice>> {
      const wanted = [...new Set(streams)];
      const packed = await query<{ packed: string }>(slicesOf(wanted.length), [
        ward,
        ...wanted.flatMap((stream) => [stream, after.get(stream) ?? 0]),
      ]);
      const rows = packed.map((row) => unpack(ward, row));
      const events = new Map<StreamKey, LoggedEvent[]>(streams.map((stream) => [stream, []]));
      for (const row of rows) events.get(row.stream as StreamKey)!.push(new StoredEvent(row));
      return new Map(
        [...events].map(([stream, its]) => [
          stream,
          { stream, version: its.at(-1)?.version ?? after.get(stream) ?? 0, events: its },
        ]),
      );
    },

    async readWard(
      ward: WardId,
      after: number,
      limit: number,
      upTo = Number.MAX_SAFE_INTEGER,
    ): Promise<readonly LoggedEvent[]> {
      return (await rowsOfWard(ward, after, limit, upTo)).map((row) => whole(new StoredEvent(row)));
    },

    async readPage(
      ward: WardId,
      after: number,
      limit: number,
      upTo = Number.MAX_SAFE_INTEGER,
    ): Promise<readonly LoggedEvent[]> {
      return (await rowsOfWard(ward, after, limit, upTo)).map((row) => new StoredEvent(row));
    },

    async head(ward: WardId): Promise<number> {
      const [row] = await query<{ position: number }>('select position from ward_head where ward = $1', [
        ward,
      ]);
      return row?.position ?? 0;
    },

    async heads(): Promise<ReadonlyMap<WardId, number>> {
      const rows = await query<{ ward: WardId; position: number }>(
        'select ward, position from ward_head order by ward',
        [],
      );
      return new Map(rows.map((row) => [row.ward, row.position]));
    },
  };
}
export type Reader = ReturnType<typeof openReader>;

/** True when a stored outcome belongs to this same entry: same body and same author. */
export const isSameCommand = (
  stored: CommandOutcome,
  asked: Pick<CommandOutcome, 'bodyHash' | 'author'>,
): boolean => stored.bodyHash === asked.bodyHash && canonical(stored.author) === canonical(asked.author);
