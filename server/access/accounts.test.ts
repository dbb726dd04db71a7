import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { HOUR } from '@footboard/shared/kernel/times';
import { Answered } from '../commanding/problems.ts';
import { openAccounts } from './accounts.ts';
import { newToken, tokenHash } from './keys.ts';
import { openParts } from './parts.testkit.ts';
import type { TestParts } from './parts.testkit.ts';
import type { Accounts } from './ports.ts';

const PASSWORD = 'lanterns under rain';
let parts: TestParts;
let accounts: Accounts;
let changed: string[];

beforeAll(async () => {
  parts = await openParts();
}, 60_000);
afterAll(() => parts?.close());
beforeEach(async () => {
  await parts.database.query('delete from account');
  accounts = openAccounts(parts);
  changed = [];
  accounts.onEdition((of) => changed.push(...of));
});

const refusal = async (run: Promise<unknown>): Promise<string> => {
  try {
    await run;
  } catch (error) {
    if (error instanceof Answered) return error.answer.type.replace('/problems/', '');
    throw error;
  }
  return 'taken';
};
const make = (staff: string, wide = false) =>
  accounts.make({ staff: staff as StaffId, name: `${staff} of Alder`, wide });
/** Somebody who can sign in. */
async function ready(staff: string, { wide = false, code }: { wide?: boolean; code?: string } = {}) {
  const { account } = await make(staff, wide);
  const { token } = await accounts.invite(account);
  return accounts.accept({ token, signInName: `${staff}.desk`, password: PASSWORD, code });
}

describe('the first run', () => {
  it('ACCOUNT-2 makes one administrator of the server by its link, who gives their name, and is over', async () => {
    expect(await accounts.firstRun()).toBe(true);
    const { token, ends } = (await accounts.inviteFirst())!;
    expect(ends - parts.clock.at).toBe(24 * HOUR);
    expect(await accounts.list()).toEqual([]);
    expect(await accounts.readInvitation(token)).toEqual({ kind: 'first-run', name: null, ends });
    const asked = { token, signInName: 'wilma', password: PASSWORD };
    expect(await refusal(accounts.accept(asked))).toBe('invalid-request');
    const first = await accounts.accept({ ...asked, name: 'Wilma First' });
    expect(first).toMatchObject({ name: 'Wilma First', wide: true, active: true, state: 'ready' });
    expect(await accounts.firstRun()).toBe(false);
    expect(await accounts.inviteFirst()).toBeNull();
    expect(await accounts.list()).toHaveLength(1);
    expect(await refusal(accounts.accept({ ...asked, signInName: 'eve', name: 'Eve' }))).toBe(
      'invitation-over',
    );
  });

  it('ACCOUNT-2 given a new start, the link of the start before is dead', async () => {
    const before = (await accounts.inviteFirst())!;
    const now = (await accounts.inviteFirst())!;
    expect(now.account).toBe(before.account);
    expect(await accounts.readInvitation(before.token)).toBeNull();
    expect(await accounts.readInvitation(now.token)).not.toBeNull();
  });

  it('ACCOUNT-2 given somebody who keeps the accounts meanwhile, its link is dead', async () => {
    const { token } = (await accounts.inviteFirst())!;
    await accounts.outside({ issuer: 'https://on.example', subject: '7', name: 'Olga', wide: true });
    expect(await accounts.firstRun()).toBe(false);
    expect(await accounts.readInvitation(token)).toBeNull();
    const asked = { token, signInName: 'eve', password: PASSWORD, name: 'Eve' };
    expect(await refusal(accounts.accept(asked))).toBe('invitation-over');
  });

  it('ACCOUNT-2 given two servers made a link each at the same moment, using one ends the other', async () => {
    const { token, account, ends } = (await accounts.inviteFirst())!;
    const other = newToken();
    await parts.database.query('insert into invitation (token_hash, account, ends) values ($1, $2, $3)', [
      tokenHash(other),
      account,
      ends,
    ]);
    expect(await accounts.readInvitation(other)).not.toBeNull();
    await accounts.accept({ token, signInName: 'wilma', password: PASSWORD, name: 'Wilma' });
    expect(await accounts.readInvitation(other)).toBeNull();
  });

  it('goes on while only somebody who keeps no accounts can sign in', async () => {
    await ready('noor');
    expect(await accounts.firstRun()).toBe(true);
  });
});

