/** The database behind everything: PostgreSQL by address, or the embedded one in the data folder. */
import type { Database } from './database-port.ts';
import { openEmbedded } from './database-embedded.ts';
import { openPostgres } from './database-postgres.ts';

export { DATABASE } from './database-port.ts';
export type { Database, NoTables } from './database-port.ts';

export interface DatabasePlace {
  readonly databaseUrl?: string | undefined;
  /** Folder of the embedded database, used when there is no address; `memory://` keeps nothing. */
  readonly dataDir: string;
}

/** @throws FolderInUse, DatabaseUnreachable */
export const openDatabase = async ({ databaseUrl, dataDir }: DatabasePlace): Promise<Database> =>
  databaseUrl ? openPostgres(databaseUrl) : openEmbedded(dataDir);
