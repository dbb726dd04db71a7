import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { Kysely, PostgresDialect } from 'kysely';
import type { PostgresPoolClient } from 'kysely';
import type { Database, NoTables } from './database-port.ts';
import { DatabaseUnreachable } from './database-errors.ts';
import { lockFolder } from './folder-lock.ts';

/** The embedded database is one session: callers take it in turn, a transaction keeps it till its end. */
class Turns {
  #last: Promise<void> = Promise.resolve();
  /** Resolves when it is this caller's turn, with the function that ends the turn. */
  async take(): Promise<() => void> {
    const before = this.#last;
    let end!: () => void;
    this.#last = new Promise((resolve) => (end = resolve));
    await before;
    return end;
  }
}

/**
 * @param dataDir folder that holds the database in `database/`, or `memory://`.
 * @throws FolderInUse
 */
export async function openEmbedded(dataDir: string): Promise<Database> {
  const inMemory = dataDir.startsWith('memory://');
  const lock = inMemory ? null : lockFolder(dataDir);
  let pglite: PGlite;
  try {
    pglite = await PGlite.create(inMemory ? 'memory://' : join(dataDir, 'database'));
  } catch (error) {
    lock?.release();
    throw error;
  }
  const turns = new Turns();
  let closed = false;

  const run = async (sql: string, params: readonly unknown[]) => {
    if (closed) throw new DatabaseUnreachable(new Error('the embedded database is closed'));
    // Without parameters a text may hold several statements (a migration does).
    const result =
      params.length === 0 ? (await pglite.exec(sql)).at(-1) : await pglite.query(sql, [...params]);
    const rows = (result?.rows ?? []) as Record<string, unknown>[];
    const changed = result?.affectedRows ?? 0;
    return { command: changed > 0 ? ('UPDATE' as const) : ('SELECT' as const), rowCount: changed, rows };
  };
  const connect = async () => {
    const release = await turns.take();
    return { query: run, release } as unknown as PostgresPoolClient;
  };
  const end = async () => {
    if (closed) return;
    const done = await turns.take();
    closed = true;
    await pglite.close();
    lock?.release();
    done();
  };

  const kysely = new Kysely<NoTables>({ dialect: new PostgresDialect({ pool: { connect, end } }) });
  return {
    kind: 'pglite',
    kysely,
    async query<Row>(sql: string, params: readonly unknown[] = []) {
      const done = await turns.take();
      try {
        return (await run(sql, params)).rows as Row[];
      } finally {
        done();
      }
    },
    async listen(channel, heard) {
      const stop = await pglite.listen(channel, heard);
      return async () => {
        if (!closed) await stop();
      };
    },
    async close() {
      await kysely.destroy();
      await end();
    },
  };
}
