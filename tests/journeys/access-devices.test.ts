/** Walls and shared devices over real HTTP and real sockets: what a key opens, and how it ends. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import type { BoardLevel } from '@footboard/shared/capabilities/people/policy/document';
import { WITHOUT_A_WARD } from '@footboard/shared/capabilities/people/policy/document';
import { deviceList, pairingBegun } from '@footboard/shared/wire/access';
import { boardPage } from '@footboard/shared/wire/http';
import { SOCKET, putOut } from '@footboard/shared/wire/messages';
import type { PutOut, Snapshot } from '@footboard/shared/wire/messages';
import { ROUTES, commandRoutes } from '@footboard/shared/wire/routes';
import { CODE, FIRST, Client, openAccessWorld, passwordOf } from './access-kit.ts';
import type { AccessWorld } from './access-kit.ts';
import { WARD, asProblem, beginStay } from './http-kit.ts';
import type { Sent } from './http-kit.ts';
import { Screen } from './push-kit.ts';

const ALDER = WARD as WardId;
const BIRCH = 'birch' as WardId;
/** Planted: they may stand on no wall. */
const PLANTED = { name: 'Zdenka Quillfeather', note: 'saw the vet from Ostrava' };

let world: AccessWorld;
const clock = { rate: 1, ahead: 0, now: () => Date.now() + clock.ahead };
const screens: Listening[] = [];

/** A screen that keeps every word it hears. */
class Listening extends Screen {
  readonly words: string[] = [];
  readonly outs: PutOut[] = [];
  closed = false;
  constructor(ward: WardId, url: string, headers: Record<string, string>) {
    super(ward, url, headers);
    screens.push(this);
    this.socket.onAny((name: string, message: unknown) => {
      this.words.push(JSON.stringify(message));
      if (name === SOCKET.out) this.outs.push(putOut.parse(message));
    });
    this.socket.on('disconnect', () => (this.closed = true));
  }
  override async ask(name: string, message: unknown): Promise<unknown> {
    const answer = await super.ask(name, message);
    this.words.push(JSON.stringify(answer));
    return answer;
  }
  out(): Promise<PutOut> {
    return this.outs[0]
      ? Promise.resolve(this.outs[0])
      : new Promise((resolve) =>
          this.socket.once(SOCKET.out, (message: unknown) => resolve(putOut.parse(message))),
        );
  }
  gone(): Promise<void> {
    return this.closed
      ? Promise.resolve()
      : new Promise((resolve) => this.socket.once('disconnect', () => resolve()));
  }
}
const own = () => world.footboard.url;
const screenOf = async (client: Client, ward = ALDER, origin: string | null = own()): Promise<Listening> => {
  const cookie: Record<string, string> = client.cookie === '' ? {} : { cookie: client.cookie };
  const one = new Listening(ward, own(), { ...cookie, ...(origin === null ? {} : { origin }) });
  await one.connected();
  return one;
};
/** Why no socket was opened. */
const unopened = (headers: Record<string, string>): Promise<string> =>
  new Promise((resolve) => {
    const one = new Listening(ALDER, own(), headers);
    one.socket.io.reconnection(false);
    one.socket.once('connect', () => resolve('opened'));
    one.socket.once('connect_error', () => resolve('refused'));
  });

const typeOf = (sent: Sent): string => `${sent.status} ${asProblem(sent).type.slice('/problems/'.length)}`;

async function pair(
  kind: 'wall' | 'shared',
  level: BoardLevel,
  place: string,
  device = world.browser(),
): Promise<Client> {
  const { code, poll } = pairingBegun.parse((await device.post('/api/pairings', { kind })).body);
  const ines = await world.as('ines');
  const approved = await ines.post(`/api/wards/${WARD}/devices`, { code, kind, level, place });
  expect(approved.status).toBe(200);
  expect(await device.post('/api/pairings/claim', { poll })).toMatchObject({
    status: 200,
    body: { state: 'paired' },
  });
  return device;
}
const devicesAt = async () =>
  deviceList.parse((await (await world.as('ines')).get(`/api/wards/${WARD}/devices`)).body);
