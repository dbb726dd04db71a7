import type { Kysely } from 'kysely';

/** Each room names its own tables: `database.kysely.withTables<LogTables>()`. */
export type NoTables = Record<never, never>;

export interface Database {
  readonly kind: 'postgres' | 'pglite';
  readonly kysely: Kysely<NoTables>;
  /**
   * One statement, one round trip, prepared once per connection. 64-bit integers come as numbers.
   * @throws DatabaseUnreachable (nothing was sent), AnswerLost (it was), or the server's refusal.
   */
  query<Row>(sql: string, params?: readonly unknown[], within?: { ms: number }): Promise<Row[]>;
  /**
   * `heard` is called with the payload of each notification, `restored` after the listening
   * connection had been lost and is back: anything may have been missed meanwhile.
   */
  listen(
    channel: string,
    heard: (payload: string) => void,
    restored: () => void,
  ): Promise<() => Promise<void>>;
  close(): Promise<void>;
}
export const DATABASE = Symbol('Database');
