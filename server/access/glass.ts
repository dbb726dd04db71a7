/** Breaking the glass: reading a ward where one's role does not reach, for one hour, reviewed later. */
import { randomUUID } from 'node:crypto';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { HOUR, SECOND } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { Answered, problem } from '../commanding/problems.ts';
import { asReadError } from '../log/errors.ts';
import type { AccessParts } from './parts.ts';
import type { Glass, GlassRecord } from './ports.ts';

/** Common practice, no source: long enough for an emergency, too short to work from. */
const OPEN_FOR_MS = HOUR;
/** Asked at every request of somebody who is not on the ward; an opening made elsewhere shows after this. */
const REMEMBERED_MS = 5 * SECOND;
const REMEMBERED_AT_MOST = 1_000;
const LISTED_AT_MOST = 500;

interface Row {
  readonly glass: string;
  readonly ward: WardId;
  readonly staff: StaffId;
  readonly reason: string;
  readonly words: Uint8Array;
  readonly began: EpochMs;
  readonly ends: EpochMs;
  readonly reviewed: EpochMs | null;
  readonly reviewed_by: StaffId | null;
  readonly review: Uint8Array | null;
}
const COLUMNS = 'glass, ward, staff, reason, words, began, ends, reviewed, reviewed_by, review';
const wordsOf = (glass: string) => `glass ${glass} words`;
const reviewOf = (glass: string) => `glass ${glass} review`;

export function openGlass({ database, keys, clock }: AccessParts): Glass {
  const remembered = new Map<string, { readonly until: EpochMs; readonly found: GlassRecord | null }>();
  const query = async <Found>(sql: string, params: readonly unknown[]): Promise<Found[]> => {
    try {
      return await database.query<Found>(sql, params);
    } catch (error) {
      throw asReadError(error);
    }
  };

  const opened = (row: Row): GlassRecord => ({
    glass: row.glass,
    ward: row.ward,
    staff: row.staff,
    reason: row.reason,
    words: keys.open(wordsOf(row.glass), row.words),
    began: row.began,
    ends: row.ends,
    reviewed:
      row.reviewed === null || row.reviewed_by === null || row.review === null
        ? null
        : { at: row.reviewed, by: row.reviewed_by, words: keys.open(reviewOf(row.glass), row.review) },
  });

  return {
    async begin(ward, staff, reason, words) {
      const glass = randomUUID();
      const began = clock.now();
      const ends = began + OPEN_FOR_MS;
      await query(
        `insert into glass (glass, ward, staff, reason, words, began, ends)
         values ($1, $2, $3, $4, $5, $6, $7)`,
        [glass, ward, staff, reason, keys.seal(wordsOf(glass), words), began, ends],
      );
      const found: GlassRecord = { glass, ward, staff, reason, words, began, ends, reviewed: null };
      remembered.set(`${ward} ${staff}`, { until: began + REMEMBERED_MS, found });
      return found;
    },

    async open(ward, staff) {
      const now = clock.now();
      const key = `${ward} ${staff}`;
      const known = remembered.get(key);
      if (known && now < known.until) return known.found && now < known.found.ends ? known.found : null;
      const [row] = await query<Row>(
        `select ${COLUMNS} from glass where ward = $1 and staff = $2 and ends > $3 order by ends desc limit 1`,
        [ward, staff, now],
      );
      const found = row ? opened(row) : null;
      if (remembered.size >= REMEMBERED_AT_MOST) remembered.clear();
      remembered.set(key, { until: now + REMEMBERED_MS, found });
      return found;
    },

    async list(ward) {
      // What the person read on this ward while it was open; the opening's own line is not a look.
      const rows = await query<Row & { looked: number }>(
        `select ${COLUMNS}, (
           select count(*) from access_record a
            where a.ward = g.ward and a.staff = g.staff and a.at >= g.began and a.at < g.ends
              and a.what like 'read-%')::bigint as looked
           from glass g where ward = $1 order by began desc limit $2`,
        [ward, LISTED_AT_MOST],
      );
      return rows.map((row) => ({ ...opened(row), looked: row.looked }));
    },

    async review(ward, glass, by, words) {
      const [row] = await query<Row>(`select ${COLUMNS} from glass where ward = $1 and glass = $2`, [
        ward,
        glass,
      ]);
      if (!row) {
        throw new Answered(
          problem(
            'no-such-glass',
            'This ward has no such opening.',
            'Open the list again and choose one of it.',
          ),
        );
      }
      if (row.staff === by) {
        throw new Answered(
          problem(
            'own-glass',
            'That is an opening of your own.',
            'Ask the charge nurse, the manager or the records role to review it.',
          ),
        );
      }
      const changed = await query<{ glass: string }>(
        `update glass set reviewed = $3, reviewed_by = $4, review = $5
          where ward = $1 and glass = $2 and reviewed is null returning glass`,
        [ward, glass, clock.now(), by, keys.seal(reviewOf(glass), words)],
      );
      if (changed.length === 0) {
        throw new Answered(
          problem(
            'conflict',
            'Somebody has reviewed it already; what they wrote stands.',
            'Look at the list again.',
          ),
        );
      }
    },
  };
}
