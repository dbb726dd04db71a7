/**
 * The last known board of each ward, in IndexedDB of this browser, for a screen that comes up without
 * its server. It holds what was on the screen and no more: beds, plans and ids, never a name or a
 * free text. It is thrown away when whoever it was for has gone, and after a day.
 */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import {
  heartbeat,
  snapshot,
  WIRE_VERSION,
  type Heartbeat,
  type Snapshot,
} from '@footboard/shared/wire/messages';

/** Ours: a board of yesterday helps nobody. Owner: the ward's clinical safety lead. */
export const KEPT_FOR_MS = 24 * 60 * 60_000;
/** A device clock that stands before the time it kept cannot say how old the board is. */
const CLOCK_MAY_DIFFER_MS = 60_000;

export interface KeptBoard {
  readonly ward: string;
  readonly wire: number;
  /** Whom the server knew here when it was shown: the device, and whoever was signed in. */
  readonly whose: string;
  readonly snapshot: Snapshot;
  readonly beat: Heartbeat;
  /** This device's clock when the beat came (epoch ms). */
  readonly heard: number;
}

interface Boxes extends DBSchema {
  boards: { key: string; value: KeptBoard };
}
const NAME = 'footboard-last-known';
let opening: Promise<IDBPDatabase<Boxes> | null> | null = null;

const boxes = (): Promise<IDBPDatabase<Boxes> | null> =>
  (opening ??=
    typeof indexedDB === 'undefined'
      ? Promise.resolve(null)
      : openDB<Boxes>(NAME, 1, {
          upgrade: (made) => void made.createObjectStore('boards'),
          blocking: (_now, _wanted, event) => (event.target as IDBDatabase).close(),
        }).catch(() => null));

/** May be shown: in the form this program reads, and of an age that can be told. Null otherwise. */
export function stillGood(kept: unknown, now: number): KeptBoard | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const it = kept as KeptBoard;
  const old = now - it.heard;
  if (it.wire !== WIRE_VERSION || !(old <= KEPT_FOR_MS) || old < -CLOCK_MAY_DIFFER_MS) return null;
  const board = snapshot.safeParse(it.snapshot);
  const beat = heartbeat.safeParse(it.beat);
  if (!board.success || !beat.success || board.data.ward !== it.ward || beat.data.ward !== it.ward)
    return null;
  return { ...it, snapshot: board.data, beat: beat.data };
}

/** None of these throws: a browser that keeps nothing has no last known board. */
export const keptBoards = {
  async put(kept: KeptBoard): Promise<void> {
    await (await boxes())?.put('boards', kept, kept.ward).catch(() => undefined);
  },
  /** What is too old, or of an unreadable form, is thrown away here. */
  async all(now: number): Promise<readonly KeptBoard[]> {
    const open = await boxes();
    const kept = (await open?.getAll('boards').catch(() => [])) ?? [];
    const good = kept.flatMap((one) => stillGood(one, now) ?? []);
    const wards = new Set(good.map(({ ward }) => ward));
    for (const { ward } of kept)
      if (!wards.has(ward)) await open?.delete('boards', ward).catch(() => undefined);
    return good;
  },
  async drop(): Promise<void> {
    await (await boxes())?.clear('boards').catch(() => undefined);
  },
};
