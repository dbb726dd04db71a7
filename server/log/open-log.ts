import type { WardId } from '@footboard/shared/kernel/ids';
import type { Database } from '../platform/database.ts';
import type { Sealer } from '../vault/sealer.ts';
import { NOTHING_SEALED } from '../vault/sealer.ts';
import { append } from './append.ts';
import { Doorbell } from './doorbell.ts';
import { asReadError } from './errors.ts';
import { WardGate } from './gate.ts';
import { linksOf } from './links.ts';
import type { Log } from './log.ts';
import { openReader } from './read.ts';
import { unsignedOf } from './unsigned.ts';
import { verify } from './verify.ts';

/** A log without a vault keeps no personal data: it refuses texts. */
const noVault: Sealer = {
  seal: async (texts) => {
    if (texts.length > 0)
      throw new Error('this log was opened without a vault: it cannot keep personal data');
    return NOTHING_SEALED;
  },
  sealed: () => undefined,
  forget: () => undefined,
};

/** @param vault the writing side of the vault (`openVault(database, masterKey)` is one). */
export function openLog(database: Database, vault: Sealer = noVault): Log {
  const reader = openReader(database);
  const gate = new WardGate();
  const doorbell = new Doorbell(database);
  const listeners = new Set<(ward: WardId) => void>();
  const ring = (ward: WardId) => {
    for (const listener of listeners) listener(ward);
  };
  const ringAll = async () => {
    // Still unreachable: whoever reads polls anyway, and the next restoring rings again.
    const heads = await reader.heads().catch(() => new Map<WardId, number>());
    for (const ward of heads.keys()) ring(ward);
  };
  let listening = false;
  const parts = { database, gate, sealer: vault, outcomeOf: reader.outcomeOf };

  return {
    ...reader,
    readUnsigned: (ward, asked) => unsignedOf(database, ward, asked),
    async append(request) {
      const appended = await append(parts, request);
      const wards = new Set(appended.events.map((event) => event.ward));
      for (const ward of wards) ring(ward);
      doorbell.ring(wards);
      return appended;
    },
    onGrowth(listener) {
      listeners.add(listener);
      if (!listening) {
        listening = true;
        void doorbell
          .answer(ring, () => void ringAll())
          .catch(() => {
            listening = false;
          });
      }
      return () => listeners.delete(listener);
    },
    verify: (ward, anchor) => verify(database, ward, anchor),
    links: (ward, stream) => linksOf(database, ward, stream),
    async anchor(ward) {
      try {
        const [row] = await database.query<{ position: number; chain: string }>(
          `select position, encode(chain, 'hex') as chain from ward_head where ward = $1`,
          [ward],
        );
        return row ?? { position: 0, chain: '00'.repeat(32) };
      } catch (error) {
        throw asReadError(error);
      }
    },
  };
}
