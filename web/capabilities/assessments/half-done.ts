/**
 * A check that was begun and not sent, in IndexedDB of this browser: it outlives a reload, a killed page
 * and an empty battery. It belongs to one stay and one author, is offered to nobody else and for nobody
 * else, and goes when it is sent, put away, or too old for its readings to count.
 */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { HOUR, type EpochMs } from '@footboard/shared/kernel/times';
import type { CheckDraft } from './check-draft.ts';

export interface HalfDone {
  readonly ward: string;
  readonly stay: string;
  /** Staff id of whoever began it. */
  readonly staff: string;
  /** The server's clock when it was begun (epoch ms). */
  readonly begun: EpochMs;
  /** What it was begun under: under another protocol its questions would be others. */
  readonly protocol: { readonly id: string; readonly version: number };
  readonly draft: CheckDraft;
  /** By this device's own clock (epoch ms): nothing is kept here for longer than a day. */
  readonly keptAt?: number;
}
export type Whose = Pick<HalfDone, 'ward' | 'stay' | 'staff'>;

/**
 * May be gone on with: as long as the ward lets its first readings count (`start.readingHours`), and
 * under the protocol it was begun with. A clock put back makes it no younger.
 */
export const stillCounts = (
  kept: Pick<HalfDone, 'begun' | 'protocol'>,
  { rules, protocol, now }: { rules: RulesDocument; protocol: Protocol; now: EpochMs },
): boolean =>
  now >= kept.begun &&
  now - kept.begun <= rules.start.readingHours.value * HOUR &&
  kept.protocol.id === protocol.id &&
  kept.protocol.version === protocol.version;

interface Boxes extends DBSchema {
  checks: { key: string; value: HalfDone };
}
const CHECKS = 'checks';
let opening: Promise<IDBPDatabase<Boxes> | null> | null = null;
const boxes = (): Promise<IDBPDatabase<Boxes> | null> =>
  (opening ??=
    typeof indexedDB === 'undefined'
      ? Promise.resolve(null)
      : openDB<Boxes>('footboard-half-done', 1, {
          upgrade: (made) => void made.createObjectStore(CHECKS),
          blocking: (_now, _wanted, event) => (event.target as IDBDatabase).close(),
        })
          .then(swept)
          .catch(() => null));
/** Nobody may come back to what was begun: it goes by itself, as the last known board does. */
async function swept(open: IDBPDatabase<Boxes>): Promise<IDBPDatabase<Boxes>> {
  const change = open.transaction(CHECKS, 'readwrite');
  for (let at = await change.store.openCursor(); at; at = await at.continue()) {
    if (Date.now() - (at.value.keptAt ?? 0) > 24 * HOUR) await at.delete();
  }
  await change.done;
  return open;
}
const keyOf = ({ ward, stay, staff }: Whose): string => JSON.stringify([ward, stay, staff]);

/** None of these throws: a browser that keeps nothing has no half-done check. */
export const halfDone = {
  async put(check: HalfDone): Promise<void> {
    const open = await boxes();
    try {
      const change = open?.transaction(CHECKS, 'readwrite', { durability: 'strict' });
      // A copy: what a page holds may be of a kind that IndexedDB cannot take.
      await change?.store.put(
        JSON.parse(JSON.stringify({ ...check, keptAt: Date.now() })) as HalfDone,
        keyOf(check),
      );
      await change?.done;
    } catch {
      // Nothing is lost that the page does not still hold.
    }
  },
  async of(whose: Whose): Promise<HalfDone | null> {
    return (await (await boxes())?.get(CHECKS, keyOf(whose)).catch(() => undefined)) ?? null;
  },
  async drop(whose: Whose): Promise<void> {
    await (await boxes())?.delete(CHECKS, keyOf(whose)).catch(() => undefined);
  },
};
