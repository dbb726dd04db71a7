/** Accounts and one-time links over real HTTP with cookies. */
import fs from 'node:fs';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as joinedPath } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { POLICY } from '@footboard/shared/capabilities/people/policy/document';
import { accountList, invitationAnswer, invitationMade, pairingBegun } from '@footboard/shared/wire/access';
import type { Footboard } from '@footboard/server/start';
import { startFootboard } from '@footboard/server/start';
import { readConfig } from '@footboard/server/platform/config';
import {
  CODE,
  Client,
  FIRST,
  STAFF,
  join,
  openAccessWorld,
  passwordOf,
  startFirstRun,
} from './access-kit.ts';
import type { AccessWorld } from './access-kit.ts';
import { asProblem } from './http-kit.ts';
import type { Sent } from './http-kit.ts';

const systemClock = { now: () => Date.now(), rate: 1 };
const code = (sent: Sent): string => asProblem(sent).type.replace('/problems/', '');
/** 'in', or the problem's code. */
const lookIn = async (browser: Client): Promise<string> => {
  const sent = await browser.get('/api/wards/alder/staff');
  return sent.status === 200 ? 'in' : code(sent);
};
const tokenOf = (link: string) => link.slice(link.indexOf('#') + 1);

describe('the first run over HTTP', () => {
  const folder = mkdtempSync(joinedPath(tmpdir(), 'footboard-first-'));
  let running: Footboard | undefined;
  const start = async (options: Parameters<typeof startFirstRun>[0] = {}) => {
    await running?.close();
    running = await startFirstRun({ env: { DATA_DIR: folder }, ...options });
    return running;
  };
  const browser = () => new Client(running!.url, systemClock);
  afterAll(async () => {
    await running?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('ACCOUNT-2 given each start prints a link, only the newest makes the administrator, once', async () => {
    const older = (await start()).firstRunLink!;
    const printed = vi.spyOn(process.stdout, 'write').mockImplementation(() => true);
    const { firstRunLink: link, url } = await start({ quiet: false });
    const said = printed.mock.calls.map(([text]) => String(text)).join('');
    printed.mockRestore();
    expect(said).toContain(`\n  ${link}\n`);
    expect(link).toMatch(new RegExp(`^${url}/join#[A-Za-z0-9_-]{43}$`));
    expect(await browser().me()).toMatchObject({
      access: 'accounts',
      firstRun: true,
      person: null,
      wards: [],
    });

    const asked = { signInName: 'wilma', password: passwordOf('wilma'), name: 'Wilma First' };
    const late = await browser().post('/api/invitations/read', { token: tokenOf(older) });
    expect([late.status, code(late)]).toEqual([410, 'invitation-over']);
    const read = await browser().post('/api/invitations/read', { token: tokenOf(link!) });
    expect(invitationAnswer.parse(read.body)).toMatchObject({ kind: 'first-run', name: null });

    const wilma = browser();
    const nameless = await wilma.post('/api/invitations/accept', {
      ...asked,
      name: undefined,
      token: tokenOf(link!),
    });
    expect([nameless.status, asProblem(nameless).errors?.[0]?.pointer]).toEqual([422, '/name']);
    expect((await wilma.post('/api/invitations/accept', { ...asked, token: tokenOf(link!) })).status).toBe(
      200,
    );
    expect(await wilma.me()).toMatchObject({ firstRun: false, person: { name: 'Wilma First', wide: true } });
    const again = await browser().post('/api/invitations/accept', {
      ...asked,
      signInName: 'eve-eve',
      token: tokenOf(link!),
    });
    expect([again.status, code(again)]).toEqual([410, 'invitation-over']);
    expect((await browser().signIn('wilma')).status).toBe(200);

    expect((await start()).firstRunLink).toBeNull();
    expect((await browser().signIn('wilma')).status).toBe(200);
  });
});

describe('with sign-in off', () => {
  it('nobody is asked, every ward is there with everything in it, and no link is made', async () => {
    const footboard = await startFootboard({
      config: readConfig({ PORT: '0', DATA_DIR: 'memory://', FOOTBOARD_LOG: 'silent' }),
      access: 'open',
      quiet: true,
    });
    try {
      const anybody = new Client(footboard.url, systemClock);
      await anybody.enter('set-up-ward', {
        name: 'Alder',
        zone: 'Europe/Lisbon',
        beds: [{ bed: 'b1', label: '1', bay: 'A' }],
      });
      expect(footboard.firstRunLink).toBeNull();
      expect(await anybody.me()).toEqual({
        access: 'open',
        firstRun: false,
        singleSignOn: null,
        person: null,
        device: null,
        wards: [
          {
            ward: 'alder',
            name: 'Alder',
            actor: 'device',
            level: 'whole',
            actions: POLICY.map(({ action }) => action),
          },
        ],
      });
      expect((await anybody.get('/api/wards')).body).toMatchObject({
        wards: [{ ward: 'alder' }],
        open: true,
      });
      expect(code(await anybody.get('/api/wards/alder/accounts'))).toBe('sign-in-first');
    } finally {
      await footboard.close();
    }
  });
});

describe('with accounts', () => {
  let world: AccessWorld;
  const logged: string[] = [];
  beforeAll(async () => {
    const write = fs.write;
    vi.spyOn(fs, 'write').mockImplementation(((fd: number, what: unknown, ...rest: never[]) => {
      if (fd === 2) logged.push(String(what));
      return (write as unknown as (...all: unknown[]) => void)(fd, what, ...rest);
    }) as never);
    world = await openAccessWorld({
      limits: 'off',
      env: { FOOTBOARD_LOG: 'trace' },
    });
  }, 120_000);
  afterAll(async () => {
    await world?.close();
    vi.restoreAllMocks();
  });

  /** A fresh browser signed in. */
  const fresh = async (who: string): Promise<Client> => {
    const browser = world.browser();
    const sent = await browser.signIn(who);
    if (sent.status !== 200) throw new Error(`${who}: ${JSON.stringify(sent.body)}`);
    return browser;
  };
  describe('keeping accounts', () => {
    let ines: Client;
    let first: Client;
    beforeEach(async () => {
      ines = await fresh('ines');
      first = await fresh(FIRST);
    });
    const accountOf = async (staff: string): Promise<string> =>
      accountList.parse((await first.get('/api/accounts')).body).accounts.find((one) => one.staff === staff)!
        .account;

    it('lists the people of the ward to those who keep it, everybody to an administrator of the server', async () => {
      const ofWard = accountList.parse((await ines.get('/api/wards/alder/accounts')).body).accounts;
      expect(ofWard.map(({ staff }) => staff)).toEqual(expect.arrayContaining(Object.keys(STAFF)));
      expect(ofWard.find(({ staff }) => staff === 'noor')).toMatchObject({
        state: 'ready',
        hasCode: true,
        active: true,
      });
      expect(ofWard.some(({ wide }) => wide)).toBe(false);
      const all = accountList.parse((await first.get('/api/accounts')).body).accounts;
      expect(all.some(({ wide }) => wide)).toBe(true);
      expect(code(await ines.get('/api/accounts'))).toBe('not-allowed');
      expect(code(await (await fresh('noor')).get('/api/wards/alder/accounts'))).toBe('not-allowed');
    });

    it('given somebody on the list without an account, a link is made, works once, and a newer one ends it', async () => {
      await ines.enter('add-staff-member', { staff: 'bo', name: 'Bo Aas', role: 'aide' });
      const made = invitationMade.parse(
        (await ines.post('/api/wards/alder/accounts', { staff: 'bo', name: 'Bo Aas' })).body,
      );
      const again = invitationMade.parse(
        (await ines.post(`/api/wards/alder/accounts/${made.account}/invitation`)).body,
      );
      expect(code(await world.browser().post('/api/invitations/read', { token: tokenOf(made.path) }))).toBe(
        'invitation-over',
      );
      const bo = await join(world.browser(), again.path, 'bo-aas');
      expect((await bo.me()).person).toMatchObject({ staff: 'bo', name: 'Bo Aas' });
      const twice = { token: tokenOf(again.path), signInName: 'eve-eve', password: passwordOf('eve') };
      expect(code(await world.browser().post('/api/invitations/accept', twice))).toBe('invitation-over');
      expect(code(await ines.post('/api/wards/alder/accounts', { staff: 'bo', name: 'Bo' }))).toBe(
        'staff-has-account',
      );
      const off = await ines.post(`/api/wards/alder/accounts/${made.account}/active`, { active: false });
      expect(off.body).toMatchObject({ staff: 'bo', active: false });
      expect(await lookIn(bo)).toBe('sign-in-first');
    });

    it('is for people on the ward’s list only', async () => {
      const stranger = await ines.post('/api/wards/alder/accounts', { staff: 'stranger', name: 'S' });
      expect([code(stranger), asProblem(stranger).errors?.[0]?.pointer]).toEqual([
        'invalid-request',
        '/staff',
      ]);
      const wilma = await accountOf((await first.me()).person!.staff);
      expect(code(await ines.post(`/api/wards/alder/accounts/${wilma}/invitation`))).toBe('no-such-account');
    });

    it('ACCOUNT-7 given a charge nurse writes an administrator of the server on the list, they get no link of theirs', async () => {
      const { staff } = (await first.me()).person!;
      await ines.enter('add-staff-member', { staff, name: 'Not Wilma', role: 'aide' });
      const wilma = await accountOf(staff);
      expect(code(await ines.post(`/api/wards/alder/accounts/${wilma}/invitation`))).toBe('not-allowed');
      expect(code(await ines.post(`/api/wards/alder/accounts/${wilma}/active`, { active: false }))).toBe(
        'not-allowed',
      );
      await ines.enter('add-staff-member', { staff: 'pia', name: 'Pia', role: 'aide' });
      expect(
        code(await ines.post('/api/wards/alder/accounts', { staff: 'pia', name: 'Pia', wide: true })),
      ).toBe('not-allowed');
    });

    it('ACCOUNT-7 given somebody of another ward, with or without an account, the same', async () => {
      await first.enter(
        'set-up-ward',
        { name: 'Birch', zone: 'Europe/Lisbon', beds: [{ bed: 'b1', label: '1', bay: 'A' }] },
        {},
        'birch',
      );
      for (const staff of ['bea', 'ben']) {
        await first.enter('add-staff-member', { staff, name: staff, role: 'manager' }, {}, 'birch');
        await ines.enter('add-staff-member', { staff, name: staff, role: 'aide' });
      }
      await world.invited('bea', 'Bea', { ward: 'birch' });
      const bea = await accountOf('bea');
      expect(code(await ines.post(`/api/wards/alder/accounts/${bea}/invitation`))).toBe('not-allowed');
      expect(code(await ines.post(`/api/wards/alder/accounts/${bea}/active`, { active: false }))).toBe(
        'not-allowed',
      );
      expect(code(await ines.post('/api/wards/alder/accounts', { staff: 'ben', name: 'Ben' }))).toBe(
        'not-allowed',
      );
      expect((await first.post(`/api/accounts/${bea}/invitation`)).status).toBe(200);
      await expect(
        (await fresh('bea')).me().then(({ wards }) => wards.map(({ ward }) => ward)),
      ).resolves.toEqual(['alder', 'birch']);
    });

    it('ACCOUNT-4 never ends with nobody who could', async () => {
      const wilma = await accountOf((await first.me()).person!.staff);
      const sent = await first.post(`/api/accounts/${wilma}/active`, { active: false });
      expect([sent.status, code(sent)]).toEqual([409, 'last-administrator']);
      expect(await lookIn(first)).toBe('in');
    });

    it('asks for a full sign-in: the code on a shared device is not enough', async () => {
      const phone = world.browser();
      const begun = pairingBegun.parse((await phone.post('/api/pairings', { kind: 'shared' })).body);
      const place = { kind: 'shared', level: 'whole', place: 'station north' };
      expect((await ines.post('/api/wards/alder/devices', { code: begun.code, ...place })).status).toBe(200);
      await phone.post('/api/pairings/claim', { poll: begun.poll });
      expect((await phone.post('/api/signing', { staff: 'ines', code: CODE })).status).toBe(200);
      const me = await phone.me();
      expect(me).toMatchObject({
        person: { staff: 'ines', via: 'signing' },
        device: { place: 'station north' },
      });
      const { account } = (await world.footboard.access.accounts.byStaff('ada' as StaffId))!;
      const tried = [
        await phone.post('/api/wards/alder/accounts', { staff: 'ada', name: 'Ada' }),
        await phone.post(`/api/wards/alder/accounts/${account}/invitation`),
        await phone.post(`/api/wards/alder/accounts/${account}/active`, { active: false }),
        await phone.post('/api/session/secret', { password: passwordOf('ines'), newCode: '700431' }),
      ];
      expect(tried.map(code)).toEqual(tried.map(() => 'sign-in-first'));

      // A full sign-in on that device closes the window: nobody else stands before it.
      expect((await phone.signIn('noor')).status).toBe(200);
      expect((await phone.me()).person).toMatchObject({ staff: 'noor', via: 'session' });
    });
  });

  it('ACCOUNT-6 given names, passwords, codes and tokens, none is in the log or in any column', async () => {
    const first = await fresh(FIRST);
    await first.enter('add-staff-member', { staff: 'quill', name: 'Quillfeather', role: 'nurse' });
    const made = await first.post('/api/wards/alder/accounts', { staff: 'quill', name: 'Quillfeather' });
    const { path } = invitationMade.parse(made.body);
    const browser = world.browser();
    const planted = {
      signInName: 'inkwell.quill',
      password: 'feathers in the inkwell',
      code: '73910582',
      badge: 'BADGE-INKWELL',
    };
    const { badge, ...asked } = planted;
    await browser.post('/api/invitations/accept', {
      ...asked,
      token: tokenOf(path),
      password: 'inkwell.quill',
    });
    const taken = await browser.post('/api/invitations/accept', { ...asked, token: tokenOf(path) });
    expect(taken.status).toBe(200);
    const changed = await browser.post('/api/session/secret', {
      password: planted.password,
      newBadge: badge,
    });
    expect(changed.status).toBe(204);
    const session = browser.cookieNamed('footboard-session')!;
    await browser.send('record-weight', { stay: 'nobody' });
    await browser.get(`/api/wards/alder/stays/${'x'.repeat(80)}`);
    await browser.delete('/api/session');
    await browser.signIn(planted.signInName, 'feathers in the wrong well');
    await browser.signIn('feathers in the inkwell', planted.signInName);

    const secrets = [
      ...Object.values(planted),
      'Quillfeather',
      tokenOf(path),
      session,
      'feathers in the wrong well',
    ];
    const all = await everythingKept(world.footboard);
    expect(all).toContain('sign-in-refused');
    for (const secret of secrets) expect(all.includes(secret), `${secret} in the database`).toBe(false);
    await expect.poll(() => logged.join('')).toContain('add-staff-member');
    for (const secret of secrets)
      expect(logged.join('').includes(secret), `${secret} in the log`).toBe(false);
  });
});

/** Every column of every table as text; bytes as Latin-1, so that what is not sealed would be seen. */
async function everythingKept({ database, access }: Footboard): Promise<string> {
  await access.accessLog.flush();
  const columns = await database.query<{ t: string; c: string; bytes: boolean }>(
    `select table_name as t, column_name as c, data_type = 'bytea' as bytes
     from information_schema.columns where table_schema = 'public'`,
  );
  const kept: string[] = [];
  for (const { t, c, bytes } of columns) {
    const rows = await database.query<{ v: Uint8Array | string | null }>(
      `select ${bytes ? `"${c}"` : `"${c}"::text`} as v from "${t}"`,
    );
    for (const { v } of rows)
      if (v !== null) kept.push(typeof v === 'string' ? v : Buffer.from(v).toString('latin1'));
  }
  return kept.join('\n');
}
