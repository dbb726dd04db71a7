/**
 * Single sign-on against a real OpenID provider. What must be refused is from OpenID Connect Core
 * 1.0 (3.1.2.7, 3.1.3.7) and RFC 9700, the security practice for OAuth (section numbers from memory).
 */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { once } from 'node:events';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { wardId } from '@footboard/shared/kernel/ids';
import { staffOf } from '@footboard/server/capabilities/people/queries';
import { Streams } from '@footboard/server/commanding/streams';
import { FIRST_RUN } from '@footboard/server/capabilities/people/author-policy';
import { NOBODY } from '@footboard/server/access/identity';
import { readConfig } from '@footboard/server/platform/config';
import { startFootboard } from '@footboard/server/start';
import type { Footboard } from '@footboard/server/start';
import { CLIENT, CLIENT_SECRET, TestBrowser, startProvider } from './sign-on-provider.ts';
import type { TestProvider } from './sign-on-provider.ts';

const ROLES = {
  'alder-nurses': { ward: 'alder', role: 'nurse' },
  'alder-aides': { ward: 'alder', role: 'aide' },
  keepers: { wide: true },
  everywhere: [
    { ward: 'alder', role: 'manager' },
    { ward: 'birch', role: 'manager' },
  ],
};

let folder: string;
let provider: TestProvider;
let footboard: Footboard;
let url: string;
let browser: TestBrowser;

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as { port: number };
  probe.close();
  await once(probe, 'close');
  return port;
}

async function open({ isPublic = false }: { isPublic?: boolean } = {}): Promise<void> {
  folder = mkdtempSync(join(tmpdir(), 'footboard-sign-on-'));
  const [rolesFile, secretFile] = [join(folder, 'roles.json'), join(folder, 'secret')];
  writeFileSync(rolesFile, JSON.stringify(ROLES));
  writeFileSync(secretFile, `${CLIENT_SECRET}\n`);
  const port = await freePort();
  provider = await startProvider(`http://localhost:${port}/api/sign-on/return`, { isPublic });
  footboard = await startFootboard({
    config: readConfig({
      PORT: String(port),
      DATA_DIR: 'memory://',
      FOOTBOARD_LOG: 'silent',
      PUBLIC_URL: `http://localhost:${port}`,
      OIDC_ISSUER: provider.issuer,
      OIDC_CLIENT_ID: CLIENT,
      OIDC_SCOPE: 'openid profile groups',
      OIDC_ROLES_FILE: rolesFile,
      ...(isPublic ? {} : { OIDC_CLIENT_SECRET_FILE: secretFile }),
    }),
    quiet: true,
    limits: 'off',
  });
  ({ url } = footboard);
  browser = new TestBrowser();
  const now = new Date().toISOString();
  const own = async (ward: string, name: string, data: object) => {
    const answer = await footboard.commands.handle({
      ward,
      name,
      claim: NOBODY,
      own: FIRST_RUN,
      body: {
        commandId: randomUUID(),
        occurred: { at: now },
        entered: { at: now, offsetMinutes: 0 },
        source: { kind: 'person' },
        expect: 'latest',
        data,
      },
    });
    if ('problem' in answer) throw new Error(JSON.stringify(answer.problem));
  };
  for (const ward of ['alder', 'birch']) {
    const beds = [{ bed: 'bed-1', label: '1', bay: 'Bay 1' }];
    await own(ward, 'set-up-ward', { name: ward, zone: 'Europe/Lisbon', beds });
    await own(ward, 'add-staff-member', { staff: 'ines', name: 'Ines Amaral', role: 'charge-nurse' });
  }
}

const closeAll = async () => {
  await footboard.close();
  await provider.close();
  rmSync(folder, { recursive: true, force: true });
};
beforeAll(async () => {
  // The provider warns on the console that its data will be gone: here that is meant.
  vi.spyOn(console, 'warn').mockImplementation(() => {});
  await open();
});
afterAll(closeAll);
beforeEach(() => {
  browser = new TestBrowser();
  provider.tokenAnswer = null;
});

