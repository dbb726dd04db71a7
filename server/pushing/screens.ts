/**
 * Who each socket is, what it may be shown, and how it is put out again. A socket proves itself with
 * the cookies of its handshake; the policy is asked at every join, every few seconds after, and at
 * once when a session ends or a device's key is taken back.
 */
import type { DeviceId, WardId } from '@footboard/shared/kernel/ids';
import { BOARD_LEVELS } from '@footboard/shared/capabilities/people/policy/document';
import type { Actor, BoardLevel } from '@footboard/shared/capabilities/people/policy/document';
import { SOCKET } from '@footboard/shared/wire/messages';
import type { PutOut } from '@footboard/shared/wire/messages';
import type { Socket } from 'socket.io';
import { lookerOf } from '../access/access-log.ts';
import type { Gate, Passed } from '../access/gate.ts';
import type { Identify } from '../access/identify.ts';
import type { AccessLog, Devices, Sessions } from '../access/ports.ts';
import type { Streams } from '../commanding/streams.ts';
import type { Limits, SocketLimits } from '../http/limits.ts';
import { refusedFor } from './answer-join.ts';

/** A role that was taken away, or an opening that is over, shows in this time at the latest. */
export const LOOK_AGAIN_EVERY_MS = 10_000;

export const roomOf = (ward: string, level: BoardLevel): string => `ward/${ward}/${level}`;
export const roomsOf = (ward: string): string[] => BOARD_LEVELS.map((level) => roomOf(ward, level));

export interface Admission {
  readonly level: BoardLevel;
  readonly actor: Actor;
  /** Of the screen when it was asked: what was admitted before it was put out no longer holds. */
  readonly turn: number;
}

interface Screen {
  readonly socket: Socket;
  readonly limits: SocketLimits;
  readonly wards: Map<WardId, Admission>;
  device: DeviceId | null;
  session: string | null;
  /** Sign-in is off: nothing is ever taken back. */
  open: boolean;
  turn: number;
  gone: () => void;
}

export interface ScreensPorts {
  readonly identify: Identify;
  readonly gate: Gate;
  readonly streams: Pick<Streams, 'ward'>;
  readonly devices: Pick<Devices, 'onRevoke' | 'connected'>;
  readonly sessions: Pick<Sessions, 'onEnd'>;
  readonly limits: Pick<Limits, 'socket'>;
  readonly accessLog: Pick<AccessLog, 'note'>;
}

type WardStates = (ward: WardId) => ReturnType<Streams['ward']>;

export class Screens {
  readonly #screens = new Map<Socket, Screen>();
  readonly #stops: (() => void)[];
  #looking: Promise<void> | null = null;

  constructor(private readonly ports: ScreensPorts) {
    const again = setInterval(() => void this.lookAgain(), LOOK_AGAIN_EVERY_MS).unref();
    this.#stops = [
      () => clearInterval(again),
      ports.devices.onRevoke((device) => this.#revoked(device)),
      ports.sessions.onEnd((sessions) => this.#ended(new Set(sessions))),
    ];
  }

  stop(): void {
    for (const stop of this.#stops.splice(0)) stop();
  }

  async arrived(socket: Socket): Promise<void> {
    const screen: Screen = {
      socket,
      limits: this.ports.limits.socket(),
      wards: new Map(),
      device: null,
      session: null,
      open: false,
      turn: 0,
      gone: () => {},
    };
    this.#screens.set(socket, screen);
    await this.#who(screen).catch(() => {
      // The database is away: asked again when it wants to join.
    });
  }

  left(socket: Socket): void {
    this.#screens.get(socket)?.gone();
    this.#screens.delete(socket);
  }

  /** Counts one message. False: drop it. A socket that goes on all the same is closed. */
  mayAsk(socket: Socket, what: 'join' | 'other'): boolean {
    const said = this.#screens.get(socket)?.limits.take(what);
    if (said === 'out') socket.disconnect(true);
    return said === 'yes';
  }

  async admit(socket: Socket, ward: WardId): Promise<Admission | Extract<Passed, { problem: unknown }>> {
    const screen = this.#screens.get(socket);
    const turn = screen?.turn ?? -1;
    const passed = await this.#pass(screen, ward, (of) => this.ports.streams.ward(of));
    return 'problem' in passed ? passed : { level: passed.pass.level, actor: passed.pass.actor, turn };
  }

  /** Into the ward's room of that level. False when it was put out since it was admitted. */
  enter(socket: Socket, ward: WardId, admission: Admission): boolean {
    const screen = this.#screens.get(socket);
    if (!screen || screen.turn !== admission.turn) return false;
    screen.wards.set(ward, admission);
    void socket.join(roomOf(ward, admission.level));
    return true;
  }

