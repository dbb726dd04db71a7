import { createHash } from 'node:crypto';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Database } from '../platform/database.ts';
import { hashText } from './canonical.ts';
import { asReadError } from './errors.ts';
import type { VerifyReport } from './log.ts';
import type { EventRow } from './tables.ts';

const PAGE = 2_000;
const GENESIS = Buffer.alloc(32);
/** A log torn in a thousand places is told by its first hundred. */
const FAULTS_TOLD = 100;

const field = (value: string | number): string => {
  const text = String(value);
  return `${Buffer.byteLength(text, 'utf8')}:${text}`;
};

/** The link of one event, worked out here and not in the database: must equal footboard_link_text. */
export function linkOf(previous: Uint8Array, row: Omit<EventRow, 'payload' | 'chain'>): Buffer {
  const text = [
    row.position,
    row.ward,
    row.stream,
    row.version,
    row.id,
    row.type,
    row.schema_version,
    row.payload_hash,
    row.occurred,
    row.precision,
    row.entered,
    row.entered_offset,
    row.recorded,
    row.author_staff,
    row.author_role,
    row.source,
    row.command_id,
  ]
    .map(field)
    .join('');
  return createHash('sha256').update(previous).update(text, 'utf8').digest();
}

export async function verify(
  database: Database,
  ward: WardId,
  anchor?: { position: number; chain: string },
): Promise<VerifyReport> {
  const query = async <Row>(sql: string, params: readonly unknown[]): Promise<Row[]> => {
    try {
      return await database.query<Row>(sql, params);
    } catch (error) {
      throw asReadError(error);
    }
  };
  // The head first: what is appended meanwhile lies beyond it and is left for the next verify.
  const [headRow] = await query<{ position: number; chain: Uint8Array; recorded: number }>(
    'select position, chain, recorded from ward_head where ward = $1',
    [ward],
  );
  const head = { position: headRow?.position ?? 0, chain: Buffer.from(headRow?.chain ?? GENESIS) };
  const faults: { position: number; fault: string }[] = [];
  const found = (position: number, fault: string) => {
    if (faults.length < FAULTS_TOLD) faults.push({ position, fault });
  };

  let previous: Uint8Array = GENESIS;
  let last = 0;
  let count = 0;
  let recorded = 0;
  let anchorMet = !anchor || (anchor.position === 0 && anchor.chain === GENESIS.toString('hex'));
  const versions = new Map<string, number>();

  for (;;) {
    const rows = await query<EventRow>(
      'select * from event where ward = $1 and position > $2 and position <= $3 order by position limit $4',
      [ward, last, head.position, PAGE],
    );
    for (const row of rows) {
      const { position } = row;
      if (position !== last + 1) {
        found(
          last + 1,
          position === last + 2 ? 'the event is missing' : `events up to ${position - 1} are missing`,
        );
      }
      if (hashText(row.payload) !== row.payload_hash) found(position, 'the payload is not the one recorded');
      const link = Buffer.from(row.chain);
      if (!linkOf(previous, row).equals(link)) {
        found(position, 'the chain breaks: this event, or the one before it, is not the one recorded');
      }
      if (row.recorded < recorded) found(position, 'it was recorded before the event in front of it');
      const version = (versions.get(row.stream) ?? 0) + 1;
      if (row.version !== version) {
        found(position, `it is version ${row.version} of ${row.stream} where ${version} comes next`);
      }
      if (anchor?.position === position) {
        anchorMet = true;
        if (link.toString('hex') !== anchor.chain)
          found(position, 'the log differs from the exported anchor');
      }
      versions.set(row.stream, row.version);
      recorded = row.recorded;
      previous = link;
      last = position;
      count += 1;
    }
    if (rows.length < PAGE) break;
  }

  if (last !== head.position) {
    found(last + 1, `the log ends at ${last}, its head says ${head.position}: the tail was cut`);
  } else if (!head.chain.equals(Buffer.from(previous))) {
    found(last, 'the head does not carry the hash of the last event');
  }
  if (anchor && !anchorMet) {
    found(
      last + 1,
      `the exported anchor is at ${anchor.position}, the log ends at ${last}: the tail was cut`,
    );
  }
  return {
    ward,
    events: count,
    head: { position: head.position, chain: head.chain.toString('hex') },
    faults,
  };
}
