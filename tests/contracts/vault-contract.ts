/** The promises of the vault, on every database (docs/promises.md). */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SubjectErased } from '@footboard/server/log/errors';
import { VersionConflict } from '@footboard/server/log/log';
import { openLog } from '@footboard/server/log/open-log';
import { BadMasterKey, checkMasterKey, newMasterKey } from '@footboard/server/vault/master-key';
import { openVault } from '@footboard/server/vault/open-vault';
import { entry, newId, newWard, outcome, request } from './log-fixture.ts';
import type { Open, Opened } from './log-fixture.ts';

export function vaultContract(on: string, open: Open): void {
  describe(`the vault on ${on}`, () => {
    let opened: Opened;
    beforeAll(async () => {
      opened = await open();
    });
    afterAll(async () => {
      await opened?.close();
    });

    const keep = async (subject: `stay/${string}` | `staff/${string}`, text: string) => {
      const ref = newId();
      const ward = newWard();
      await opened.log.append({
        command: outcome(ward),
        events: [entry(ward, 'stay/s1', 1, { payload: { kind: 'fall', note: { ref } } })],
        texts: [{ ref, subject, text }],
      });
      return { ref, ward };
    };

    it('VAULT-1 a text kept with an append opens again, in this process and in another', async () => {
      const key = newMasterKey();
      const ours = openVault(opened.database, key);
      const log = openLog(opened.database, ours);
      const ward = newWard();
      const stay = `stay/${newId()}` as const;
      const [one, two] = [newId(), newId()];
      await log.append({
        command: outcome(ward),
        events: [entry(ward, 'stay/s1', 1)],
        texts: [
          { ref: one, subject: stay, text: 'Náïve 試 "quoted"' },
          { ref: two, subject: 'staff/ada', text: 'Ada Invented' },
        ],
      });
      const another = openVault(opened.database, key);
      for (const vault of [ours, another]) {
        expect(await vault.open([one, two, 'nobody'])).toEqual(
          new Map([
            [one, 'Náïve 試 "quoted"'],
            [two, 'Ada Invented'],
          ]),
        );
      }
      const [row] = await opened.database.query<{ ciphertext: Uint8Array }>(
        'select ciphertext from text_kept where ref = $1',
        [two],
      );
      expect(Buffer.from(row!.ciphertext).includes('Invented')).toBe(false);
    });

    it('VAULT-2 erasure: references open to null, nothing more can be kept, the log verifies', async () => {
      const subject = `stay/${newId()}` as const;
      const { ref, ward } = await keep(subject, 'to be forgotten');
      const { ref: other } = await keep(`stay/${newId()}`, 'stays');
      await opened.vault.destroyKey(subject);
      await opened.vault.destroyKey(subject);
      expect(await opened.vault.open([ref, other])).toEqual(
        new Map([
          [ref, null],
          [other, 'stays'],
        ]),
      );
      await expect(keep(subject, 'again')).rejects.toBeInstanceOf(SubjectErased);
      expect((await opened.log.verify(ward)).faults).toEqual([]);
      const [tombstone] = await opened.database.query<{ wrapped_key: unknown; destroyed_at: unknown }>(
        'select wrapped_key, destroyed_at from text_key where subject = $1',
        [subject],
      );
      expect(tombstone!.wrapped_key).toBeNull();
      expect(tombstone!.destroyed_at).not.toBeNull();
    });

    it('VAULT-2 a key destroyed by another process refuses the append, and nothing of it stands', async () => {
      const key = newMasterKey();
      const [ours, theirs] = [openVault(opened.database, key), openVault(opened.database, key)];
      const log = openLog(opened.database, ours);
      const subject = `stay/${newId()}` as const;
      const ward = newWard();
      const kept = { ref: newId(), subject, text: 'first' };
      await log.append({ ...request(ward, 'stay/s1'), texts: [kept] });
      await theirs.destroyKey(subject);
      const late = request(ward, 'stay/s1', 2);
      await expect(
        log.append({ ...late, texts: [{ ref: newId(), subject, text: 'second' }] }),
      ).rejects.toBeInstanceOf(SubjectErased);
      expect(await log.head(ward)).toBe(1);
      expect(await log.outcomeOf(ward, late.command.commandId)).toBeNull();
    });

    it('VAULT-2 a subject erased before anything was kept takes nothing later', async () => {
      const subject = `stay/${newId()}` as const;
      await opened.vault.destroyKey(subject);
      await expect(keep(subject, 'late')).rejects.toBeInstanceOf(SubjectErased);
    });

    it('VAULT-3 a destroyed key cannot come back, nor a kept text be changed', async () => {
      const subject = `stay/${newId()}` as const;
      await keep(subject, 'once');
      await expect(
        opened.database.query(`update text_key set wrapped_key = '\\x00' where subject = $1`, [subject]),
      ).rejects.toThrow(/can only be destroyed/);
      await opened.vault.destroyKey(subject);
      for (const statement of [
        'delete from text_key',
        'truncate text_key cascade',
        'delete from text_kept',
      ]) {
        await expect(opened.database.query(statement)).rejects.toThrow(/is refused/);
      }
    });

    it('VAULT-4 two processes making the key of one subject at once end with one key', async () => {
      const key = newMasterKey();
      const subject = `stay/${newId()}` as const;
      const refs = [newId(), newId(), newId()];
      await Promise.all(
        refs.map((ref, n) =>
          openLog(opened.database, openVault(opened.database, key)).append({
            ...request(newWard(), 'stay/s1'),
            texts: [{ ref, subject, text: `text ${n}` }],
          }),
        ),
      );
      expect([...(await opened.vault.open([]))]).toEqual([]);
      expect(await openVault(opened.database, key).open(refs)).toEqual(
        new Map(refs.map((ref, n) => [ref, `text ${n}`])),
      );
    });

    it('VAULT-5 another master key is refused at start, before it encrypts anything', async () => {
      const key = newMasterKey();
      await checkMasterKey(opened.database, key);
      await checkMasterKey(opened.database, key);
      await expect(checkMasterKey(opened.database, newMasterKey())).rejects.toBeInstanceOf(BadMasterKey);
    });

    it('VAULT-6 an append that fails keeps no text', async () => {
      const ward = newWard();
      await opened.log.append(request(ward, 'stay/s1'));
      const ref = newId();
      const subject = `stay/${newId()}` as const;
      const again = { ...request(ward, 'stay/s1'), texts: [{ ref, subject, text: 'never' }] };
      await expect(opened.log.append(again)).rejects.toBeInstanceOf(VersionConflict);
      expect(await opened.vault.open([ref])).toEqual(new Map());
      // The key made for it was never stored either: the next text makes a new one that opens.
      const { ref: next } = await keep(subject, 'kept');
      expect((await opened.vault.open([next])).get(next)).toBe('kept');
    });
  });
}
