/** What the parts of access are made of, for tests: a real embedded database, a clock that a test moves. */
import { pino } from 'pino';
import { readConfig } from '../platform/config.ts';
import type { Database } from '../platform/database.ts';
import { openDatabase } from '../platform/database.ts';
import { DatabaseUnreachable } from '../platform/database-errors.ts';
import { migrate } from '../platform/migrate.ts';
import { newMasterKey } from '../vault/master-key.ts';
import { accessKeys } from './keys.ts';
import type { AccessParts } from './parts.ts';

export interface TestParts extends AccessParts {
  readonly clock: { now(): number; readonly rate: number; at: number };
  /** Lines of the server's log. */
  readonly said: string[];
  /** While true, every statement fails as if the database were away. */
  away: boolean;
  close(): Promise<void>;
}

export async function openParts(env: Readonly<Record<string, string>> = {}): Promise<TestParts> {
  const config = readConfig({ DATA_DIR: 'memory://', ...env });
  const real = await openDatabase(config);
  await migrate(real);
  const said: string[] = [];
  const clock = {
    at: Date.UTC(2026, 9, 20, 9, 0),
    rate: 1,
    now: () => clock.at,
  };
  const database: Database = {
    ...real,
    query: async (...asked: Parameters<Database['query']>) => {
      if (parts.away) throw new DatabaseUnreachable(new Error('test'));
      return real.query<never>(...asked);
    },
  };
  const parts: TestParts = {
    database,
    keys: accessKeys(newMasterKey()),
    clock,
    config,
    logger: pino({ level: 'warn' }, { write: (line: string) => void said.push(line) }),
    said,
    away: false,
    close: () => real.close(),
  };
  return parts;
}
