import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Migrator, sql } from 'kysely';
import type { Migration } from 'kysely';
import type { Database } from './database.ts';

const DONE = 'migration_done';
const LOCK = 'migration_lock';

/** The database was upgraded by a newer program than this one. */
export class NewerDatabase extends Error {
  constructor(unknown: readonly string[]) {
    super(
      `the database was upgraded by a newer Footboard (this one does not know ${unknown.join(', ')}): start the newer version`,
    );
    this.name = 'NewerDatabase';
  }
}

/** `migrations/` beside the workspaces: the same from source and from server/dist. */
export function migrationsFolder(from: string = import.meta.dirname): string {
  for (let at = from; ; at = dirname(at)) {
    const folder = join(at, 'migrations');
    if (existsSync(join(folder, '0001-log.sql'))) return folder;
    if (dirname(at) === at) throw new Error(`no migrations folder above ${from}`);
  }
}

/** Plain SQL, forward only. Each file runs in one transaction. */
function migrationsIn(folder: string): Record<string, Migration> {
  const files = readdirSync(folder).filter((file) => file.endsWith('.sql'));
  return Object.fromEntries(
    files.map((file): [string, Migration] => [
      file.slice(0, -'.sql'.length),
      {
        up: async (db) => {
          await sql.raw(readFileSync(join(folder, file), 'utf8')).execute(db);
        },
      },
    ]),
  );
}

/**
 * Brings the database to this program's schema, under a lock, so that servers starting together
 * do it once.
 * @returns names of the migrations run now.
 * @throws NewerDatabase
 */
export async function migrate(database: Database, folder = migrationsFolder()): Promise<readonly string[]> {
  const migrations = migrationsIn(folder);
  const [encoding] = await database.query<{ server_encoding: string }>('show server_encoding');
  if (encoding?.server_encoding !== 'UTF8') {
    throw new Error(
      `the database's encoding is ${encoding?.server_encoding}: create it with encoding UTF8 (names need it)`,
    );
  }
  const migrator = new Migrator({
    db: database.kysely,
    provider: { getMigrations: async () => migrations },
    migrationTableName: DONE,
    migrationLockTableName: LOCK,
  });
  const unknown = await migrationsNotIn(database, migrations);
  if (unknown.length > 0) throw new NewerDatabase(unknown);

  const { error, results = [] } = await migrator.migrateToLatest();
  if (error) {
    const failed = results.find((result) => result.status === 'Error');
    throw new Error(`the database could not be upgraded${failed ? ` (${failed.migrationName})` : ''}`, {
      cause: error,
    });
  }
  return results.map((result) => result.migrationName);
}

async function migrationsNotIn(
  database: Database,
  migrations: Record<string, Migration>,
): Promise<readonly string[]> {
  const [table] = await database.query<{ there: string | null }>(
    `select to_regclass('${DONE}')::text as there`,
  );
  if (!table?.there) return [];
  const done = await database.query<{ name: string }>(`select name from ${DONE} order by name`);
  return done.map((row) => row.name).filter((name) => !(name in migrations));
}
