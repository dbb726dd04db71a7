import { randomFillSync } from 'node:crypto';

/** Random bytes for many ids at a time: asking the system for each costs more than making the id. */
const pool = Buffer.alloc(16 * 256);
let used = pool.length;

/**
 * A fresh id (RFC 9562, UUID version 7: 48 bits of milliseconds, then random bits). Time first, so
 * that new rows land together in an index; the time in it is never read back as a fact.
 */
export function freshId(now: number = Date.now()): string {
  if (used === pool.length) {
    randomFillSync(pool);
    used = 0;
  }
  const bytes = pool.subarray(used, (used += 16));
  bytes.writeUIntBE(now, 0, 6);
  bytes[6] = (bytes[6]! & 0x0f) | 0x70;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
