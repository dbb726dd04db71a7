import { randomBytes } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { KEY_BYTES, decrypt, encrypt } from './cipher.ts';

describe('the vault cipher', () => {
  const key = randomBytes(KEY_BYTES);
  const plain = Buffer.from('Ada Invented, bed 12');

  it('opens an outside AES-256-GCM example', () => {
    // McGrew and Viega, "The Galois/Counter Mode of Operation", test case 14 (values from memory):
    // key, nonce and 16 bytes of plain text all zero, nothing else authenticated.
    const stored = Buffer.concat([
      Buffer.of(1),
      Buffer.alloc(12),
      Buffer.from('d0d1c8a799996bf0265b98b5d48ab919', 'hex'),
      Buffer.from('cea7403d4d606b6e074ec5d3baf39d18', 'hex'),
    ]);
    expect(decrypt(Buffer.alloc(KEY_BYTES), '', stored)).toEqual(Buffer.alloc(16));
  });

  it('gives back what it took, and never the same bytes twice', () => {
    const [one, two] = [encrypt(key, 'text 1', plain), encrypt(key, 'text 1', plain)];
    expect(decrypt(key, 'text 1', one)).toEqual(plain);
    expect(decrypt(key, 'text 1', two)).toEqual(plain);
    expect(one.equals(two)).toBe(false);
  });

  it.each([
    ['another key', () => decrypt(randomBytes(KEY_BYTES), 'text 1', encrypt(key, 'text 1', plain))],
    ['another reference', () => decrypt(key, 'text 2', encrypt(key, 'text 1', plain))],
    [
      'one changed bit',
      () => {
        const stored = encrypt(key, 'text 1', plain);
        stored[stored.length - 1]! ^= 1;
        return decrypt(key, 'text 1', stored);
      },
    ],
    ['a cut ciphertext', () => decrypt(key, 'text 1', encrypt(key, 'text 1', plain).subarray(0, -1))],
  ])('refuses %s', (_, open) => {
    expect(open).toThrow(/authenticate/);
  });

  it('refuses a version it does not know', () => {
    const stored = encrypt(key, '', plain);
    stored[0] = 2;
    expect(() => decrypt(key, '', stored)).toThrow(/version 2/);
  });
});