  leave(socket: Socket, ward: WardId): void {
    for (const room of roomsOf(ward)) void socket.leave(room);
    this.#screens.get(socket)?.wards.delete(ward);
  }

  /** The paired device that this socket is, while it shows that ward. */
  showing(socket: Socket, ward: WardId): { readonly device: DeviceId | null; readonly actor: Actor } | null {
    const screen = this.#screens.get(socket);
    const admission = screen?.wards.get(ward);
    return screen && admission ? { device: screen.device, actor: admission.actor } : null;
  }

  /** Asks the policy again for every screen; one look at a time. */
  lookAgain(): Promise<void> {
    this.#looking ??= this.#look().finally(() => (this.#looking = null));
    return this.#looking;
  }

  async #look(): Promise<void> {
    const states = new Map<WardId, ReturnType<Streams['ward']>>();
    const stateOf: WardStates = (ward) => {
      const state = states.get(ward) ?? this.ports.streams.ward(ward);
      states.set(ward, state);
      return state;
    };
    for (const screen of this.#screens.values()) {
      if (screen.open) continue;
      for (const [ward, was] of screen.wards) await this.#recheck(screen, ward, was, stateOf, false);
    }
  }

  async #recheck(
    screen: Screen,
    ward: WardId,
    was: Admission,
    stateOf: WardStates,
    isOut: boolean,
  ): Promise<void> {
    const passed = await this.#pass(screen, ward, stateOf).catch(() => null);
    // The database is away: the screen says so itself, and nothing new goes out meanwhile.
    if (!passed || (!isOut && screen.wards.get(ward) !== was)) return;
    if ('problem' in passed) {
      const { detail, remedy } = passed.problem;
      this.#putOut(screen, { ward, why: refusedFor(passed.problem), detail, remedy });
    } else if (isOut || passed.pass.level !== was.level) {
      this.#putOut(screen, {
        ward,
        why: 'join-again',
        detail: 'What this screen may be shown has changed.',
        remedy: 'It asks again by itself.',
      });
    }
  }

  async #who(screen: Screen) {
    const { headers, address } = screen.socket.handshake;
    const identity = await this.ports.identify.of(headers, address, 'quietly');
    const device = identity.device?.device ?? null;
    screen.session = identity.person?.session ?? null;
    screen.open = identity.access === 'open';
    if (device !== screen.device) {
      screen.gone();
      screen.device = device;
      // It may have left while the question was on its way.
      const still = this.#screens.get(screen.socket) === screen;
      screen.gone = device && still ? this.ports.devices.connected(device) : () => {};
    }
    return identity;
  }

  async #pass(screen: Screen | undefined, ward: WardId, stateOf: WardStates): Promise<Passed> {
    if (!screen) throw new Error('a socket that has left asks to join');
    const identity = await this.#who(screen);
    const { state } = await stateOf(ward);
    const passed = await this.ports.gate.on(identity, 'join-ward', ward, state);
    // Asked again while the screen stays: a board looked at all day makes a line an hour.
    if ('pass' in passed && passed.pass.level === 'whole') {
      this.ports.accessLog.note({ ward, what: 'read-board-whole', ...lookerOf(identity) });
    }
    return passed;
  }

  /** From this moment no patch goes to it; then it is told why. */
  #putOut(screen: Screen, out: PutOut): void {
    screen.turn++;
    for (const ward of out.ward === null ? [...screen.wards.keys()] : [out.ward]) {
      this.leave(screen.socket, ward);
    }
    screen.socket.emit(SOCKET.out, out);
  }

  #revoked(device: DeviceId): void {
    for (const screen of this.#screens.values()) {
      if (screen.device !== device) continue;
      this.#putOut(screen, {
        ward: null,
        why: 'device-revoked',
        detail: 'This device was taken off the ward.',
        remedy: 'Pair it again, or sign in with name and password.',
      });
      screen.socket.disconnect(true);
    }
  }

  /** Out of every room at once; what the device may be shown by itself, it may ask for again. */
  #ended(sessions: ReadonlySet<string>): void {
    for (const screen of this.#screens.values()) {
      if (screen.session === null || !sessions.has(screen.session)) continue;
      const wards = [...screen.wards];
      screen.turn++;
      for (const [ward] of wards) this.leave(screen.socket, ward);
      for (const [ward, was] of wards) {
        void this.#recheck(screen, ward, was, (of) => this.ports.streams.ward(of), true);
      }
    }
  }
}
