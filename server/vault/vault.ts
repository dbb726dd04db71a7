/**
 * Personal data beside the log: every name and free text, encrypted (AES-256-GCM) under a key per
 * stay or staff member; the keys are wrapped by a master key that lives outside the database.
 */
export interface Vault {
  /** Plain text by reference. A destroyed key gives null for its references: "(text removed)". */
  open(refs: readonly string[]): Promise<ReadonlyMap<string, string | null>>;
  /** Destroys the subject's key and leaves a tombstone; the log's chain still verifies. */
  destroyKey(subject: string): Promise<void>;
}
export const VAULT = Symbol('Vault');
