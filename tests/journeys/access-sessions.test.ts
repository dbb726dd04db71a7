/** Sessions and `me` over real HTTP with cookies and a clock that the test moves. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HOUR, MINUTE } from '@footboard/shared/kernel/times';
import { POLICY } from '@footboard/shared/capabilities/people/policy/document';
import { accountList } from '@footboard/shared/wire/access';
import { FIRST, STAFF, openAccessWorld, passwordOf } from './access-kit.ts';
import type { AccessWorld, Client, StaffName } from './access-kit.ts';
import { StillClock, asProblem } from './http-kit.ts';
import type { Sent } from './http-kit.ts';

const code = (sent: Sent): string => asProblem(sent).type.replace('/problems/', '');
/** 'in', or the problem's code. */
const lookIn = async (browser: Client): Promise<string> => {
  const sent = await browser.get('/api/wards/alder/staff');
  return sent.status === 200 ? 'in' : code(sent);
};

const clock = new StillClock(Date.now());
let world: AccessWorld;
let url: string;
beforeAll(async () => {
  world = await openAccessWorld({ accessClock: clock, limits: 'off' });
  ({ url } = world.footboard);
}, 120_000);
afterAll(() => world?.close());

/** A fresh browser signed in. */
const fresh = async (who: string): Promise<Client> => {
  const browser = world.browser();
  const sent = await browser.signIn(who);
  if (sent.status !== 200) throw new Error(`${who}: ${JSON.stringify(sent.body)}`);
  return browser;
};

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
    const answers: Sent[] = await Promise.all([
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
    expect(await lookIn(other)).toBe('sign-in-first');
  });

  it('given the same browser signs in again, the session before is over', async () => {
    const browser = await fresh('ada');
    const before = browser.copy();
    expect(await lookIn(before)).toBe('in');
    await browser.signIn('noor');
    expect((await browser.me()).person).toMatchObject({ staff: 'noor' });
    expect(await lookIn(before)).toBe('sign-in-first');
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
    expect(await lookIn(copy)).toBe('in');
    expect((await browser.delete('/api/session')).status).toBe(204);
    expect(browser.cookieNamed('footboard-session')).toBeUndefined();
    expect(await lookIn(copy)).toBe('sign-in-first');
  });

  it('SESSION-2 ends after half an hour without use', async () => {
    const browser = await fresh('ada');
    clock.at += 30 * MINUTE - 1;
    expect(await lookIn(browser)).toBe('in');
    clock.at += 30 * MINUTE;
    expect(await lookIn(browser)).toBe('sign-in-first');
  });

  it('SESSION-2 ends after twelve hours however busy it was', async () => {
    const browser = await fresh('ada');
    for (let turn = 0; turn < 12 * 3 - 1; turn++) {
      clock.at += 20 * MINUTE;
      expect(await lookIn(browser)).toBe('in');
    }
    clock.at += 20 * MINUTE;
    expect(await lookIn(browser)).toBe('sign-in-first');
    clock.at += 2 * HOUR;
    expect(await lookIn(browser)).toBe('sign-in-first');
  });

  it('SESSION-3 given the role changes on a ward, every session of that person ends, and only theirs', async () => {
    const [ada, again, noor, ines] = [
      await fresh('ada'),
      await fresh('ada'),
      await fresh('noor'),
      await fresh('ines'),
    ];
    for (const browser of [ada, again, noor]) expect(await lookIn(browser)).toBe('in');
    await ines.enter('change-staff-member', { staff: 'ada', name: 'Ada B. Lund' });
    expect(await lookIn(ada)).toBe('in');
    await ines.enter('change-staff-member', { staff: 'ada', role: 'nurse' });
    expect(await lookIn(ada)).toBe('sign-in-first');
    expect(await lookIn(again)).toBe('sign-in-first');
    expect(await lookIn(noor)).toBe('in');
    expect((await (await fresh('ada')).me()).wards[0]!.actor).toBe('nurse');
    await ines.enter('change-staff-member', { staff: 'ada', role: 'aide' });
  });

  it('SESSION-3 given a new password, the others end and this browser goes on', async () => {
    const [here, there] = [await fresh('rafa'), await fresh('rafa')];
    expect(await lookIn(there)).toBe('in');
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
    expect(await lookIn(there)).toBe('in');
    const sent = await here.post('/api/session/secret', {
      password: passwordOf('rafa'),
      newPassword: 'cold rivers at noon',
    });
    expect(sent.status).toBe(204);
    expect(await lookIn(here)).toBe('in');
    expect(await lookIn(there)).toBe('sign-in-first');
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
