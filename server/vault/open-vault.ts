import type { TextToKeep } from '../log/log.ts';
import { SubjectErased, asReadError } from '../log/errors.ts';
import type { Database } from '../platform/database.ts';
import { KEY_BYTES, decrypt, encrypt } from './cipher.ts';
import type { MasterKey } from './master-key.ts';
import { randomBytes } from 'node:crypto';
import { NOTHING_SEALED } from './sealer.ts';
import type { Sealed, Sealer } from './sealer.ts';
import type { Vault } from './vault.ts';

/** Keys remembered for writing; forgotten oldest first. A destroyed one is refused by the append itself. */
const KEYS_REMEMBERED = 2_000;

const keyContext = (subject: string) => `key of ${subject}`;
const textContext = (subject: string, ref: string) => `text ${ref} of ${subject}`;

export function openVault(database: Database, masterKey: MasterKey): Vault & Sealer {
  const remembered = new Map<string, Buffer>();
  const remember = (subject: string, key: Buffer) => {
    remembered.set(subject, key);
    if (remembered.size > KEYS_REMEMBERED) remembered.delete(remembered.keys().next().value!);
  };
  const query = async <Row>(sql: string, params: readonly unknown[]): Promise<Row[]> => {
    try {
      return await database.query<Row>(sql, params);
    } catch (error) {
      throw asReadError(error);
    }
  };

  async function fetchKeys(subjects: readonly string[]): Promise<void> {
    const missing = subjects.filter((subject) => !remembered.has(subject));
    if (missing.length === 0) return;
    const rows = await query<{ subject: string; wrapped_key: Uint8Array | null }>(
      'select subject, wrapped_key from text_key where subject = any ($1)',
      [missing],
    );
    const destroyed = rows.filter((row) => row.wrapped_key === null).map((row) => row.subject);
    if (destroyed.length > 0) throw new SubjectErased(destroyed);
    for (const row of rows) {
      remember(row.subject, decrypt(masterKey, keyContext(row.subject), row.wrapped_key!));
    }
  }

  async function seal(texts: readonly TextToKeep[]): Promise<Sealed> {
    if (texts.length === 0) return NOTHING_SEALED;
    const subjects = [...new Set(texts.map((text) => text.subject))];
    await fetchKeys(subjects);
    const newKeys = subjects
      .filter((subject) => !remembered.has(subject))
      .map((subject) => {
        const key = randomBytes(KEY_BYTES);
        return { subject, key, wrapped: encrypt(masterKey, keyContext(subject), key) };
      });
    const fresh = new Map(newKeys.map(({ subject, key }) => [subject, key]));
    return {
      newKeys,
      texts: texts.map(({ ref, subject, text }) => ({
        ref,
        subject,
        ciphertext: encrypt(
          remembered.get(subject) ?? fresh.get(subject)!,
          textContext(subject, ref),
          Buffer.from(text, 'utf8'),
        ),
      })),
    };
  }

  async function open(refs: readonly string[]): Promise<ReadonlyMap<string, string | null>> {
    if (refs.length === 0) return new Map();
    const rows = await query<{
      ref: string;
      subject: string;
      ciphertext: Uint8Array;
      wrapped_key: Uint8Array | null;
    }>(
      `select t.ref, t.subject, t.ciphertext, k.wrapped_key
         from text_kept t join text_key k using (subject) where t.ref = any ($1)`,
      [[...new Set(refs)]],
    );
    // The key comes from the database each time: erasure holds at once, in every process.
    const keys = new Map<string, Buffer>();
    const opened = new Map<string, string | null>();
    for (const { ref, subject, ciphertext, wrapped_key } of rows) {
      if (wrapped_key === null) {
        opened.set(ref, null);
        continue;
      }
      let key = keys.get(subject);
      if (!key) keys.set(subject, (key = decrypt(masterKey, keyContext(subject), wrapped_key)));
      opened.set(ref, decrypt(key, textContext(subject, ref), ciphertext).toString('utf8'));
    }
    return opened;
  }

  return {
    open,
    seal,
    async destroyKey(subject) {
      remembered.delete(subject);
      // A subject with nothing kept yet gets its tombstone too, so that nothing can be kept later.
      await query(
        `insert into text_key (subject, destroyed_at) values ($1, footboard_clock())
         on conflict (subject) do update set wrapped_key = null, destroyed_at = excluded.destroyed_at
           where text_key.destroyed_at is null`,
        [subject],
      );
      // An update leaves the old row, key and all, in the table's file; the embedded database never
      // cleans up by itself. The tombstone holds whether or not the cleaning can be done now.
      await query('vacuum text_key', []).catch(() => undefined);
    },
    sealed: (done) => {
      for (const { subject, key } of done.newKeys) remember(subject, key);
    },
    forget: (subjects) => {
      for (const subject of subjects) remembered.delete(subject);
    },
  };
}