const at = async (place: string) => (await devicesAt()).devices.find((one) => one.place === place)!;
const trigger = (kind = 'new-symptom') => ({ stay: 's1', kind });

beforeAll(async () => {
  world = await openAccessWorld({ limits: 'off', accessClock: clock });
  const first = await world.as(FIRST);
  await first.enter(
    'set-up-ward',
    { name: 'Birch', zone: 'Europe/Lisbon', beds: [{ bed: 'b1', label: '1', bay: 'A' }] },
    {},
    BIRCH,
  );
  const noor = await world.as('noor');
  await noor.enter('begin-stay', { ...beginStay('s1'), identity: { name: PLANTED.name } });
  await noor.enter('place-hold', {
    stay: 's1',
    hold: 'h1',
    scope: 'walking',
    reason: 'after-fall',
    reviewAt: new Date(Date.now() + 60 * MINUTE).toISOString(),
    note: PLANTED.note,
  });
}, 120_000);
afterEach(() => {
  for (const one of screens.splice(0)) one.socket.disconnect();
});
afterAll(() => world?.close());

describe('pairing', () => {
  it('DEVICE-1 needs somebody of the ward who may approve; the key comes once, where no script reads it', async () => {
    const screen = world.browser();
    const begun = pairingBegun.parse((await screen.post('/api/pairings', { kind: 'wall' })).body);
    const request = { code: begun.code, kind: 'wall', level: 'bed-only', place: 'by the door' };
    const approve = async (who: 'ada' | 'noor' | 'ines', ward = WARD) =>
      (await world.as(who)).post(`/api/wards/${ward}/devices`, request);
    expect(typeOf(await screen.post(`/api/wards/${WARD}/devices`, request))).toBe('401 sign-in-first');
    expect(typeOf(await approve('ada'))).toBe('403 not-allowed');
    expect(typeOf(await approve('noor'))).toBe('403 not-allowed');
    expect(typeOf(await approve('ines', BIRCH))).toBe('403 not-on-this-ward');
    const claim = () => screen.post('/api/pairings/claim', { poll: begun.poll });
    expect((await claim()).body).toEqual({ state: 'waiting' });
    expect((await approve('ines')).body).toMatchObject({ place: 'by the door', approvedBy: 'Ines Amaral' });

    const answer = await fetch(`${own()}/api/pairings/claim`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: own() },
      body: JSON.stringify({ poll: begun.poll }),
    });
    const [cookie, key] = /footboard-device=([^;]+);.*/.exec(answer.headers.getSetCookie().join('\n'))!;
    expect(cookie).toMatch(/; HttpOnly/);
    expect(cookie).toMatch(/; SameSite=Strict/);
    expect(cookie).toMatch(new RegExp(`Max-Age=${400 * 24 * 3600}`));
    expect(await answer.text()).not.toContain(key);
    expect((await claim()).body).toEqual({ state: 'over' });
    expect(typeOf(await approve('ines'))).toBe('404 no-such-pairing-code');
  });

  it('of a wall in the browser of somebody signed in, signs them out there', async () => {
    const browser = world.browser();
    await browser.signIn('mira');
    const before = browser.copy();
    await pair('wall', 'bed-only', 'own browser', browser);
    expect(await browser.me()).toMatchObject({ person: null, device: { kind: 'wall', level: 'bed-only' } });
    expect(typeOf(await before.get(`/api/wards/${WARD}/staff`))).toBe('401 sign-in-first');
  });

  it('a code that was shown for ten minutes approves nothing any more', async () => {
    const screen = world.browser();
    const begun = pairingBegun.parse((await screen.post('/api/pairings', { kind: 'wall' })).body);
    clock.ahead += 10 * MINUTE;
    const request = { code: begun.code, kind: 'wall', level: 'bed-only', place: 'late' };
    const sent = await (await world.as('ines')).post(`/api/wards/${WARD}/devices`, request);
    expect(typeOf(sent)).toBe('404 no-such-pairing-code');
    expect((await screen.post('/api/pairings/claim', { poll: begun.poll })).body).toEqual({ state: 'over' });
  });
});

