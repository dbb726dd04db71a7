/** Sockets and short codes with sign-in on: who is let in, and who is put out. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import { CODE, FIRST, passwordOf } from './access-kit.ts';
import type { Client } from './access-kit.ts';
import { ALDER, BIRCH, openScreensWorld, trigger, typeOf } from './access-screens-kit.ts';
import type { ScreensWorld } from './access-screens-kit.ts';
import { WARD, asProblem } from './http-kit.ts';

let world: ScreensWorld;
const pair: ScreensWorld['pair'] = (...asked) => world.pair(...asked);
const screenOf: ScreensWorld['screenOf'] = (...asked) => world.screenOf(...asked);

beforeAll(async () => {
  world = await openScreensWorld();
}, 120_000);
afterEach(() => world?.hangUp());
afterAll(() => world?.close());

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
    expect(await world.knock({ cookie, origin: 'https://elsewhere.example' })).toBe('refused');
    expect(await world.knock({ cookie, origin: world.own().replace(/\d+$/, '1') })).toBe('refused');
    expect(await world.knock({})).toBe('refused');
    expect(await world.knock({ cookie })).toBe('opened');
    const wall = await pair('wall', 'bed-only', 'a program');
    expect(await world.knock({ cookie: wall.cookie })).toBe('opened');
    const forwarded = { origin: 'https://elsewhere.example', 'x-forwarded-host': 'elsewhere.example' };
    expect(await world.knock({ cookie, ...forwarded })).toBe('refused');
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
    const before = world.clock.ahead;
    world.clock.ahead += 20 * MINUTE;
    // What a screen asks for by itself is nobody's doing.
    await screen.join();
    world.clock.ahead += 11 * MINUTE;
    expect(await screen.out()).toMatchObject({ ward: ALDER, why: 'sign-in-first' });
    world.clock.ahead = before;
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
    world.clock.ahead += 2 * MINUTE;
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
