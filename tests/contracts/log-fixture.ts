/** What the contracts of the log and the vault share: an invented ward and the shortest valid append. */
import { randomUUID } from 'node:crypto';
import type { StreamKey } from '@footboard/shared/kernel/event-type';
import type { CommandId, EventId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { AppendRequest, CommandOutcome, EventToAppend, Log } from '@footboard/server/log/log';
import { openLog } from '@footboard/server/log/open-log';
import type { Database } from '@footboard/server/platform/database';
import { migrate } from '@footboard/server/platform/migrate';
import { newMasterKey } from '@footboard/server/vault/master-key';
import { openVault } from '@footboard/server/vault/open-vault';
import type { Vault } from '@footboard/server/vault/vault';

export interface Opened {
  readonly database: Database;
  readonly log: Log;
  readonly vault: Vault;
  close(): Promise<void>;
}

/** How a contract gets a database of its own, migrated, with a log and a vault over it. */
export type Open = () => Promise<Opened>;

export async function openOver(database: Database, masterKey = newMasterKey()): Promise<Opened> {
  await migrate(database);
  const vault = openVault(database, masterKey);
  return { database, vault, log: openLog(database, vault), close: () => database.close() };
}

export const newId = (): string => randomUUID();
export const newWard = (): WardId => `ward-${newId()}` as WardId;
export const nurse = { staff: 'nurse-ada' as StaffId, role: 'nurse' } as const;
export const AT = Date.parse('2026-03-02T08:15:00Z');

export const outcome = (ward: WardId, more: Partial<CommandOutcome> = {}): CommandOutcome => ({
  commandId: newId() as CommandId,
  ward,
  name: 'record-trigger',
  bodyHash: 'ab'.repeat(32),
  author: nurse,
  outcome: 'accepted',
  result: { outcome: 'accepted' },
  ...more,
});

export const entry = (
  ward: WardId,
  stream: StreamKey,
  version: number,
  more: Partial<EventToAppend> = {},
): EventToAppend => ({
  ward,
  stream,
  version,
  id: newId() as EventId,
  type: 'trigger-recorded',
  schemaVersion: 1,
  payload: { kind: 'fall' },
  occurred: AT,
  precision: 'exact',
  entered: AT + 60_000,
  enteredOffsetMinutes: 60,
  author: nurse,
  source: { kind: 'person' },
  ...more,
});

/** An append of `count` events to one stream, from version `from`. */
export const request = (ward: WardId, stream: StreamKey, from = 1, count = 1): AppendRequest => ({
  command: outcome(ward),
  events: Array.from({ length: count }, (_, n) => entry(ward, stream, from + n)),
});

/** The rejection of a promise, for looking at its parts. Fails when it does not reject. */
export async function rejection(promise: Promise<unknown>): Promise<unknown> {
  try {
    await promise;
  } catch (error) {
    return error;
  }
  throw new Error('expected a rejection, it resolved');
}

/** Runs `work` as a superuser who has switched the guarding triggers off: the only way to tamper. */
export async function tampering(
  database: Database,
  table: string,
  work: () => Promise<unknown>,
): Promise<void> {
  await database.query(`alter table ${table} disable trigger all`);
  try {
    await work();
  } finally {
    await database.query(`alter table ${table} enable trigger all`);
  }
}
