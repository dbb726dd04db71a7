import { afterAll } from 'vitest';
import { openDatabase } from '@footboard/server/platform/database';
import { logContract } from './log-contract.ts';
import { openOver } from './log-fixture.ts';
import type { Opened } from './log-fixture.ts';
import { vaultContract } from './vault-contract.ts';

/** Starting the embedded database is most of the time, so both contracts share one. */
let one: Promise<Opened> | null = null;
const open = async () => {
  one ??= openDatabase({ dataDir: 'memory://' }).then((database) => openOver(database));
  return { ...(await one), close: async () => undefined };
};
afterAll(async () => (await one)?.close());

logContract('PGlite', open);
vaultContract('PGlite', open);
