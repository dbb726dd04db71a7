import type { TextToKeep } from '../log/log.ts';

export interface Sealed {
  /** Keys made for this append; stored with it. */
  readonly newKeys: readonly { subject: string; wrapped: Buffer; key: Buffer }[];
  readonly texts: readonly { ref: string; subject: string; ciphertext: Buffer }[];
}

/** The writing side of the vault: encrypts before the append, which stores key, text and event together. */
export interface Sealer {
  /** @throws SubjectErased */
  seal(texts: readonly TextToKeep[]): Promise<Sealed>;
  /** The append that stored these has committed: their new keys may be used again. */
  sealed(done: Sealed): void;
  /** Whatever is remembered of these subjects' keys may be wrong. */
  forget(subjects: readonly string[]): void;
}

export const NOTHING_SEALED: Sealed = { newKeys: [], texts: [] };
