/** The master key lives outside the database: whoever has only the database cannot read a name. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import type { Database } from '../platform/database.ts';
import { KEY_BYTES, decrypt, encrypt } from './cipher.ts';

/** 32 bytes. */
export type MasterKey = Buffer;
export const newMasterKey = (): MasterKey => randomBytes(KEY_BYTES);

export class BadMasterKey extends Error {
  constructor(why: string) {
    super(why);
    this.name = 'BadMasterKey';
  }
}

function read(file: string): MasterKey {
  const text = readFileSync(file, 'utf8').trim();
  if (!/^[0-9a-f]{64}$/i.test(text)) {
    throw new BadMasterKey(`${file} is no master key: it holds 64 hexadecimal digits on one line`);
  }
  return Buffer.from(text, 'hex');
}

/**
 * The key in `file` if one is named (it must exist), else DATA_DIR/master.key, made at first start
 * and readable by its owner only. Keep a copy apart from the database's: without it no name opens.
 * @throws BadMasterKey
 */
export function masterKeyFrom(dataDir: string, file?: string): MasterKey {
  if (file !== undefined) {
    try {
      return read(file);
    } catch (error) {
      if (error instanceof BadMasterKey) throw error;
      throw new BadMasterKey(`MASTER_KEY_FILE ${file} cannot be read: ${(error as Error).message}`);
    }
  }
  if (dataDir.startsWith('memory://')) return newMasterKey();
  mkdirSync(dataDir, { recursive: true, mode: 0o700 });
  const own = join(dataDir, 'master.key');
  try {
    writeFileSync(own, `${newMasterKey().toString('hex')}\n`, { mode: 0o600, flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  return read(own);
}

const PROOF = 'footboard vault';

/**
 * Call once at start, after the migrations: a database begun under one master key refuses another,
 * before anything is encrypted that the first could not open.
 * @throws BadMasterKey
 */
export async function checkMasterKey(database: Database, masterKey: MasterKey): Promise<void> {
  await database.query('insert into vault_seal (proof) values ($1) on conflict do nothing', [
    encrypt(masterKey, PROOF, Buffer.from(PROOF)),
  ]);
  const [seal] = await database.query<{ proof: Uint8Array }>('select proof from vault_seal where $1', [true]);
  try {
    decrypt(masterKey, PROOF, seal!.proof);
  } catch {
    throw new BadMasterKey(
      'the master key is not the one this database was begun with: restore that key (DATA_DIR/master.key, or MASTER_KEY_FILE)',
    );
  }
}