describe("a wall's key", () => {
  it('DEVICE-2 reads the board of its ward at its level, and opens no other address', async () => {
    const wall = await pair('wall', 'bed-only', 'only reads');
    const page = boardPage.parse((await wall.get(`/api/wards/${WARD}/board`)).body);
    expect(page.board.beds[0]!.stay).toMatchObject({ shown: 'bed-only', holds: [{ scope: 'walking' }] });

    const fill = (path: string, ward: string) =>
      path.replace('{ward}', ward).replace('{stay}', 's1').replaceAll(/\{\w+\}/g, 'x1'); // prettier-ignore
    const anyone = (action: string) =>
      Object.entries(WITHOUT_A_WARD).some(([name, who]) => name === action && who === 'anyone');
    let walked = 0;
    for (const { method, path, action } of ROUTES) {
      if (anyone(action)) continue;
      for (const ward of [WARD, BIRCH]) {
        if (action === 'read-board' && ward === WARD) continue;
        const address = fill(path, ward);
        const sent = await (method === 'post' ? wall.post(address, {}) : wall[method](address));
        expect([401, 403], `${method} ${address}: ${sent.status}`).toContain(sent.status);
        walked++;
      }
    }
    expect(walked).toBeGreaterThan(40);
    const earlier = await wall.get(`/api/wards/${WARD}/board?at=${new Date().toISOString()}`);
    expect(earlier.status).toBe(403);
    expect((await wall.get('/api/me')).body).toMatchObject({ person: null, device: { kind: 'wall' } });
  });

  it('DEVICE-2 sends no command, also with a name it claims', async () => {
    const wall = await pair('wall', 'initials', 'sends nothing');
    const head = await world.footboard.log.head(ALDER);
    for (const { action } of commandRoutes) {
      const sent = await wall.send(action, {}, {}, WARD, { 'x-footboard-staff': 'noor' });
      expect(sent.status, `${action} was taken`).toBeGreaterThanOrEqual(400);
    }
    const claimed = await wall.send('record-trigger', trigger(), {}, WARD, { 'x-footboard-staff': 'noor' });
    expect([401, 403]).toContain(claimed.status);
    expect(await world.footboard.log.head(ALDER)).toBe(head);
    const signed = await wall.post('/api/signing', { staff: 'noor', code: CODE });
    expect(typeOf(signed)).toBe('403 not-a-shared-device');
  });

  it('DEVICE-3 gets each change at its level; no name, reason, entry or person stands in any message', async () => {
    const noor = await world.as('noor');
    const nurse = await screenOf(noor);
    const walls = await Promise.all(
      (['bed-only', 'visitors'] as const).map(async (level) =>
        screenOf(await pair('wall', level, `hears ${level}`)),
      ),
    );
    for (const one of [nurse, ...walls]) expect((await one.join()).answer).toBe('snapshot');
    const { position } = await noor.enter('record-trigger', trigger('fall'));
    for (const one of [nurse, ...walls]) await one.until((screen) => (screen.state?.p ?? 0) >= position);

    const demands = ({ board }: Snapshot) =>
      board.beds.map(({ stay }) =>
        stay?.plan?.day.map(({ task, hold, people, aid, with: others }) => [task, hold, people, aid, others]),
      );
    for (const wall of walls) {
      expect(demands(wall.state!)).toEqual(demands(nurse.state!));
      expect(wall.gaps).toBe(0);
      expect(wall.applied.length).toBeGreaterThan(0);
    }
    const heard = walls.flatMap((wall) => wall.words).join('\n');
    const events = await world.footboard.log.readStreams(ALDER, ['stay/s1'], new Map());
    const entries = events.get('stay/s1')!.events.map((event) => event.id);
    expect(entries.length).toBeGreaterThan(2);
    // What the nurse hears shows that there is something to hide.
    expect(nurse.words.join('\n')).toContain(entries.at(-1));
    expect(nurse.words.join('\n')).toContain('after-fall');
    for (const hidden of [PLANTED.name, PLANTED.note, 'noor', 'after-fall', '"fall"', ...entries]) {
      expect(heard).not.toContain(hidden);
    }
    expect(walls[1]!.words.join('\n')).not.toContain('re-check');
  });

  it('WALL-3 says ASK AT THE BEDSIDE of somebody who does not wish to be shown; staff see all of it', async () => {
    const noor = await world.as('noor');
    const [nurse, wall] = [
      await screenOf(noor),
      await screenOf(await pair('wall', 'bed-only', 'says nothing')),
    ];
    for (const one of [nurse, wall]) await one.join();
    const show = async (showing: 'nothing' | 'as-ward') => {
      const { position } = await noor.enter('set-wall-showing', { stay: 's1', showing });
      for (const one of [nurse, wall]) await one.until((screen) => (screen.state?.p ?? 0) >= position);
      return [nurse, wall].map((one) => one.state!.board.beds[0]!.stay!);
    };
    const [whole, said] = await show('nothing');
    expect(whole).toMatchObject({ shown: 'whole', wall: 'nothing', plan: { day: expect.any(Array) } });
    expect(said).toMatchObject({ shown: 'ask-at-the-bedside', plan: null, checkBeforeMoving: true });
    expect((await show('as-ward')).map(({ shown }) => shown)).toEqual(['whole', 'bed-only']);
  });

  it('DEVICE-4 taken back, is refused at once, and its screens are put out and told why', async () => {
    const wall = await pair('wall', 'bed-only', 'taken back');
    const screen = await screenOf(wall);
    await screen.join();
    expect((await at('taken back')).connected).toBe(true);
    const ines = await world.as('ines');
    const { device } = await at('taken back');
    expect((await ines.delete(`/api/wards/${WARD}/devices/${device}`)).status).toBe(204);
    expect(await screen.out()).toMatchObject({ ward: null, why: 'device-revoked' });
    await screen.gone();
    const words = screen.words.length;
    expect(typeOf(await wall.get(`/api/wards/${WARD}/board`))).toBe('401 sign-in-first');
    await ines.enter('record-trigger', trigger());
    expect(screen.words.length).toBe(words);
    expect(await (await screenOf(wall)).join()).toMatchObject({
      answer: 'refused',
      refused: 'sign-in-first',
    });
    expect(await at('taken back')).toMatchObject({ connected: false, revoked: expect.any(Number) });
  });
});

