import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** RFC 8785 canonical JSON: the same value gives the same bytes whoever writes it. @throws on what JSON cannot hold. */
export function canonical(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('only a JSON value can be stored');
  return text;
}

/** SHA-256 of the text's UTF-8 bytes, hex. */
export const hashText = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');