let people = 0;
/** Somebody nobody has seen before. */
function somebody(...groups: readonly string[]): { sub: string; name: string } {
  const sub = `s-${++people}`;
  const name = `Noor Haddad ${people}`;
  provider.people.set(sub, { name, groups });
  return { sub, name };
}
const accountOf = async (name: string) =>
  (await footboard.access.accounts.list()).filter((account) => account.name === name);

const isOurs = (at: string) => at.startsWith(`${url}/`);
const begin = (returnTo = '/') => `${url}/api/sign-on/begin?returnTo=${encodeURIComponent(returnTo)}`;

/** Leaves for the provider, signs in there, and stops before the address it is sent back to is opened. */
async function upToReturn(sub: string, returnTo?: string, tamper = (address: string) => address) {
  provider.at = sub;
  const left = (await browser.go(begin(returnTo))).headers.get('location')!;
  return { asked: new URL(left), back: await browser.follow(tamper(left), isOurs) };
}

/** The whole way; gives where the browser ends up. */
async function signIn(sub: string, returnTo?: string): Promise<string> {
  const { back } = await upToReturn(sub, returnTo);
  return (await browser.go(back)).headers.get('location')!;
}

const status = async (path: string, by = browser) =>
  (await by.go(`${url}${path}`, 'application/json')).status;

/** The ward's staff list, by name, as somebody who may read it sees it. */
async function staffList(ward: string): Promise<Record<string, { role: string; active: boolean }>> {
  const { state } = await new Streams(footboard.log).ward(wardId.parse(ward));
  const { staff } = await staffOf(state!, footboard.vault);
  return Object.fromEntries(staff.map(({ name, role, active }) => [name, { role, active }]));
}

const hasSession = () => [...browser.cookies(new URL(url).host).keys()].includes('footboard-session');
const refusedTo = (code: string) => `/sign-in?problem=${code}`;

describe('a provider that is away', () => {
  it('SIGNON-4 given none at the start, then Footboard runs, says so, and signs in once it is back', async () => {
    const { port } = new URL(provider.issuer);
    await provider.close();
    expect((await browser.go(begin())).headers.get('location')).toBe(refusedTo('sign-on-away'));
    const told = await browser.go(begin(), 'application/json');
    expect(told.status).toBe(503);
    expect(await told.json()).toMatchObject({ type: '/problems/sign-on-away' });
    provider = await startProvider(`${url}/api/sign-on/return`, { port: Number(port) });
    expect(await signIn(somebody('alder-nurses').sub)).toBe('/');
  });

  it('given one that goes while somebody signs in, then they are told to try again', async () => {
    const { back } = await upToReturn(somebody('alder-nurses').sub);
    provider.tokenAnswer = 'hang-up';
    expect((await browser.go(back)).headers.get('location')).toBe(refusedTo('sign-on-away'));
    expect(hasSession()).toBe(false);
  });
});

describe('signing in', () => {
  it('SIGNON-1 given a group with a role, when its person comes back, then they are on the staff list and in', async () => {
    const { sub, name } = somebody('alder-nurses', 'choir');
    expect(await signIn(sub, '/wards/alder/huddle?day=1')).toBe('/wards/alder/huddle?day=1');
    expect(await staffList('alder')).toMatchObject({ [name]: { role: 'nurse', active: true } });
    expect(await status('/api/wards/alder/huddle')).toBe(200);
    expect(await status('/api/wards/birch/huddle')).toBe(403);
  });

  it('given a foreign page to go back to, then it is the start page', async () => {
    expect(await signIn(somebody('alder-nurses').sub, 'https://elsewhere.example/')).toBe('/');
  });

  it('given a group for the whole server, then its person keeps all accounts', async () => {
    const { sub, name } = somebody('keepers');
    expect(await signIn(sub)).toBe('/');
    expect(await accountOf(name)).toMatchObject([{ wide: true, state: 'outside' }]);
  });

  it('given two groups that speak of one ward, then the one that stands first in the file counts', async () => {
    const { sub, name } = somebody('everywhere', 'alder-aides', 'alder-nurses');
    await signIn(sub);
    expect(await staffList('alder')).toMatchObject({ [name]: { role: 'nurse' } });
    expect(await staffList('birch')).toMatchObject({ [name]: { role: 'manager' } });
  });

  it('given the same person again, then no second account and no entry is made', async () => {
    const { sub, name } = somebody('alder-nurses');
    await signIn(sub);
    const before = await footboard.log.verify(wardId.parse('alder'));
    await signIn(sub);
    expect(await footboard.log.verify(wardId.parse('alder'))).toEqual(before);
    expect(await accountOf(name)).toHaveLength(1);
  });
});

