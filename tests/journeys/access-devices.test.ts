/** Walls and paired devices over real HTTP and real sockets: what a key opens, and how it ends. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { MINUTE } from '@footboard/shared/kernel/times';
import { WITHOUT_A_WARD } from '@footboard/shared/capabilities/people/policy/document';
import { pairingBegun } from '@footboard/shared/wire/access';
import { boardPage } from '@footboard/shared/wire/http';
import { SOCKET } from '@footboard/shared/wire/messages';
import type { Snapshot } from '@footboard/shared/wire/messages';
import { ROUTES, commandRoutes } from '@footboard/shared/wire/routes';
import { CODE } from './access-kit.ts';
import { ALDER, BIRCH, PLANTED, openScreensWorld, trigger, typeOf } from './access-screens-kit.ts';
import type { ScreensWorld } from './access-screens-kit.ts';
import { WARD } from './http-kit.ts';

let world: ScreensWorld;
const pair: ScreensWorld['pair'] = (...asked) => world.pair(...asked);
const screenOf: ScreensWorld['screenOf'] = (...asked) => world.screenOf(...asked);

beforeAll(async () => {
  world = await openScreensWorld();
}, 120_000);
afterEach(() => world?.hangUp());
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

    const answer = await fetch(`${world.own()}/api/pairings/claim`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: world.own() },
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
    world.clock.ahead += 10 * MINUTE;
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
    expect((await world.at('taken back')).connected).toBe(true);
    const ines = await world.as('ines');
    const { device } = await world.at('taken back');
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
    expect(await world.at('taken back')).toMatchObject({ connected: false, revoked: expect.any(Number) });
  });
});

describe('display receipts', () => {
  it('DEVICE-5 list which change a screen painted and with which program; of people none are kept', async () => {
    const wall = await pair('wall', 'bed-only', 'paints');
    const screen = await screenOf(wall);
    await screen.join();
    const { feed } = screen.state!;
    expect(await world.at('paints')).toMatchObject({ painted: null, connected: true });
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
    expect(await world.at('paints')).toMatchObject({ painted: null, page: null });
    screen.socket.emit(SOCKET.painted, painted);
    await screen.nextBeat();
    expect(await world.at('paints')).toMatchObject({
      painted: feed,
      page: '0.3.0',
      seen: expect.any(Number),
    });
    expect((await world.devices()).feed).toBeGreaterThanOrEqual(feed);
  });
});