describe('an invitation', () => {
  it('ACCOUNT-3 works once, of two at the same moment for one', async () => {
    const { account } = await make('noor');
    const { token } = await accounts.invite(account);
    const both = await Promise.allSettled([
      accounts.accept({ token, signInName: 'noor', password: PASSWORD }),
      accounts.accept({ token, signInName: 'eve', password: PASSWORD }),
    ]);
    expect(both.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect(await accounts.readInvitation(token)).toBeNull();
  });

  it('ACCOUNT-3 runs out after a week, and a newer one ends it', async () => {
    const { account } = await make('noor');
    const older = await accounts.invite(account);
    const newer = await accounts.invite(account);
    expect(newer.ends - parts.clock.at).toBe(7 * 24 * HOUR);
    expect(await accounts.readInvitation(older.token)).toBeNull();
    expect((await accounts.byId(account))!.state).toBe('invited');
    parts.clock.at += 7 * 24 * HOUR - 1;
    expect(await accounts.readInvitation(newer.token)).toMatchObject({
      kind: 'account',
      name: 'noor of Alder',
    });
    parts.clock.at += 1;
    expect(await accounts.readInvitation(newer.token)).toBeNull();
    expect((await accounts.byId(account))!.state).toBe('none');
    const late = accounts.accept({ token: newer.token, signInName: 'noor', password: PASSWORD });
    expect(await refusal(late)).toBe('invitation-over');
  });

  it('is left as it was by a name that is taken, a password or a code guessed first', async () => {
    await ready('ines');
    const { account } = await make('noor');
    const { token } = await accounts.invite(account);
    const asked = { token, signInName: 'noor', password: PASSWORD };
    // The same name to whoever reads it: full width, capitals.
    expect(await refusal(accounts.accept({ ...asked, signInName: 'ＩＮＥＳ.desk' }))).toBe(
      'sign-in-name-taken',
    );
    expect(await refusal(accounts.accept({ ...asked, password: 'noor of Alder' }))).toBe(
      'password-too-common',
    );
    expect(await refusal(accounts.accept({ ...asked, password: 'birchbirch26', avoid: ['Birch'] }))).toBe(
      'password-too-common',
    );
    expect(await refusal(accounts.accept({ ...asked, code: '123456' }))).toBe('password-too-common');
    expect((await accounts.accept(asked)).state).toBe('ready');
  });

  it('is neither made nor taken for somebody switched off or unknown', async () => {
    const { account } = await make('noor');
    const { token } = await accounts.invite(account);
    await accounts.setActive(account, false);
    expect(await refusal(accounts.invite(account))).toBe('no-such-account');
    expect(await refusal(accounts.invite('nobody'))).toBe('no-such-account');
    expect(await accounts.readInvitation(token)).toBeNull();
    expect(await refusal(accounts.accept({ token, signInName: 'noor', password: PASSWORD }))).toBe(
      'invitation-over',
    );
  });

  it('given a second one, the old password goes with it and every session ends', async () => {
    const noor = await ready('noor', { code: '482617' });
    changed.length = 0;
    const { token } = await accounts.invite(noor.account);
    expect(await accounts.check('noor.desk', PASSWORD)).not.toBeNull();
    const again = await accounts.accept({ token, signInName: 'noor.desk', password: 'cold rivers at noon' });
    expect(again.edition).toBeGreaterThan(noor.edition);
    expect(changed).toEqual([noor.account]);
    expect(await accounts.check('noor.desk', PASSWORD)).toBeNull();
    expect(await accounts.check('noor.desk', 'cold rivers at noon')).not.toBeNull();
    expect(again.hasCode).toBe(true);
  });
});

describe('name and password', () => {
  it('belong together or not; nothing says which was wrong', async () => {
    const noor = await ready('noor');
    expect(await accounts.check(' NOOR.desk ', PASSWORD)).toEqual(noor);
    expect(await accounts.check('noor.desk', `${PASSWORD} `)).toBeNull();
    expect(await accounts.check('nobody', PASSWORD)).toBeNull();
    await accounts.setActive(noor.account, false);
    expect(await accounts.check('noor.desk', PASSWORD)).toBeNull();
  });

  it('given an account that has no password yet, none is right', async () => {
    await make('noor');
    expect(await accounts.check('noor', '')).toBeNull();
  });
});

describe('the short code', () => {
  it('is checked for a chosen name or a badge, and is null for whoever has none', async () => {
    const noor = await ready('noor', { code: '482617' });
    await accounts.changeSecret(noor.account, { password: PASSWORD, newBadge: 'B-7731' });
    expect(await accounts.checkCode({ staff: noor.staff }, '482617')).toEqual({ staff: 'noor', right: true });
    expect(await accounts.checkCode({ staff: noor.staff }, '482618')).toEqual({
      staff: 'noor',
      right: false,
    });
    expect(await accounts.checkCode({ badge: 'B-7731' }, '482617')).toEqual({ staff: 'noor', right: true });
    expect(await accounts.checkCode({ badge: 'B-7732' }, '482617')).toBeNull();
    const ada = await ready('ada');
    expect(await accounts.checkCode({ staff: ada.staff }, '482617')).toBeNull();
    await accounts.setActive(noor.account, false);
    expect(await accounts.checkCode({ staff: noor.staff }, '482617')).toBeNull();
  });
});

describe('one’s own secrets', () => {
  it('change with the password only, and a new password alone ends the sessions', async () => {
    const { account, staff } = await ready('noor', { code: '482617' });
    changed.length = 0;
    const wrong = accounts.changeSecret(account, { password: 'not this one at all', newCode: '700431' });
    expect(await refusal(wrong)).toBe('wrong-password');
    await accounts.changeSecret(account, { password: PASSWORD, newCode: '700431' });
    expect((await accounts.checkCode({ staff }, '700431'))!.right).toBe(true);
    expect(changed).toEqual([]);
    await accounts.changeSecret(account, { password: PASSWORD, newPassword: 'cold rivers at noon' });
    expect(changed).toEqual([account]);
    expect(await accounts.check('noor.desk', 'cold rivers at noon')).not.toBeNull();
    expect((await accounts.checkCode({ staff }, '700431'))!.right).toBe(true);
  });

  it('are refused when guessed first, and a badge when it is another’s', async () => {
    const { account } = await ready('noor');
    const ines = await ready('ines');
    await accounts.changeSecret(ines.account, { password: PASSWORD, newBadge: 'B-7731' });
    const change = (what: object) => refusal(accounts.changeSecret(account, { password: PASSWORD, ...what }));
    expect(await change({ newPassword: 'noor.desk 2026' })).toBe('password-too-common');
    expect(await change({ newCode: '111111' })).toBe('password-too-common');
    expect(await change({ newBadge: 'B-7731' })).toBe('badge-taken');
  });

  it('given single sign-on alone, code and badge need no password; with a password they do', async () => {
    const { account, staff } = await accounts.outside({
      issuer: 'https://on.example',
      subject: '7',
      name: 'Olga',
      wide: false,
    });
    await accounts.changeSecret(account, { password: null, newCode: '482617' });
    expect((await accounts.checkCode({ staff }, '482617'))!.right).toBe(true);
    const first = accounts.changeSecret(account, { password: null, newPassword: 'cold rivers at noon' });
    expect(await refusal(first)).toBe('wrong-password');
    const noor = await ready('noor');
    const without = accounts.changeSecret(noor.account, { password: null, newCode: '482617' });
    expect(await refusal(without)).toBe('wrong-password');
  });
});

describe('keeping accounts', () => {
  it('has one account a person', async () => {
    await make('noor');
    expect(await refusal(make('noor'))).toBe('staff-has-account');
  });

  it('ACCOUNT-4 never switches off the last who could keep them', async () => {
    const one = await ready('wilma', { wide: true });
    await make('invited', true);
    expect(await refusal(accounts.setActive(one.account, false))).toBe('last-administrator');
    const two = await ready('otto', { wide: true });
    await accounts.setActive(one.account, false);
    expect(await refusal(accounts.setActive(two.account, false))).toBe('last-administrator');
    await accounts.setActive(one.account, true);
    await accounts.setActive(two.account, false);
    expect(await refusal(accounts.setActive('nobody', false))).toBe('no-such-account');
  });

  it('given the same outside identity, it is the same account, with its name and width of today', async () => {
    const who = { issuer: 'https://on.example', subject: '7' };
    const first = await accounts.outside({ ...who, name: 'Olga', wide: false });
    expect(first.state).toBe('outside');
    const renamed = await accounts.outside({ ...who, name: 'Olga Berg', wide: false });
    expect(renamed).toEqual({ ...first, name: 'Olga Berg' });
    expect(changed).toEqual([]);
    const wider = await accounts.outside({ ...who, name: 'Olga Berg', wide: true });
    expect(wider).toEqual({ ...renamed, wide: true, edition: first.edition + 1 });
    expect(changed).toEqual([first.account]);
    const other = await accounts.outside({ ...who, issuer: 'https://other.example', name: 'O', wide: false });
    expect(other.account).not.toBe(first.account);
  });

  it('ACCOUNT-6 keeps no name, sign-in name, badge, code or password in clear', async () => {
    const planted = ['Quillfeather', 'quill.feather', 'BADGE-QF-1', '73910582', 'feathers in the inkwell'];
    const [name, signInName, newBadge, code, password] = planted as [string, string, string, string, string];
    const { account } = await accounts.make({ staff: 'q' as StaffId, name, wide: false });
    const { token } = await accounts.invite(account);
    await accounts.accept({ token, signInName, password, code });
    await accounts.changeSecret(account, { password, newBadge });
    const rows = await parts.database.query<Record<string, unknown>>(
      `select a.*, encode(a.profile, 'escape') as opened, i.token_hash from account a join invitation i using (account)`,
    );
    expect(rows).toHaveLength(1);
    const kept = JSON.stringify(rows) + Buffer.from(rows[0]!['profile'] as Uint8Array).toString('latin1');
    for (const secret of [...planted, token]) expect(kept).not.toContain(secret);
  });
});
