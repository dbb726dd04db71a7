import { cpSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '@footboard/server/platform/database';
import type { Database } from '@footboard/server/platform/database';
import { NewerDatabase, migrate, migrationsFolder } from '@footboard/server/platform/migrate';
import { BadMasterKey, masterKeyFrom } from '@footboard/server/vault/master-key';

describe('migrations', () => {
  let database: Database;
  let folder: string;
  beforeAll(async () => {
    database = await openDatabase({ dataDir: 'memory://' });
    folder = mkdtempSync(join(tmpdir(), 'footboard-migrations-'));
    cpSync(migrationsFolder(), folder, { recursive: true });
  });
  afterAll(async () => {
    await database?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const tables = async () =>
    (
      await database.query<{ name: string }>(
        `select table_name as name from information_schema.tables
          where table_schema = 'public' order by table_name`,
      )
    ).map((row) => row.name);

  it('MIGRATE-1 a fresh database is brought to the schema in order, and a second start does nothing', async () => {
    const done = await migrate(database, folder);
    expect(done.slice(0, 3)).toEqual(['0001-log', '0002-vault', '0003-append']);
    expect(done).toEqual(done.toSorted());
    expect(await tables()).toEqual(
      expect.arrayContaining(['command_outcome', 'event', 'text_kept', 'ward_head']),
    );
    expect(await migrate(database, folder)).toEqual([]);
  });

  it('MIGRATE-2 a migration that fails leaves nothing of itself and is named', async () => {
    writeFileSync(join(folder, '9998-broken.sql'), 'create table half_done (n integer);\nselect nonsense;\n');
    await expect(migrate(database, folder)).rejects.toThrow(/could not be upgraded \(9998-broken\)/);
    expect(await tables()).not.toContain('half_done');
    rmSync(join(folder, '9998-broken.sql'));
  });

  it('MIGRATE-3 a database upgraded by a newer program is refused, naming what is not known', async () => {
    writeFileSync(join(folder, '9999-later.sql'), 'create table later_thing (n integer);\n');
    expect(await migrate(database, folder)).toEqual(['9999-later']);
    rmSync(join(folder, '9999-later.sql'));
    const refused = migrate(database, folder);
    await expect(refused).rejects.toBeInstanceOf(NewerDatabase);
    await expect(refused).rejects.toThrow(/newer Footboard.*9999-later/);
  });
});

describe('the master key', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'footboard-key-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('VAULT-7 is made once, for its owner only, and read again at the next start', () => {
    const made = masterKeyFrom(folder);
    expect(made).toHaveLength(32);
    expect(statSync(join(folder, 'master.key')).mode & 0o777).toBe(0o600);
    expect(masterKeyFrom(folder).equals(made)).toBe(true);
    expect(masterKeyFrom('elsewhere', join(folder, 'master.key')).equals(made)).toBe(true);
  });

  it('VAULT-7 a named file that is missing or no key is refused, naming it', () => {
    const wrong = join(folder, 'wrong.key');
    writeFileSync(wrong, 'not a key\n');
    expect(() => masterKeyFrom(folder, wrong)).toThrow(BadMasterKey);
    expect(() => masterKeyFrom(folder, wrong)).toThrow(wrong);
    expect(() => masterKeyFrom(folder, join(folder, 'none.key'))).toThrow(/MASTER_KEY_FILE .*none\.key/);
  });
});
