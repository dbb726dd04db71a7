/**
 * Where unsent entries are kept: IndexedDB of this browser, which outlives a reload, a crash and a
 * sign-out. Where there is none, memory, and the screen says that a reload would lose them.
 */
import { openDB, type DBSchema } from 'idb';
import type { OutboxEntry } from './entry.ts';

export interface OutboxStorage {
  /** False when a reload loses what is kept. */
  readonly lasting: boolean;
  all(): Promise<readonly OutboxEntry[]>;
  /** Keeps an entry, in place of another one if it follows from it. All or nothing. */
  put(entry: OutboxEntry, inPlaceOf?: string): Promise<void>;
  take(commandId: string): Promise<void>;
}

interface Boxes extends DBSchema {
  entries: { key: string; value: OutboxEntry };
}
const NAME = 'footboard-outbox';
const ENTRIES = 'entries';
/** A browser that cannot say within this time is taken for one without storage. */
const OPEN_WITHIN_MS = 3_000;

export function inMemory(): OutboxStorage {
  const kept = new Map<string, OutboxEntry>();
  return {
    lasting: false,
    all: async () => [...kept.values()],
    async put(entry, inPlaceOf) {
      if (inPlaceOf !== undefined) kept.delete(inPlaceOf);
      kept.set(entry.command.commandId, entry);
    },
    async take(commandId) {
      kept.delete(commandId);
    },
  };
}

async function inBrowser(): Promise<OutboxStorage> {
  const boxes = await openDB<Boxes>(NAME, 1, {
    upgrade: (made) => void made.createObjectStore(ENTRIES),
    // A newer page wants to change the boxes: let it.
    blocking: (_now, _wanted, event) => (event.target as IDBDatabase).close(),
  });
  return {
    lasting: true,
    all: () => boxes.getAll(ENTRIES),
    async put(entry, inPlaceOf) {
      const change = boxes.transaction(ENTRIES, 'readwrite', { durability: 'strict' });
      await Promise.all([
        inPlaceOf === undefined ? undefined : change.store.delete(inPlaceOf),
        change.store.put(entry, entry.command.commandId),
        change.done,
      ]);
    },
    async take(commandId) {
      await boxes.delete(ENTRIES, commandId);
    },
  };
}

/** Never throws. */
export async function openOutboxStorage(): Promise<OutboxStorage> {
  if (typeof indexedDB === 'undefined') return inMemory();
  let late: ReturnType<typeof setTimeout> | undefined;
  try {
    return await Promise.race([
      inBrowser(),
      new Promise<never>((_, refuse) => {
        late = setTimeout(() => refuse(new Error('the browser does not open its storage')), OPEN_WITHIN_MS);
      }),
    ]);
  } catch {
    return inMemory();
  } finally {
    clearTimeout(late);
  }
}