describe('groups that change', () => {
  it('SIGNON-2 given another group, when they sign in again, then the role changes and what was open ends', async () => {
    const { sub, name } = somebody('alder-nurses');
    await signIn(sub);
    const phone = browser;
    browser = new TestBrowser();
    provider.people.set(sub, { name, groups: ['alder-aides'] });
    await signIn(sub);
    expect(await staffList('alder')).toMatchObject({ [name]: { role: 'aide', active: true } });
    expect(await status('/api/wards/alder/huddle', phone)).toBe(401);
    expect(await status('/api/wards/alder/huddle')).toBe(200);
  });

  it('SIGNON-2 given a group taken away, when they sign in again, then they are off the list, out, and not let in', async () => {
    const { sub, name } = somebody('alder-nurses');
    await signIn(sub);
    const phone = browser;
    browser = new TestBrowser();
    provider.people.set(sub, { name, groups: ['choir'] });
    expect(await signIn(sub)).toBe(refusedTo('sign-on-without-role'));
    expect(await staffList('alder')).toMatchObject({ [name]: { active: false } });
    expect(await status('/api/wards/alder/huddle', phone)).toBe(401);
    expect(hasSession()).toBe(false);
  });

  it('given a group given back, then the same entry of the list is active again', async () => {
    const { sub, name } = somebody('alder-nurses');
    await signIn(sub);
    const listed = Object.keys(await staffList('alder'));
    provider.people.set(sub, { name });
    await signIn(sub);
    provider.people.set(sub, { name, groups: ['alder-aides'] });
    await signIn(sub);
    expect(Object.keys(await staffList('alder'))).toEqual(listed);
    expect(await staffList('alder')).toMatchObject({ [name]: { role: 'aide', active: true } });
  });

  it('given an account that was switched off here, then no group opens it', async () => {
    const { sub, name } = somebody('alder-nurses');
    await signIn(sub);
    const [account] = await accountOf(name);
    await footboard.access.accounts.setActive(account!.account, false);
    browser = new TestBrowser();
    expect(await signIn(sub)).toBe(refusedTo('sign-on-without-role'));
    expect(hasSession()).toBe(false);
  });
});

