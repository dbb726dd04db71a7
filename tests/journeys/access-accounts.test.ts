/** Accounts, links, sessions and `me` over real HTTP with cookies. */
import fs from 'node:fs';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as joinedPath } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { MINUTE, HOUR } from '@footboard/shared/kernel/times';
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
import type { AccessWorld, StaffName } from './access-kit.ts';
import { StillClock, asProblem } from './http-kit.ts';
import type { Sent } from './http-kit.ts';

const systemClock = { now: () => Date.now(), rate: 1 };
const code = (sent: Sent): string => asProblem(sent).type.replace('/problems/', '');
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
  const clock = new StillClock(Date.now());
  let world: AccessWorld;
  let url: string;
  const logged: string[] = [];
  beforeAll(async () => {
    const write = fs.write;
    vi.spyOn(fs, 'write').mockImplementation(((fd: number, what: unknown, ...rest: never[]) => {
      if (fd === 2) logged.push(String(what));
      return (write as unknown as (...all: unknown[]) => void)(fd, what, ...rest);
    }) as never);
    world = await openAccessWorld({
      accessClock: clock,
      limits: 'off',
      env: { FOOTBOARD_LOG: 'trace' },
    });
    ({ url } = world.footboard);
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
  const staysOut = async (browser: Client) => {
    const sent = await browser.get('/api/wards/alder/staff');
    expect([sent.status, code(sent)]).toEqual([401, 'sign-in-first']);
  };
  const comesIn = async (browser: Client) =>
    expect((await browser.get('/api/wards/alder/staff')).status).toBe(200);

  describe('me', () => {
    it.each(Object.keys(STAFF) as StaffName[])(
      'says who %s is, and what their role may on the ward',
      async (who) => {
        const me = await (await world.as(who)).me();
        const { name, role } = STAFF[who];
        expect(me).toMatchObject({ access: 'accounts', firstRun: false, device: null });
        expect(me.person).toMatchObject({ staff: who, name, wide: false, via: 'session' });
        expect(me.wards).toEqual([
          {
            ward: 'alder',
            name: 'Alder',
            actor: role,
            level: role === 'administrator' ? 'bed-only' : 'whole',
            actions: POLICY.filter(({ actors }) => actors.includes(role)).map(({ action }) => action),
          },
        ]);
      },
    );

    it('shows a stranger no ward, and somebody who left the ward none either', async () => {
      const nobody = world.browser();
      expect(await nobody.me()).toMatchObject({ person: null, wards: [] });
      expect((await nobody.get('/api/wards')).body['wards']).toEqual([]);
      const ines = await world.as('ines');
      await ines.enter('add-staff-member', { staff: 'zoe', name: 'Zoe Left', role: 'nurse' });
      await world.invited('zoe', 'Zoe Left');
      await ines.enter('change-staff-member', { staff: 'zoe', active: false });
      const zoe = await fresh('zoe');
      expect(await zoe.me()).toMatchObject({ person: { staff: 'zoe' }, wards: [] });
      expect((await zoe.get('/api/wards')).body['wards']).toEqual([]);
      expect(code(await zoe.get('/api/wards/alder/staff'))).toBe('not-on-this-ward');
      expect((await (await world.as('noor')).get('/api/wards')).body['wards']).toHaveLength(1);
    });

    it('is asked as often as a page likes without keeping the session going', async () => {
      const noor = await fresh('noor');
      clock.at += 20 * MINUTE;
      expect((await noor.me()).person).not.toBeNull();
      clock.at += 10 * MINUTE;
      expect((await noor.me()).person).toBeNull();
    });
  });

  describe('signing in', () => {
    it('ACCOUNT-5 given a wrong password, an unknown name or somebody switched off, the answer is the same', async () => {
      const answers = await Promise.all([
        world.browser().signIn('noor', 'not the right password'),
        world.browser().signIn('no-such-name', 'not the right password'),
      ]);
      const accounts = await (await fresh(FIRST)).get('/api/accounts');
      const { account } = accountList.parse(accounts.body).accounts.find(({ staff }) => staff === 'hanne')!;
      const first = await fresh(FIRST);
      await first.post(`/api/accounts/${account}/active`, { active: false });
      answers.push(await world.browser().signIn('hanne'));
      await first.post(`/api/accounts/${account}/active`, { active: true });
      expect((await world.browser().signIn('hanne')).status).toBe(200);
      expect(answers[0]).toMatchObject({ status: 401 });
      expect(code(answers[0]!)).toBe('wrong-sign-in');
      expect(answers[1]).toEqual(answers[0]);
      expect(answers[2]).toEqual(answers[0]);
    });

    it('ACCOUNT-5 given ten wrong ones, the eleventh waits, right or wrong, and is told how long', async () => {
      for (let n = 0; n < 10; n++) {
        expect((await world.browser().signIn('theo', 'not the right password')).status).toBe(401);
      }
      const answer = await fetch(`${url}/api/session`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', origin: url },
        body: JSON.stringify({ signInName: 'theo', password: passwordOf('theo') }),
      });
      expect(answer.status).toBe(429);
      expect(Number(answer.headers.get('retry-after'))).toBeGreaterThan(0);
      expect(await answer.json()).toMatchObject({ type: '/problems/too-many-requests' });
      // Others from the same place go on.
      expect((await world.browser().signIn('mira')).status).toBe(200);
    });

    it('SESSION-1 gives a cookie that no script reads and no other site sends', async () => {
      const answer = await fetch(`${url}/api/session`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', origin: url },
        body: JSON.stringify({ signInName: 'ada', password: passwordOf('ada') }),
      });
      const [session] = answer.headers.getSetCookie().filter((line) => line.startsWith('footboard-session='));
      expect(session).toMatch(/^footboard-session=[A-Za-z0-9_-]{43};/);
      expect(session).toMatch(/; HttpOnly/);
      expect(session).toMatch(/; SameSite=Strict/);
      expect(session).toMatch(/; Path=\//);
    });

    it('SESSION-1 given a cookie put there by somebody else, it is never taken over', async () => {
      const browser = world.browser();
      const planted = 'x'.repeat(43);
      browser.setCookie('footboard-session', planted);
      await browser.signIn('ada');
      expect(browser.cookieNamed('footboard-session')).not.toBe(planted);
      const other = world.browser();
      other.setCookie('footboard-session', planted);
      await staysOut(other);
    });

    it('given the same browser signs in again, the session before is over', async () => {
      const browser = await fresh('ada');
      const before = browser.copy();
      await comesIn(before);
      await browser.signIn('noor');
      expect((await browser.me()).person).toMatchObject({ staff: 'noor' });
      await staysOut(before);
    });

    it('is refused field by field when it has not the documented shape', async () => {
      const sent = await world.browser().post('/api/session', { signInName: 'no or', password: 7, who: 1 });
      expect(code(sent)).toBe('invalid-request');
      expect(
        asProblem(sent)
          .errors!.map(({ pointer }) => pointer)
          .toSorted(),
      ).toEqual(['/password', '/signInName', '/who']);
    });
  });

  describe('a session', () => {
    it('given signing out, a copy of its cookie opens nothing', async () => {
      const browser = await fresh('ada');
      const copy = browser.copy();
      await comesIn(copy);
      expect((await browser.delete('/api/session')).status).toBe(204);
      expect(browser.cookieNamed('footboard-session')).toBeUndefined();
      await staysOut(copy);
    });

    it('SESSION-2 ends after half an hour without use', async () => {
      const browser = await fresh('ada');
      clock.at += 30 * MINUTE - 1;
      await comesIn(browser);
      clock.at += 30 * MINUTE;
      await staysOut(browser);
    });

    it('SESSION-2 ends after twelve hours however busy it was', async () => {
      const browser = await fresh('ada');
      for (let turn = 0; turn < 12 * 3 - 1; turn++) {
        clock.at += 20 * MINUTE;
        await comesIn(browser);
      }
      clock.at += 20 * MINUTE;
      await staysOut(browser);
      clock.at += 2 * HOUR;
      await staysOut(browser);
    });

    it('SESSION-3 given the role changes on a ward, every session of that person ends, and only theirs', async () => {
      const [ada, again, noor, ines] = [
        await fresh('ada'),
        await fresh('ada'),
        await fresh('noor'),
        await fresh('ines'),
      ];
      for (const browser of [ada, again, noor]) await comesIn(browser);
      await ines.enter('change-staff-member', { staff: 'ada', name: 'Ada B. Lund' });
      await comesIn(ada);
      await ines.enter('change-staff-member', { staff: 'ada', role: 'nurse' });
      await staysOut(ada);
      await staysOut(again);
      await comesIn(noor);
      expect((await (await fresh('ada')).me()).wards[0]!.actor).toBe('nurse');
      await ines.enter('change-staff-member', { staff: 'ada', role: 'aide' });
    });

    it('SESSION-3 given a new password, the others end and this browser goes on', async () => {
      const [here, there] = [await fresh('rafa'), await fresh('rafa')];
      await comesIn(there);
      const wrong = await here.post('/api/session/secret', {
        password: 'not this one',
        newPassword: 'cold rivers at noon',
      });
      expect([wrong.status, code(wrong)]).toEqual([403, 'wrong-password']);
      const ward = await here.post('/api/session/secret', {
        password: passwordOf('rafa'),
        newPassword: 'alder alder 26',
      });
      expect(code(ward)).toBe('password-too-common');
      await comesIn(there);
      const sent = await here.post('/api/session/secret', {
        password: passwordOf('rafa'),
        newPassword: 'cold rivers at noon',
      });
      expect(sent.status).toBe(204);
      await comesIn(here);
      await staysOut(there);
      expect((await world.browser().signIn('rafa')).status).toBe(401);
      expect((await world.browser().signIn('rafa', 'cold rivers at noon')).status).toBe(200);
    });

    it('given single sign-on alone, a code is set within five minutes of signing on, later after another', async () => {
      const { accounts, sessions } = world.footboard.access;
      const account = await accounts.outside({
        issuer: 'https://on.example',
        subject: '7',
        name: 'Olga',
        wide: false,
      });
      const olga = world.browser();
      olga.setCookie('footboard-session', (await sessions.begin(account)).token);
      expect((await olga.post('/api/session/secret', { newCode: '700431' })).status).toBe(204);
      clock.at += 5 * MINUTE;
      const late = await olga.post('/api/session/secret', { newCode: '700432' });
      expect([late.status, code(late)]).toEqual([401, 'sign-in-first']);
      expect((await accounts.checkCode({ staff: account.staff }, '700431'))!.right).toBe(true);
      // Somebody who has a password is asked for it.
      expect(code(await (await fresh('mira')).post('/api/session/secret', { newCode: '700433' }))).toBe(
        'wrong-password',
      );
    });
  });

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
      await staysOut(bo);
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
      await comesIn(first);
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