describe('a socket', () => {
  it('joins only wards that the policy opens to it', async () => {
    const wall = await pair('wall', 'bed-only', 'one ward');
    const refusedBy = async (client: Client, ward: WardId) => (await screenOf(client, ward)).join();
    expect(await refusedBy(wall, BIRCH)).toMatchObject({ answer: 'refused', refused: 'not-allowed' });
    expect(await refusedBy(world.browser(), ALDER)).toMatchObject({ refused: 'sign-in-first' });
    const nowhere = 'nowhere' as WardId;
    // Whoever has no business there does not learn which wards there are.
    expect(await refusedBy(await world.as('noor'), BIRCH)).toMatchObject({ refused: 'not-allowed' });
    expect(await refusedBy(await world.as('noor'), nowhere)).toMatchObject({ refused: 'not-allowed' });
    expect(await refusedBy(await world.as(FIRST), nowhere)).toMatchObject({ refused: 'no-such-ward' });
  });
  it('shows an administrator the place, not the patients', async () => {
    const screen = await screenOf(await world.as('alva'));
    await screen.join();
    expect(screen.state!.board.beds[0]!.stay!.shown).toBe('bed-only');
  });
  it('of a foreign page, or of a program with neither key nor session, is not opened', async () => {
    const { cookie } = await world.as('noor');
    expect(await unopened({ cookie, origin: 'https://elsewhere.example' })).toBe('refused');
    expect(await unopened({ cookie, origin: own().replace(/\d+$/, '1') })).toBe('refused');
    expect(await unopened({})).toBe('refused');
    expect(await unopened({ cookie })).toBe('opened');
    const wall = await pair('wall', 'bed-only', 'a program');
    expect(await unopened({ cookie: wall.cookie })).toBe('opened');
    const forwarded = { origin: 'https://elsewhere.example', 'x-forwarded-host': 'elsewhere.example' };
    expect(await unopened({ cookie, ...forwarded })).toBe('refused');
  });
  it('whose person signs out is put out and told why', async () => {
    const browser = world.browser();
    await browser.signIn('theo');
    const screen = await screenOf(browser.copy());
    await screen.join();
    expect((await browser.delete('/api/session')).status).toBeLessThan(300);
    expect(await screen.out()).toMatchObject({ ward: ALDER, why: 'sign-in-first' });
    expect(await screen.join()).toMatchObject({ answer: 'refused', refused: 'sign-in-first' });
  });
  it('on a shared device whose person signs out, goes on as the device after asking again', async () => {
    const phone = await pair('shared', 'whole', 'stays open');
    await phone.signIn('theo');
    const screen = await screenOf(phone);
    await screen.join();
    await phone.delete('/api/session');
    expect(await screen.out()).toMatchObject({ ward: ALDER, why: 'join-again' });
    expect((await screen.join()).answer).toBe('current');
  });
  it('whose person is taken off the ward is put out', async () => {
    await (
      await world.as(FIRST)
    ).enter('add-staff-member', { staff: 'udo', name: 'Udo Lenz', role: 'nurse' });
    await world.invited('udo', 'Udo Lenz');
    const screen = await screenOf(await world.as('udo' as 'noor'));
    await screen.join();
    await (await world.as('ines')).enter('change-staff-member', { staff: 'udo', active: false });
    expect(await screen.out()).toMatchObject({ ward: ALDER });
    const words = screen.words.length;
    await (await world.as('noor')).enter('record-trigger', trigger());
    expect(screen.words.length).toBe(words);
  });
  it('that nobody touches does not keep a session open: it idles out, and the screen with it', async () => {
    const browser = world.browser();
    await browser.signIn('hanne');
    const screen = await screenOf(browser);
    await screen.join();
    const before = clock.ahead;
    clock.ahead += 20 * MINUTE;
    // What a screen asks for by itself is nobody's doing.
    await screen.join();
    clock.ahead += 11 * MINUTE;
    expect(await screen.out()).toMatchObject({ ward: ALDER, why: 'sign-in-first' });
    clock.ahead = before;
  });
});

