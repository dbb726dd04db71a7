/** What screens may show beside the board, and what each has painted: over real HTTP and sockets. */
import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { commandAccepted } from '@footboard/shared/wire/http';
import { initialsPage, receiptsPage } from '@footboard/shared/wire/access';
import { SOCKET } from '@footboard/shared/wire/messages';
import { ALDER, BIRCH, openScreensWorld, typeOf } from './access-screens-kit.ts';
import type { ScreensWorld } from './access-screens-kit.ts';
import { WARD } from './http-kit.ts';

let world: ScreensWorld;
beforeAll(async () => {
  world = await openScreensWorld();
}, 120_000);
afterEach(() => world?.hangUp());
afterAll(() => world?.close());

const PATH = `/api/wards/${WARD}/initials`;

describe('initials', () => {
  it('WALL-7 are read by a wall that was paired to show them, and by whoever sees the whole board', async () => {
    const wall = await world.pair('wall', 'initials', 'inside the station');
    const page = initialsPage.parse((await wall.get(PATH)).body);
    // Zdenka Quillfeather lies in 1A (access-screens-kit).
    expect(page.initials).toEqual({ s1: 'Z.Q.' });
    expect((await (await world.as('noor')).get(PATH)).body).toEqual(page);
    expect(JSON.stringify(await wall.get(`/api/wards/${WARD}/board`))).not.toMatch(/Z\.Q\.|Zdenka/);
  });

  it('WALL-7 are refused to every other screen and role, and to another ward', async () => {
    for (const level of ['bed-only', 'visitors'] as const) {
      const wall = await world.pair('wall', level, `no letters ${level}`);
      expect(typeOf(await wall.get(PATH))).toBe('403 not-allowed');
    }
    expect(typeOf(await (await world.as('alva')).get(PATH))).toBe('403 not-allowed');
    expect(typeOf(await world.browser().get(PATH))).toBe('401 sign-in-first');
    const wall = await world.pair('wall', 'initials', 'of Alder');
    expect((await wall.get(`/api/wards/${BIRCH}/initials`)).status).toBe(403);
  });

  it('WALL-7 leave out whoever does not wish to be shown', async () => {
    const noor = await world.as('noor');
    const wall = await world.pair('wall', 'initials', 'asks again');
    await noor.enter('set-wall-showing', { stay: 's1', showing: 'nothing' });
    expect((await wall.get(PATH)).body).toEqual({ initials: {} });
    await noor.enter('set-wall-showing', { stay: 's1', showing: 'as-ward' });
    expect((await wall.get(PATH)).body).toEqual({ initials: { s1: 'Z.Q.' } });
  });
});

describe('display receipts of corrections', () => {
  it('WALL-8 name the screens that have not painted a retraction yet, until they have', async () => {
    const walls = {
      near: await world.pair('wall', 'bed-only', 'station wall'),
      far: await world.pair('wall', 'bed-only', 'corridor wall'),
    };
    const [near, far] = [await world.screenOf(walls.near), await world.screenOf(walls.far)];
    await Promise.all([near.join(), far.join()]);
    const noor = await world.as('noor');
    const { events } = commandAccepted.parse(
      (await noor.send('record-trigger', { stay: 's1', kind: 'fall' })).body,
    );
    const taken = commandAccepted.parse(
      (
        await noor.send(
          'make-retraction',
          { stay: 's1', target: events[0]!.id, reason: 'never-happened' },
          { commandId: randomUUID() },
        )
      ).body,
    );
    const read = async () => receiptsPage.parse((await noor.get(`/api/wards/${WARD}/receipts`)).body);
    const change = async () => (await read()).changes.find(({ event }) => event === taken.events[0]!.id)!;

    const { feed, stay } = await change();
    expect(stay).toBe('s1');
    expect(feed).toBeTypeOf('number');
    await near.until(({ state }) => (state?.feed ?? 0) >= feed!);
    const placesWaiting = async () => {
      const { screens } = await read();
      const { waiting } = await change();
      return screens
        .filter(({ device, place }) => waiting.includes(device) && place.endsWith(' wall'))
        .map(({ place }) => place);
    };
    expect(await placesWaiting()).toEqual(['corridor wall', 'station wall']);

    near.socket.emit(SOCKET.painted, { ward: ALDER, feed: near.state!.feed, page: '0.3.0' });
    await near.nextBeat();
    expect(await placesWaiting()).toEqual(['corridor wall']);
    // One feed number short is not seen.
    far.socket.emit(SOCKET.painted, { ward: ALDER, feed: feed! - 1, page: '0.3.0' });
    await far.nextBeat();
    expect(await placesWaiting()).toEqual(['corridor wall']);
    far.socket.emit(SOCKET.painted, { ward: ALDER, feed: feed!, page: '0.3.0' });
    await far.nextBeat();
    expect(await placesWaiting()).toEqual([]);
  });

  it('are for people of the ward, not for its screens', async () => {
    const wall = await world.pair('wall', 'bed-only', 'reads none');
    expect((await wall.get(`/api/wards/${WARD}/receipts`)).status).toBe(403);
  });
});
