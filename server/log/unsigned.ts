import type { StreamKey } from '@footboard/shared/kernel/event-type';
import type { EventId, WardId } from '@footboard/shared/kernel/ids';
import type { Database } from '../platform/database.ts';
import { asReadError } from './errors.ts';
import type { Unsigned } from './log.ts';

/**
 * As the indexes of migrations/0101-signatures.sql have it. The source is canonical JSON, in which no
 * text can hold these signs: its quotes are escaped.
 */
const MARKED: Readonly<Record<Unsigned['mark'], string>> = {
  unconfirmed: `e.source like '%"unconfirmed":true%'`,
  cosign: `e.source like '%"cosign":"%'`,
};

/** Entries of streams of stays that carry a mark and that nobody has signed, the newest first. */
export async function unsignedOf(
  database: Database,
  ward: WardId,
  { mark, signature, by, notBy, limit }: Unsigned,
): Promise<readonly { readonly stream: StreamKey; readonly id: EventId }[]> {
  try {
    return await database.query<{ stream: StreamKey; id: EventId }>(
      `select e.stream, e.id from event e
        where e.ward = $1 and ${MARKED[mark]} and e.stream like 'stay/%' and e.type <> $2
          and ($3::text is null or e.author_staff = $3) and ($4::text is null or e.author_staff <> $4)
          and not exists (
            select 1 from event s
             where s.ward = e.ward and s.stream = e.stream and s.type = $2 and s.version > e.version
               and position('"target":"' || e.id || '"' in s.payload) > 0)
        order by e.position desc limit $5`,
      [ward, signature, by ?? null, notBy ?? null, limit],
    );
  } catch (error) {
    throw asReadError(error);
  }
}
