/** Keys of access, each made from the master key for one purpose (HKDF-SHA-256, RFC 5869). */
import { createHash, createHmac, hkdfSync, randomBytes } from 'node:crypto';
import { KEY_BYTES, decrypt, encrypt } from '../vault/cipher.ts';
import type { MasterKey } from '../vault/master-key.ts';

export interface AccessKeys {
  /** Keyed hash (HMAC-SHA-256, hex) of something that must be found again but not read. */
  lookUp(purpose: 'sign-in-name' | 'badge' | 'outside' | 'pairing-code', text: string): string;
  seal(context: string, text: string): Buffer;
  /** @throws when it was sealed under another key or context. */
  open(context: string, sealed: Uint8Array): string;
}

export function accessKeys(masterKey: MasterKey): AccessKeys {
  const made = (purpose: string) =>
    Buffer.from(hkdfSync('sha256', masterKey, '', `footboard access ${purpose}`, KEY_BYTES));
  const find = made('look-up');
  const kept = made('seal');
  return {
    lookUp: (purpose, text) => createHmac('sha256', find).update(`${purpose}\0${text}`, 'utf8').digest('hex'),
    seal: (context, text) => encrypt(kept, context, Buffer.from(text, 'utf8')),
    open: (context, sealed) => decrypt(kept, context, sealed).toString('utf8'),
  };
}

/** 256 random bits, base64url: 43 characters. */
export const newToken = (): string => randomBytes(32).toString('base64url');
/** Tokens are random and long: a plain SHA-256 keeps them unreadable in the database. */
export const tokenHash = (token: string): string => createHash('sha256').update(token, 'utf8').digest('hex');