describe('what does not come from the provider as it was asked', () => {
  let who: { sub: string; name: string };
  beforeEach(() => {
    who = somebody('alder-nurses');
  });
  const refused = async (back: string, by = browser) => {
    const answer = await by.go(back);
    expect(answer.headers.get('location')).toBe(refusedTo('sign-on-failed'));
    expect(answer.headers.getSetCookie().some((line) => /^footboard-session=[^;]/.test(line))).toBe(false);
    expect(hasSession()).toBe(false);
    expect(await accountOf(who.name)).toEqual([]);
  };

  it('SIGNON-3 given a wrong state, then it is refused', async () => {
    const back = new URL((await upToReturn(who.sub)).back);
    back.searchParams.set('state', 'made-up');
    await refused(back.href);
  });

  it('given an answer that another browser was sent back with, then it is refused', async () => {
    const { back } = await upToReturn(who.sub);
    const victim = new TestBrowser();
    await refused(back, victim);
    // Nor when the other browser has a sign-in of its own under way.
    await victim.go(begin());
    await refused(back, victim);
  });

  it('SIGNON-3 given a wrong nonce, then it is refused', async () => {
    const { back } = await upToReturn(who.sub, '/', (address) => {
      const tampered = new URL(address);
      tampered.searchParams.set('nonce', 'made-up');
      return tampered.href;
    });
    await refused(back);
  });

  it('given a code for another verifier, then the provider refuses it', async () => {
    const { back } = await upToReturn(who.sub, '/', (address) => {
      const tampered = new URL(address);
      tampered.searchParams.set('code_challenge', 'E9Melhoa2OwvFrEMTJguCHaoeK1t8URWbuGJSstw-cM');
      return tampered.href;
    });
    await refused(back);
  });

  it('given somebody who says no at the provider, then they are told that it did not work', async () => {
    const { asked } = await upToReturn(who.sub);
    const back = new URL('/api/sign-on/return', url);
    back.search = new URLSearchParams({
      error: 'access_denied',
      state: asked.searchParams.get('state')!,
      iss: provider.issuer,
    }).toString();
    await refused(back.href);
  });

  it('given a kept cookie that was changed, then it is refused', async () => {
    const { back } = await upToReturn(who.sub);
    const jar = browser.cookies(new URL(url).host) as Map<string, string>;
    const kept = jar.get('footboard-sign-on')!;
    jar.set('footboard-sign-on', `${kept.slice(0, -4)}AAAA`);
    await refused(back);
  });

  it('given a code that was used before, then it opens nothing a second time', async () => {
    const { back } = await upToReturn(who.sub);
    const jar = browser.cookies(new URL(url).host) as Map<string, string>;
    const kept = jar.get('footboard-sign-on')!;
    expect((await browser.go(back)).headers.get('location')).toBe('/');
    expect(hasSession()).toBe(true);
    const thief = new TestBrowser();
    await thief.go(`${url}/api/sign-on/begin`);
    (thief.cookies(new URL(url).host) as Map<string, string>).set('footboard-sign-on', kept);
    expect((await thief.go(back)).headers.get('location')).toBe(refusedTo('sign-on-failed'));
    expect([...thief.cookies(new URL(url).host).keys()]).not.toContain('footboard-session');
  });

  it.each([
    ['for another client', { aud: 'another' }, 'own'],
    ['of another issuer', { iss: 'https://elsewhere.example' }, 'own'],
    ['that ran out', { exp: Math.floor(Date.now() / 1000) - 600 }, 'own'],
    ['that a foreign key signed', {}, 'foreign'],
  ] as const)('SIGNON-3 given an ID token %s, then it is refused', async (_what, wrong, key) => {
    const { asked, back } = await upToReturn(who.sub);
    const now = Math.floor(Date.now() / 1000);
    const right = {
      iss: provider.issuer,
      aud: CLIENT,
      sub: who.sub,
      iat: now,
      exp: now + 300,
      name: 'Noor Haddad',
    };
    const claims = { ...right, groups: ['alder-nurses'], nonce: asked.searchParams.get('nonce') };
    const answer = (id_token: string) => () => ({ access_token: 'a', token_type: 'Bearer', id_token });
    provider.tokenAnswer = answer(provider.idToken({ ...claims, ...wrong }, key));
    await refused(back);
    // The same by hand, with nothing wrong in it, is taken: so it is the wrong part that was refused.
    const again = await upToReturn(who.sub);
    const nonce = again.asked.searchParams.get('nonce');
    provider.tokenAnswer = answer(provider.idToken({ ...claims, nonce }));
    expect((await browser.go(again.back)).headers.get('location')).toBe('/');
    expect(hasSession()).toBe(true);
  });
});

describe('a public client without a secret', () => {
  it('given PKCE alone, then it carries the sign-in', async () => {
    await closeAll();
    await open({ isPublic: true });
    const { asked, back } = await upToReturn(somebody('alder-nurses').sub);
    expect(asked.searchParams.get('code_challenge_method')).toBe('S256');
    expect((await browser.go(back)).headers.get('location')).toBe('/');
    expect(hasSession()).toBe(true);
  });
});
