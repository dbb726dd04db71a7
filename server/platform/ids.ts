import { randomBytes } from 'node:crypto';

/**
 * A fresh id (RFC 9562, UUID version 7: 48 bits of milliseconds, then random bits). Time first, so
 * that new rows land together in an index; the time in it is never read back as a fact.
 */
export function freshId(now: number = Date.now()): string {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(now, 0, 6);
  bytes[6] = (bytes[6]! & 0x0f) | 0x70;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
