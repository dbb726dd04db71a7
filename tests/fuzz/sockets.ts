/** Sends malformed messages over real sockets and raw packets over polling, and says what was wrong. */
import { randomUUID } from 'node:crypto';
import { io } from 'socket.io-client';
import type { Socket } from 'socket.io-client';
import { SOCKET, WIRE_VERSION, joinAnswer } from '@footboard/shared/wire/messages';
import { INSIDE } from './judge.ts';
import type { Message } from './messages.ts';
import { unchanged } from './unchanged.ts';
import type { Tally, World } from './world.ts';
import { send } from './wire.ts';

const PATIENCE_MS = 30_000;
const count = (tally: Tally, what: 'taken' | 'closed'): void => {
  if (what === 'taken') tally.taken += 1;
  else tally.statuses.set(0, (tally.statuses.get(0) ?? 0) + 1);
};

/** One screen a voice, opened again when it was closed. */
export class Screens {
  readonly #open = new Map<string, Socket>();
  readonly faults: string[] = [];

  constructor(
    private readonly world: World,
    readonly tally: Tally,
    /** Opens new ones for each batch: a socket that asked too often is not answered any more. */
    private readonly eachTime: boolean,
  ) {}

  async of(voice: string): Promise<Socket | null> {
    const known = this.#open.get(voice);
    if (known?.connected) return known;
    known?.disconnect();
    const screen = io(`http://127.0.0.1:${this.world.port}`, {
      transports: ['websocket'],
      reconnection: false,
      forceNew: true,
      extraHeaders: this.world.voices[voice]!.headers(),
    });
    screen.on('exception', (said: unknown) =>
      this.faults.push(`an exception for ${voice}: ${JSON.stringify(said)}`),
    );
    const opened = await new Promise<boolean>((resolve) => {
      screen.once('connect', () => resolve(true));
      screen.once('connect_error', () => resolve(false));
    });
    if (!opened) return null;
    this.#open.set(voice, screen);
    return screen;
  }

  /** A well-formed question after the others: its answer says that they have all been read. */
  async settled(screen: Socket): Promise<void> {
    const request = { requestId: randomUUID(), wireVersion: WIRE_VERSION, ward: 'alder', feed: null };
    await Promise.race([
      screen.timeout(PATIENCE_MS).emitWithAck(SOCKET.join, request),
      new Promise((resolve) => screen.once('disconnect', resolve)),
    ]);
    if (!screen.connected) count(this.tally, 'closed');
  }

  batchEnds(): void {
    if (this.eachTime) this.close();
  }

  close(): void {
    for (const screen of this.#open.values()) screen.disconnect();
    this.#open.clear();
  }
}

/** Sends so many on one socket, as fast as it goes; true when the server put it out. */
export async function floodedOut(screens: Screens, voice: string, messages: number): Promise<boolean> {
  const screen = await screens.of(voice);
  if (!screen) throw new Error(`no socket for ${voice}`);
  const out = new Promise<void>((resolve) => screen.once('disconnect', () => resolve()));
  for (let sent = 0; sent < messages; sent++) {
    screens.tally.sent += 1;
    screen.emit(SOCKET.join, { ward: sent }, () => count(screens.tally, 'taken'));
  }
  await Promise.race([out, new Promise((resolve) => setTimeout(resolve, PATIENCE_MS))]);
  return !screen.connected;
}

export async function faultsOfMessages(
  world: World,
  screens: Screens,
  messages: readonly Message[],
): Promise<string[]> {
  screens.faults.length = 0;
  const wrong = await unchanged(world, async () => {
    const found: string[] = [];
    for (const { voice, event, args, asks } of messages) {
      const screen = await screens.of(voice);
      screens.tally.sent += 1;
      if (!screen) {
        count(screens.tally, 'closed');
        continue;
      }
      // The client itself refuses names that the library keeps for itself.
      if (
        ['connect', 'connect_error', 'disconnect', 'disconnecting', 'newListener', 'removeListener'].includes(
          event,
        )
      ) {
        continue;
      }
      if (!asks) screen.emit(event, ...args);
      else {
        screen.emit(event, ...args, (told: unknown) => {
          count(screens.tally, 'taken');
          const fault = faultOfAnswer(told);
          if (fault) found.push(`${event} as ${voice}: ${fault} to ${JSON.stringify(args).slice(0, 600)}`);
        });
      }
      await screens.settled(screen);
    }
    screens.batchEnds();
    return found;
  });
  return [...wrong, ...screens.faults];
}

function faultOfAnswer(told: unknown): string | null {
  const answer = joinAnswer.safeParse(told);
  if (!answer.success) return `no answer of the documented shape: ${JSON.stringify(told).slice(0, 300)}`;
  if (answer.data.answer !== 'refused') return null;
  const { detail, remedy } = answer.data;
  if (detail.length < 6 || remedy.length < 6) return `says too little: ${detail} ${remedy}`;
  return INSIDE.test(`${detail} ${remedy}`) ? `shows the inside: ${detail}` : null;
}

/** A connection by polling that speaks the given packets after a proper beginning. */
export async function faultsOfPackets(
  world: World,
  voice: string,
  packets: readonly string[],
  tally: Tally,
): Promise<string[]> {
  const ask = (method: string, query: string, body: string | null) =>
    send(world.port, {
      method,
      path: `/socket.io/?EIO=4&transport=polling${query}`,
      headers: [
        ['Host', `127.0.0.1:${world.port}`],
        ['Content-Type', 'text/plain;charset=UTF-8'],
        ...Object.entries(world.voices[voice]!.headers()),
      ],
      body,
    });
  return unchanged(world, async () => {
    const found: string[] = [];
    const begun = await ask('GET', '', null);
    const sid = /"sid":"([\w-]+)"/.exec(begun?.body.toString() ?? '')?.[1];
    if (sid === undefined)
      return begun && begun.status < 500 ? found : [`no handshake: ${begun?.status ?? 'closed'}`];
    await ask('POST', `&sid=${sid}`, '40');
    for (const packet of packets) {
      const answer = await ask('POST', `&sid=${sid}`, packet);
      tally.sent += 1;
      if (answer && answer.status >= 500) found.push(`${answer.status} to packet ${packet.slice(0, 200)}`);
      tally.statuses.set(answer?.status ?? 0, (tally.statuses.get(answer?.status ?? 0) ?? 0) + 1);
    }
    return found;
  });
}
