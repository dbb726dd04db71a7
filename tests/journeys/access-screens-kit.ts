/** Screens with cookies on a world with sign-in on: what the journeys of devices and sockets share. */
import { expect } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import type { BoardLevel } from '@footboard/shared/capabilities/people/policy/document';
import { deviceList, pairingBegun } from '@footboard/shared/wire/access';
import { SOCKET, putOut } from '@footboard/shared/wire/messages';
import type { PutOut } from '@footboard/shared/wire/messages';
import { FIRST, openAccessWorld } from './access-kit.ts';
import type { AccessWorld, Client } from './access-kit.ts';
import { WARD, asProblem, beginStay } from './http-kit.ts';
import type { Sent } from './http-kit.ts';
import { Screen } from './push-kit.ts';

export const ALDER = WARD as WardId;
export const BIRCH = 'birch' as WardId;
/** Planted: they may stand on no wall. */
export const PLANTED = { name: 'Zdenka Quillfeather', note: 'saw the vet from Ostrava' };

/** A screen that keeps every word it hears. */
export class Listening extends Screen {
  readonly words: string[] = [];
  readonly outs: PutOut[] = [];
  closed = false;
  constructor(ward: WardId, url: string, headers: Record<string, string>) {
    super(ward, url, headers);
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

export const typeOf = (sent: Sent): string =>
  `${sent.status} ${asProblem(sent).type.slice('/problems/'.length)}`;
export const trigger = (kind = 'new-symptom') => ({ stay: 's1', kind });

export interface ScreensWorld extends AccessWorld {
  /** Real time, moved on by what a test adds: for codes, links and sessions. */
  readonly clock: { readonly rate: 1; ahead: number; now(): number };
  own(): string;
  screenOf(client: Client, ward?: WardId): Promise<Listening>;
  /** Whether a socket with these headers is opened. */
  knock(headers: Record<string, string>): Promise<'opened' | 'refused'>;
  /** A browser (a fresh one) that Ines paired with Alder. */
  pair(kind: 'wall' | 'shared', level: BoardLevel, place: string, device?: Client): Promise<Client>;
  /** The line of the device at that place. */
  at(place: string): Promise<Awaited<ReturnType<ScreensWorld['devices']>>['devices'][number]>;
  devices(): Promise<ReturnType<typeof deviceList.parse>>;
  /** Closes every socket opened so far. */
  hangUp(): void;
}

/** Alder with everybody and one stay on hold in bed 1A, and a second ward nobody of Alder is on. */
export async function openScreensWorld(): Promise<ScreensWorld> {
  const clock = { rate: 1 as const, ahead: 0, now: (): number => Date.now() + clock.ahead };
  const world = await openAccessWorld({ limits: 'off', accessClock: clock });
  const screens: Listening[] = [];
  const own = () => world.footboard.url;
  const listening = (ward: WardId, headers: Record<string, string>) => {
    const one = new Listening(ward, own(), headers);
    screens.push(one);
    return one;
  };
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

  const devices = async () =>
    deviceList.parse((await (await world.as('ines')).get(`/api/wards/${WARD}/devices`)).body);
  return {
    ...world,
    clock,
    own,
    devices,
    async screenOf(client, ward = ALDER) {
      const cookie: Record<string, string> = client.cookie === '' ? {} : { cookie: client.cookie };
      const one = listening(ward, { ...cookie, origin: own() });
      await one.connected();
      return one;
    },
    knock: (headers) =>
      new Promise((resolve) => {
        const one = listening(ALDER, headers);
        one.socket.io.reconnection(false);
        one.socket.once('connect', () => resolve('opened'));
        one.socket.once('connect_error', () => resolve('refused'));
      }),
    async pair(kind, level, place, device = world.browser()) {
      const { code, poll } = pairingBegun.parse((await device.post('/api/pairings', { kind })).body);
      const ines = await world.as('ines');
      const approved = await ines.post(`/api/wards/${WARD}/devices`, { code, kind, level, place });
      expect(approved.status).toBe(200);
      expect(await device.post('/api/pairings/claim', { poll })).toMatchObject({
        status: 200,
        body: { state: 'paired' },
      });
      return device;
    },
    at: async (place) => (await devices()).devices.find((one) => one.place === place)!,
    hangUp() {
      for (const one of screens.splice(0)) one.socket.disconnect();
    },
  };
}
