/** A ward with a real embedded database, a real server and real sockets, for the journeys of the push. */
import { randomUUID } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { Module } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { io } from 'socket.io-client';
import type { Socket } from 'socket.io-client';
import type { CommandId, EventId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { StreamKey } from '@footboard/shared/kernel/event-type';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { applyPatch } from '@footboard/shared/wire/apply';
import { SOCKET, WIRE_VERSION, heartbeat, joinAnswer, patch } from '@footboard/shared/wire/messages';
import type { Heartbeat, JoinAnswer, Patch, Snapshot } from '@footboard/shared/wire/messages';
import { Gate } from '@footboard/server/access/gate';
import { IDENTIFY, identifyOpenly } from '@footboard/server/access/identify';
import { ACCESS_LOG, DEVICES, GATE, SESSIONS } from '@footboard/server/access/ports';
import { STREAMS, Streams } from '@footboard/server/commanding/streams';
import { LIMITS, noLimits } from '@footboard/server/http/limits';
import { openLog } from '@footboard/server/log/open-log';
import type { Log } from '@footboard/server/log/log';
import type { Clock } from '@footboard/server/platform/clock';
import { systemClock } from '@footboard/server/platform/clock';
import { openDatabase } from '@footboard/server/platform/database';
import type { Database } from '@footboard/server/platform/database';
import { migrate } from '@footboard/server/platform/migrate';
import { BOARDS } from '@footboard/server/projecting/board';
import { openBoards } from '@footboard/server/projecting/open-boards';
import type { RunningBoards } from '@footboard/server/projecting/open-boards';
import type { Timers } from '@footboard/server/projecting/timers';
import { WardGateway } from '@footboard/server/pushing/gateway';

/** A clock that stands still until a test moves it, and timers that fire only when they are due by it. */
export class HandTime implements Clock, Timers {
  readonly rate = 1;
  #now: EpochMs;
  #waiting = new Set<{ due: EpochMs; wait: number; callback: () => void }>();
  constructor(now: EpochMs = Date.now()) {
    this.#now = now;
  }
  now(): EpochMs {
    return this.#now;
  }
  after(ms: number, callback: () => void): () => void {
    const timer = { due: this.#now + ms, wait: ms, callback };
    this.#waiting.add(timer);
    return () => this.#waiting.delete(timer);
  }
  /** Moves the clock and fires what is due, in order. */
  advance(ms: number): void {
    this.#now += ms;
    const due = [...this.#waiting].filter((timer) => timer.due <= this.#now);
    for (const timer of due.toSorted((a, b) => a.due - b.due)) {
      this.#waiting.delete(timer);
      timer.callback();
    }
  }
  /** Moves the clock and fires only timers that were set for exactly this wait. Answers how many. */
  advanceOnly(ms: number): number {
    this.#now += ms;
    const due = [...this.#waiting].filter((timer) => timer.wait === ms);
    for (const timer of due) {
      this.#waiting.delete(timer);
      timer.callback();
    }
    return due.length;
  }
}

export interface EventBuilder {
  readonly stream: StreamKey;
  readonly type: string;
  readonly payload: unknown;
  readonly occurred?: EpochMs;
}

export interface Hospital {
  readonly database: Database;
  readonly log: Log;
  readonly boards: RunningBoards;
  readonly time: Clock;
  readonly faults: { place: string; error: unknown }[];
  append(ward: WardId, ...events: readonly EventBuilder[]): Promise<number>;
  /** A second server process in all but the process: its own runners over the same database. */
  secondBoards(): RunningBoards;
  screen(ward: WardId): Promise<Screen>;
  close(): Promise<void>;
}

// oxlint-disable-next-line typescript/no-extraneous-class -- a module of Nest is a class
class PushModule {}
Module({})(PushModule);

const NURSE = { staff: 'staff-1' as StaffId, role: 'nurse' as const };

/** Sign-in is off here: nobody is ever put out. */
const never = () => () => {};

export async function openHospital(options: { time?: HandTime } = {}): Promise<Hospital> {
  const database = await openDatabase({ dataDir: 'memory://' });
  await migrate(database);
  const log = openLog(database);
  const time = options.time ?? systemClock;
  const faults: { place: string; error: unknown }[] = [];
  const boardsOver = () =>
    openBoards({
      log,
      database,
      clock: time,
      ...(options.time ? { timers: options.time } : {}),
      report: (place, error) => faults.push({ place, error }),
    });
  const boards = boardsOver();
  await boards.start();

  const providers = [
    WardGateway,
    { provide: BOARDS, useValue: boards },
    { provide: IDENTIFY, useValue: identifyOpenly },
    { provide: GATE, useValue: new Gate({ open: async () => null }) },
    { provide: STREAMS, useValue: new Streams(log) },
    { provide: DEVICES, useValue: { onRevoke: never, connected: never } },
    { provide: SESSIONS, useValue: { onEnd: never } },
    { provide: LIMITS, useValue: noLimits },
    // With sign-in off nobody is known to have looked.
    { provide: ACCESS_LOG, useValue: { note: () => undefined } },
  ];
  const app = await NestFactory.create({ module: PushModule, providers }, { logger: false });
  await app.listen(0, '127.0.0.1');
  const { port } = app.getHttpServer().address() as AddressInfo;

  const versions = new Map<string, number>();
  const screens: Screen[] = [];
  return {
    database,
    log,
    boards,
    time,
    faults,
    async append(ward, ...events) {
      const at = time.now();
      const built = events.map((event) => {
        const key = `${ward} ${event.stream}`;
        const version = (versions.get(key) ?? 0) + 1;
        versions.set(key, version);
        return {
          ward,
          stream: event.stream,
          version,
          id: randomUUID() as EventId,
          type: event.type,
          schemaVersion: 1,
          payload: event.payload,
          occurred: event.occurred ?? at,
          precision: 'exact' as const,
          entered: at,
          enteredOffsetMinutes: 0,
          author: NURSE,
          source: { kind: 'person' as const },
        };
      });
      const appended = await log.append({
        command: {
          commandId: randomUUID() as CommandId,
          ward,
          name: 'test-entry',
          bodyHash: '00'.repeat(32),
          author: NURSE,
          outcome: 'accepted',
          result: {},
        },
        events: built,
      });
      return appended.events.at(-1)!.position;
    },
    secondBoards: boardsOver,
    async screen(ward) {
      const one = new Screen(ward, `http://127.0.0.1:${port}`);
      screens.push(one);
      await one.connected();
      return one;
    },
    async close() {
      for (const one of screens) one.socket.disconnect();
      await app.close();
      await boards.stop();
      await database.close();
    },
  };
}

/** What a wall does with the messages, and nothing else. Everything it hears passes its schema. */
export class Screen {
  readonly socket: Socket;
  state: Snapshot | null = null;
  beat: Heartbeat | null = null;
  readonly applied: Patch[] = [];
  gaps = 0;
  #watching = new Set<() => void>();

  constructor(
    readonly ward: WardId,
    url: string,
    /** Of the handshake: cookies, origin. */
    extraHeaders: Record<string, string> = {},
  ) {
    this.socket = io(url, { transports: ['websocket'], forceNew: true, reconnectionDelay: 10, extraHeaders });
    this.socket.on(SOCKET.patch, (message: unknown) => {
      this.#take(patch.parse(message));
      this.#heard();
    });
    this.socket.on(SOCKET.beat, (message: unknown) => {
      this.beat = heartbeat.parse(message);
      this.#heard();
    });
  }

  connected(): Promise<void> {
    return this.socket.connected
      ? Promise.resolve()
      : new Promise((resolve) => this.socket.once('connect', () => resolve()));
  }

  /** Sends anything under any name and gives the acknowledgement. */
  ask(name: string, message: unknown): Promise<unknown> {
    return this.socket.timeout(20_000).emitWithAck(name, message);
  }

  async join(feed: number | null = this.state?.feed ?? null): Promise<JoinAnswer> {
    const request = { requestId: randomUUID(), wireVersion: WIRE_VERSION, ward: this.ward, feed };
    const answer = joinAnswer.parse(await this.ask(SOCKET.join, request));
    if (answer.answer === 'snapshot') this.state = answer.snapshot;
    if (answer.answer === 'changes') for (const one of answer.patches) this.#take(one);
    if (answer.answer !== 'refused') this.beat = answer.beat;
    this.#heard();
    return answer;
  }

  /** Resolves after the first message that makes it true; no waiting by the clock. */
  until(holds: (screen: this) => boolean): Promise<void> {
    if (holds(this)) return Promise.resolve();
    return new Promise((resolve) => {
      const look = () => {
        if (!holds(this)) return;
        this.#watching.delete(look);
        resolve();
      };
      this.#watching.add(look);
    });
  }

  /** The next beat that leaves the server from now on. */
  nextBeat(): Promise<Heartbeat> {
    return new Promise((resolve) =>
      this.socket.once(SOCKET.beat, (message: unknown) => resolve(heartbeat.parse(message))),
    );
  }

  async lose(): Promise<void> {
    this.socket.disconnect();
  }
  async comeBack(): Promise<void> {
    this.socket.connect();
    await this.connected();
  }

  #take(one: Patch): void {
    if (!this.state) return;
    const result = applyPatch(this.state, one);
    if (result.result === 'gap') this.gaps++;
    if (result.result !== 'applied') return;
    this.state = result.state;
    this.applied.push(one);
  }
  #heard(): void {
    for (const look of this.#watching) look();
  }
}

/** Events of an invented ward, with what a test does not care about filled in. */
export const wardEvents = (ward: WardId, beds: readonly string[]): EventBuilder[] => [
  {
    stream: `ward/${ward}`,
    type: 'ward-set-up',
    payload: {
      name: 'Elm',
      zone: 'Europe/Lisbon',
      wardDayFrom: '07:00',
      nightFrom: '22:00',
      nightTo: '06:00',
    },
  },
  ...beds.map((bed): EventBuilder => bedAdded(ward, bed)),
];
export const bedAdded = (ward: WardId, bed: string): EventBuilder => ({
  stream: `ward/${ward}`,
  type: 'bed-added',
  payload: { bed, label: bed.toUpperCase(), bay: 'Bay 1', ceilingTrack: false },
});
export const arrives = (stay: string, bed: string, occurred?: EpochMs): EventBuilder[] => [
  {
    stream: `stay/${stay}`,
    type: 'stay-begun',
    payload: { stay, person: `person-of-${stay}`, bed, from: 'home' },
    ...(occurred === undefined ? {} : { occurred }),
  },
  { stream: `bed/${bed}`, type: 'bed-taken', payload: { bed, stay } },
];
export const leaves = (stay: string, bed: string): EventBuilder[] => [
  { stream: `stay/${stay}`, type: 'stay-ended', payload: { bed, to: 'home' } },
  { stream: `bed/${bed}`, type: 'bed-freed', payload: { bed, stay } },
];
export const attached = (stay: string, attachment: string): EventBuilder => ({
  stream: `stay/${stay}`,
  type: 'attachment-added',
  payload: { attachment, kind: 'iv-line', disconnects: 'nurse', needsOwnPerson: false },
});
export const walked = (stay: string): EventBuilder => ({
  stream: `stay/${stay}`,
  type: 'session-recorded',
  payload: {
    session: {
      outcome: 'done',
      occasion: 'planned',
      activities: ['walk'],
      startedAt: new Date().toISOString(),
      events: [],
      firstTimeUp: false,
    },
  },
});
export const held = (stay: string, hold: string, reviewAt: EpochMs): EventBuilder => ({
  stream: `stay/${stay}`,
  type: 'hold-placed',
  payload: {
    hold,
    scope: 'walking',
    reason: 'other',
    owner: 'staff-1',
    reviewAt: new Date(reviewAt).toISOString(),
  },
});

export const newWard = (): WardId => `ward-${randomUUID()}` as WardId;
/** Per bed: its id, its state, and whose stay it shows. */
export const bedsOf = (snapshot: Snapshot): [string, string, string | null][] =>
  snapshot.board.beds.map((row) => [row.bed, row.state, row.stay?.stay ?? null]);
