/**
 * AES-256-GCM (NIST SP 800-38D) with a fresh 96-bit nonce each time. Stored as
 * version byte 1, nonce (12), tag (16), ciphertext. The context is authenticated with it, so that a
 * ciphertext copied to another reference or subject does not open.
 */
import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';

export const KEY_BYTES = 32;
const VERSION = 1;
const NONCE_BYTES = 12;
const TAG_BYTES = 16;

export function encrypt(key: Uint8Array, context: string, plain: Uint8Array): Buffer {
  const nonce = randomBytes(NONCE_BYTES);
  const cipher = createCipheriv('aes-256-gcm', key, nonce, { authTagLength: TAG_BYTES });
  cipher.setAAD(Buffer.from(context, 'utf8'));
  const body = Buffer.concat([cipher.update(plain), cipher.final()]);
  return Buffer.concat([Buffer.of(VERSION), nonce, cipher.getAuthTag(), body]);
}

/** @throws when the key is another one, or the bytes or their context were changed. */
export function decrypt(key: Uint8Array, context: string, stored: Uint8Array): Buffer {
  if (stored[0] !== VERSION) throw new Error(`ciphertext of version ${stored[0]} is not known`);
  const nonce = stored.subarray(1, 1 + NONCE_BYTES);
  const tag = stored.subarray(1 + NONCE_BYTES, 1 + NONCE_BYTES + TAG_BYTES);
  const decipher = createDecipheriv('aes-256-gcm', key, nonce, { authTagLength: TAG_BYTES });
  decipher.setAAD(Buffer.from(context, 'utf8'));
  decipher.setAuthTag(tag);
  return Buffer.concat([decipher.update(stored.subarray(1 + NONCE_BYTES + TAG_BYTES)), decipher.final()]);
}
