import type { Author } from '@footboard/shared/kernel/author';
import type { StreamKey } from '@footboard/shared/kernel/event-type';
import type { CommandId, EventId, WardId } from '@footboard/shared/kernel/ids';
import type { Precision } from '@footboard/shared/kernel/times';
import type { Database } from '../platform/database.ts';
import { asReadError } from './errors.ts';
import type { ChainedEvent } from './log.ts';
import type { EventRow } from './tables.ts';

type LinkRow = Omit<EventRow, 'chain'> & { readonly previous: string; readonly chain: string };

/** The events of one stream with the hashes on both sides of each link. The first of a ward follows zeros. */
export async function linksOf(
  database: Database,
  ward: WardId,
  stream: StreamKey,
): Promise<readonly ChainedEvent[]> {
  let rows: LinkRow[];
  try {
    rows = await database.query<LinkRow>(
      `select e.position, e.ward, e.stream, e.version, e.id, e.type, e.schema_version, e.payload,
              e.payload_hash, e.occurred, e.precision, e.entered, e.entered_offset, e.recorded,
              e.author_staff, e.author_role, e.source, e.command_id, encode(e.chain, 'hex') as chain,
              coalesce(encode(p.chain, 'hex'), repeat('00', 32)) as previous
         from event e left join event p on p.ward = e.ward and p.position = e.position - 1
        where e.ward = $1 and e.stream = $2 order by e.version`,
      [ward, stream],
    );
  } catch (error) {
    throw asReadError(error);
  }
  return rows.map((row) => ({
    position: row.position,
    ward: row.ward as WardId,
    stream: row.stream as StreamKey,
    version: row.version,
    id: row.id as EventId,
    type: row.type,
    schemaVersion: row.schema_version,
    payload: row.payload,
    payloadHash: row.payload_hash,
    occurred: row.occurred,
    precision: row.precision as Precision,
    entered: row.entered,
    enteredOffsetMinutes: row.entered_offset,
    recorded: row.recorded,
    author: { staff: row.author_staff, role: row.author_role } as Author,
    source: row.source,
    commandId: row.command_id as CommandId,
    previous: row.previous,
    chain: row.chain,
  }));
}