describe('display receipts', () => {
  it('DEVICE-5 list which change a screen painted and with which program; of people none are kept', async () => {
    const wall = await pair('wall', 'bed-only', 'paints');
    const screen = await screenOf(wall);
    await screen.join();
    const { feed } = screen.state!;
    expect(await at('paints')).toMatchObject({ painted: null, connected: true });
    const painted = { ward: ALDER, feed, page: '0.3.0' };
    for (const wrong of [
      null,
      {},
      { ...painted, feed: -1 },
      { ...painted, page: '<b>' },
      { ...painted, ward: BIRCH },
    ]) {
      screen.socket.emit(SOCKET.painted, wrong);
    }
    (await screenOf(await world.as('noor'))).socket.emit(SOCKET.painted, painted);
    await screen.nextBeat();
    expect(await at('paints')).toMatchObject({ painted: null, page: null });
    screen.socket.emit(SOCKET.painted, painted);
    await screen.nextBeat();
    expect(await at('paints')).toMatchObject({ painted: feed, page: '0.3.0', seen: expect.any(Number) });
    expect((await devicesAt()).feed).toBeGreaterThanOrEqual(feed);
  });
});

describe('a short code on a shared device', () => {
  const sign = (client: Client, code: string, staff = 'noor') => client.post('/api/signing', { staff, code });
  const goal = { stay: 's1', goal: { activity: 'edge-sit', timesUp: 2 } };

  it('CODE-1 opens two minutes for that person on that device, and no longer', async () => {
    const phone = await pair('shared', 'whole', 'two minutes');
    expect(typeOf(await phone.send('record-trigger', trigger()))).toBe('401 sign-in-first');
    const opened = await sign(phone, CODE);
    expect(opened).toMatchObject({ status: 200, body: { staff: 'noor' } });
    const sent = await phone.enter('record-trigger', trigger());
    const read = await world.footboard.log.readStreams(ALDER, ['stay/s1'], new Map());
    const event = read.get('stay/s1')!.events.find(({ id }) => id === sent.events[0]!.id)!;
    expect(event.author).toEqual({ staff: 'noor', role: 'nurse' });
    expect(event.source.unconfirmed).toBeUndefined();
    clock.ahead += 2 * MINUTE;
    expect(typeOf(await phone.send('record-trigger', trigger()))).toBe('401 sign-in-first');
    // A copy of the cookie opens nothing on another device.
    await sign(phone, CODE);
    const other = await pair('shared', 'whole', 'another');
    other.setCookie('footboard-signing', phone.cookieNamed('footboard-signing')!);
    expect(typeOf(await other.send('record-trigger', trigger()))).toBe('401 sign-in-first');
    expect((await phone.delete('/api/signing')).status).toBe(204);
    expect(typeOf(await phone.send('record-trigger', trigger()))).toBe('401 sign-in-first');
  });

  it('CODE-2 locks after five wrong ones; caution goes on unconfirmed; a full sign-in opens it again', async () => {
    const phone = await pair('shared', 'whole', 'locked');
    for (let left = 4; left > 0; left--) {
      const sent = await sign(phone, '111111');
      expect(typeOf(sent)).toBe('403 wrong-code');
      expect(asProblem(sent).detail).toMatch(left === 1 ? /One try/ : new RegExp(`${left} tries`));
    }
    expect(typeOf(await sign(phone, '111111'))).toBe('423 code-locked');
    expect(typeOf(await sign(phone, CODE))).toBe('423 code-locked');
    expect((await sign(phone, CODE, 'theo')).status).toBe(200);
    await phone.delete('/api/signing');

    const asNoor = { 'x-footboard-staff': 'noor' };
    const sent = await phone.enter('record-trigger', trigger(), {}, WARD, asNoor);
    const read = await world.footboard.log.readStreams(ALDER, ['stay/s1'], new Map());
    const event = read.get('stay/s1')!.events.find(({ id }) => id === sent.events[0]!.id)!;
    expect([event.author, event.source.unconfirmed]).toEqual([{ staff: 'noor', role: 'aide' }, true]);
    expect((await phone.send('set-goal', goal, {}, WARD, asNoor)).status).toBe(401);

    expect((await world.browser().signIn('noor', passwordOf('noor'))).status).toBeLessThan(300);
    expect((await sign(phone, CODE)).status).toBe(200);
  });

  it('is for people of its ward only, and for no browser that is not paired', async () => {
    const phone = await pair('shared', 'whole', 'own people');
    await world.invited('olga', 'Olga Brandt', { ward: BIRCH }).catch(() => {});
    expect(typeOf(await sign(phone, CODE, 'nobody-here'))).toBe('403 not-on-this-ward');
    expect(typeOf(await sign(world.browser(), CODE))).toBe('403 not-a-shared-device');
    expect(typeOf(await phone.post('/api/signing', { staff: 'noor', code: '12' }))).toBe(
      '422 invalid-request',
    );
  });
});
