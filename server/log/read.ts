import { eventTypeNamed } from '@footboard/shared/capabilities/registry';
import type { Author, Source } from '@footboard/shared/kernel/author';
import { upcast } from '@footboard/shared/kernel/event-type';
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
 * those of the people who are still in a bed. It is the event's own property all the same, so that
 * a copy (`{ ...event }`), a comparison or JSON has it.
 * @throws for a version of the future, at once.
 */
function eventOf(row: ReadRow): LoggedEvent {
  const type = eventTypeNamed(row.type);
  const version = row.schema_version;
  let text: string | null = row.payload;
  let payload: unknown;
  const parse = () => {
    payload = upcast(type, version, JSON.parse(text!));
    text = null;
  };
  if (version > type.version) parse();
  return {
    ward: row.ward as WardId,
    position: row.position,
    stream: row.stream as StreamKey,
    version: row.version,
    id: row.id as EventId,
    type: row.type,
    get payload() {
      if (text !== null) parse();
      return payload;
    },
    occurred: row.occurred,
    precision: row.precision as Precision,
    entered: row.entered,
    enteredOffsetMinutes: row.entered_offset,
    recorded: row.recorded,
    author: authorOf(row),
    source: sourceOf(row),
  };
}

/**
 * The same for the page of a fold, where an object with a getter of its own an event costs a rebuild
 * a fifth of its time. A copy by `{ ...event }` loses the payload: a fold keeps events, it copies none.
 */
class PageEvent implements LoggedEvent {
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
      const rows = await query<ReadRow>(
        `select ${COLUMNS} from event
          where ward = $1 and stream = $2 and version > $3 and position <= $4 order by version`,
        [ward, stream, after, upTo],
      );
      return { stream, version: rows.at(-1)?.version ?? after, events: rows.map(eventOf) };
    },

    async readStreams(
      ward: WardId,
      streams: readonly StreamKey[],
      after: ReadonlyMap<StreamKey, number> = new Map(),
    ): Promise<ReadonlyMap<StreamKey, StreamSlice>> {
      const rows = await query<ReadRow>(
        `select ${COLUMNS} from unnest($2::text[], $3::bigint[]) as wanted (wanted_stream, held_version)
           join event on ward = $1 and stream = wanted_stream and version > held_version
          order by stream, version`,
        [ward, streams, streams.map((stream) => after.get(stream) ?? 0)],
      );
      const events = new Map<StreamKey, LoggedEvent[]>(streams.map((stream) => [stream, []]));
      for (const row of rows) events.get(row.stream as StreamKey)!.push(eventOf(row));
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
      return (await rowsOfWard(ward, after, limit, upTo)).map(eventOf);
    },

    async readPage(
      ward: WardId,
      after: number,
      limit: number,
      upTo = Number.MAX_SAFE_INTEGER,
    ): Promise<readonly LoggedEvent[]> {
      return (await rowsOfWard(ward, after, limit, upTo)).map((row) => new PageEvent(row));
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
