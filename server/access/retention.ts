/** What is kept of stays that are over: asked by whoever keeps the records, and by nothing else. */
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { stayEnded } from '@footboard/shared/capabilities/stays/events';
import { asReadError } from '../log/errors.ts';
import type { AccessParts } from './parts.ts';
import type { Retention } from './ports.ts';

export function openRetention({ database, config }: Pick<AccessParts, 'database' | 'config'>): Retention {
  const query = async <Row>(sql: string, params: readonly unknown[]): Promise<Row[]> => {
    try {
      return await database.query<Row>(sql, params);
    } catch (error) {
      throw asReadError(error);
    }
  };
  return {
    keepDays: config.keepDays ?? null,
    // A stay ends once: its placement cannot be corrected or retracted. A key's subject is its stream's name.
    endedBefore: (ward, before) =>
      query<{ stay: StayId; ended: EpochMs; erased: boolean }>(
        `select substr(e.stream, length('stay/') + 1) as stay, e.occurred as ended,
                k.destroyed_at is not null as erased
           from event e left join text_key k on k.subject = e.stream
          where e.ward = $1 and e.type = $2 and e.occurred < $3 order by e.occurred, e.position`,
        [ward, stayEnded.name, before],
      ),
    async erased(stay) {
      const rows = await query(`select 1 from text_key where subject = $1 and destroyed_at is not null`, [
        `stay/${stay}`,
      ]);
      return rows.length > 0;
    },
    async alsoOn(ward, stay) {
      // By ward first: the log is looked up by ward and stream.
      const rows = await query<{ ward: WardId }>(
        `select h.ward from ward_head h
          where h.ward <> $1
            and exists (select 1 from event e where e.ward = h.ward and e.stream = $2 and e.version = 1)`,
        [ward, `stay/${stay}`],
      );
      return rows.map((row) => row.ward);
    },
  };
}
