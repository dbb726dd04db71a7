/**
 * Near misses and strain: an append-only table of its own beside the log. Nothing here reaches a
 * board, a feed, a timeline, an export or a log line.
 */
import { concernAbout, concernKind } from '@footboard/shared/wire/concerns';
import type { ConcernAbout, ConcernKind, TellConcern } from '@footboard/shared/wire/concerns';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { ELAPSED_DAY, HOUR, type EpochMs } from '@footboard/shared/kernel/times';
import type { AccessKeys } from '../../access/keys.ts';
import { asReadError } from '../../log/errors.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database } from '../../platform/database.ts';

export interface Concern {
  readonly concern: string;
  readonly at: EpochMs;
  readonly kind: ConcernKind;
  readonly about: readonly ConcernAbout[];
  readonly words: readonly string[];
  readonly by: StaffId | null;
}
export interface Concerns {
  /** @param by null leaves no trace of who told it. Told twice under one id, it is kept once. */
  tell(ward: WardId, told: TellConcern, by: StaffId | null): Promise<void>;
  /** The newest first, each with what was said of it afterwards. */
  list(ward: WardId): Promise<readonly Concern[]>;
}
export const CONCERNS = Symbol('Concerns');

/** Common practice, no source: a year shows a season twice, and is no file on anybody. */
const LISTED_FOR_MS = 365 * ELAPSED_DAY;
const LISTED_AT_MOST = 2_000;

interface Row {
  readonly concern: string;
  readonly at: EpochMs;
  readonly kind: string;
  readonly about: string | null;
  readonly adds: string | null;
  readonly staff: StaffId | null;
  readonly words: Uint8Array | null;
}
/** Bound to ward and id: words moved to another row do not open. */
const wordsOf = (ward: WardId, concern: string) => `concern ${ward} ${concern} words`;

export function openConcerns(parts: {
  readonly database: Pick<Database, 'query'>;
  readonly keys: Pick<AccessKeys, 'seal' | 'open'>;
  readonly clock: Clock;
}): Concerns {
  const { database, keys, clock } = parts;
  const query = async <Found>(sql: string, params: readonly unknown[]): Promise<Found[]> => {
    try {
      return await database.query<Found>(sql, params);
    } catch (error) {
      throw asReadError(error);
    }
  };
  return {
    async tell(ward, { concern, kind, about, adds, words }, by) {
      await query(
        `insert into handling_concern (concern, ward, at, kind, about, adds, staff, words)
         values ($1, $2, $3, $4, $5, $6, $7, $8) on conflict do nothing`,
        [
          concern,
          ward,
          Math.floor(clock.now() / HOUR) * HOUR,
          kind,
          about ?? null,
          adds ?? null,
          by,
          words === undefined ? null : keys.seal(wordsOf(ward, concern), words),
        ],
      );
    },

    async list(ward) {
      const rows = await query<Row>(
        `select concern, at, kind, about, adds, staff, words from handling_concern
          where ward = $1 and at >= $2 order by at desc, concern limit $3`,
        [ward, clock.now() - LISTED_FOR_MS, LISTED_AT_MOST],
      );
      const first = new Map(rows.filter(({ adds }) => adds === null).map((row) => [row.concern, row]));
      // Said afterwards of something that never arrived: it stands for itself.
      const alone = rows.filter(({ adds }) => adds !== null && !first.has(adds));
      return [...first.values(), ...alone]
        .map((row): Concern => {
          const all = [row, ...rows.filter(({ adds }) => adds === row.concern)];
          return {
            concern: row.concern,
            at: row.at,
            kind: concernKind.parse(row.kind),
            about: [
              ...new Set(all.flatMap(({ about }) => (about === null ? [] : [concernAbout.parse(about)]))),
            ],
            words: all.flatMap((one) =>
              one.words === null ? [] : [keys.open(wordsOf(ward, one.concern), one.words)],
            ),
            by: all.find(({ staff }) => staff !== null)?.staff ?? null,
          };
        })
        .toSorted((a, b) => b.at - a.at || (a.concern < b.concern ? -1 : 1));
    },
  };
}
