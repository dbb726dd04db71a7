import { Inject } from '@nestjs/common';
import type { OnApplicationShutdown } from '@nestjs/common';
import { Ack, ConnectedSocket, MessageBody, SubscribeMessage, WebSocketGateway } from '@nestjs/websockets';
import type { OnGatewayConnection, OnGatewayDisconnect, OnGatewayInit } from '@nestjs/websockets';
import { wardId } from '@footboard/shared/kernel/ids';
import { rowsFor } from '@footboard/shared/capabilities/board/rules/for-wall';
import { BOARD_LEVELS } from '@footboard/shared/capabilities/people/policy/document';
import { BEAT_EVERY_MS, SOCKET, painted } from '@footboard/shared/wire/messages';
import type { JoinAnswer } from '@footboard/shared/wire/messages';
import { packRows } from '@footboard/shared/wire/pack';
import type { Server, Socket } from 'socket.io';
import { Gate, actorMay } from '../access/gate.ts';
import { IDENTIFY } from '../access/identify.ts';
import type { Identify } from '../access/identify.ts';
import { ACCESS_LOG, DEVICES, GATE, SESSIONS } from '../access/ports.ts';
import type { AccessLog, Devices, Sessions } from '../access/ports.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { LIMITS } from '../http/limits.ts';
import type { Limits } from '../http/limits.ts';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { answerJoin } from './answer-join.ts';
import { Screens, roomOf, roomsOf } from './screens.ts';
import type { Admission } from './screens.ts';

/** An answer as it travels: its rows packed. */
function packed(told: JoinAnswer): unknown {
  if (told.answer === 'changes') return { ...told, patches: told.patches.map(packRows) };
  if (told.answer !== 'snapshot') return told;
  return { ...told, snapshot: { ...told.snapshot, board: packRows(told.snapshot.board) } };
}

const nothing = () => {};

/**
 * The screens' side of the board: one room a ward and level of what may be shown. Patches go out as
 * they commit, made once a level; a beat every two seconds whatever happens to the database: its
 * instants tell the screen how old the board is.
 */
@WebSocketGateway({
  transports: ['websocket', 'polling'],
  maxHttpBufferSize: 64 * 1024,
  perMessageDeflate: false,
  serveClient: false,
})
export class WardGateway
  implements
    OnGatewayInit<Server>,
    OnGatewayConnection<Socket>,
    OnGatewayDisconnect<Socket>,
    OnApplicationShutdown
{
  readonly #boards: Boards;
  readonly #devices: Devices;
  readonly #screens: Screens;
  #stopPatches: () => void = nothing;
  #beating: NodeJS.Timeout | undefined;

  constructor(
    @Inject(BOARDS) boards: Boards,
    @Inject(IDENTIFY) identify: Identify,
    @Inject(GATE) gate: Gate,
    @Inject(STREAMS) streams: Streams,
    @Inject(DEVICES) devices: Devices,
    @Inject(SESSIONS) sessions: Sessions,
    @Inject(LIMITS) limits: Limits,
    @Inject(ACCESS_LOG) accessLog: AccessLog,
  ) {
    this.#boards = boards;
    this.#devices = devices;
    this.#screens = new Screens({ identify, gate, streams, devices, sessions, limits, accessLog });
  }

  afterInit(server: Server): void {
    this.#stopPatches = this.#boards.onPatch((patch) => {
      for (const level of BOARD_LEVELS) {
        const room = roomOf(patch.ward, level);
        if (!server.sockets.adapter.rooms.has(room)) continue;
        server.to(room).emit(SOCKET.patch, packRows(rowsFor(patch, level)));
      }
    });
    this.#beating = setInterval(() => {
      for (const ward of this.#boards.wards()) {
        server.to(roomsOf(ward)).emit(SOCKET.beat, this.#boards.heartbeat(ward));
      }
    }, BEAT_EVERY_MS);
  }

  onApplicationShutdown(): void {
    this.#stopPatches();
    this.#screens.stop();
    clearInterval(this.#beating);
  }

  handleConnection(screen: Socket): Promise<void> {
    return this.#screens.arrived(screen);
  }

  handleDisconnect(screen: Socket): void {
    this.#screens.left(screen);
  }

  /** Without an acknowledgement to answer to there is nobody to tell: the message is dropped. */
  @SubscribeMessage(SOCKET.join)
  async join(
    @MessageBody() message: unknown,
    @ConnectedSocket() screen: Socket,
    @Ack() answer: ((answer: unknown) => void) | undefined,
  ): Promise<void> {
    if (typeof answer !== 'function' || !this.#screens.mayAsk(screen, 'join')) return;
    const asked = wardId.safeParse((message as { ward?: unknown } | null | undefined)?.ward);
    // A screen that asks again gets nothing out of order while its answer is worked out.
    if (asked.success) this.#screens.leave(screen, asked.data);
    let admission: Admission | null = null;
    await answerJoin(this.#boards, message, {
      admit: async (ward) => {
        const admitted = await this.#screens.admit(screen, ward);
        if (!('problem' in admitted)) admission = admitted;
        return admitted;
      },
      enter: (ward) => admission !== null && this.#screens.enter(screen, ward, admission),
      answer: (told) => answer(packed(told)),
    });
  }

  @SubscribeMessage(SOCKET.leave)
  leave(@MessageBody() message: unknown, @ConnectedSocket() screen: Socket): void {
    const ward = wardId.safeParse(message);
    if (ward.success && this.#screens.mayAsk(screen, 'other')) this.#screens.leave(screen, ward.data);
  }

  /** The display receipt. Of paired devices only: where a person looks is nobody's business. */
  @SubscribeMessage(SOCKET.painted)
  painted(@MessageBody() message: unknown, @ConnectedSocket() screen: Socket): void {
    const said = painted.safeParse(message);
    if (!said.success || !this.#screens.mayAsk(screen, 'other')) return;
    const { ward, feed, page } = said.data;
    const shown = this.#screens.showing(screen, ward);
    if (!shown?.device || !actorMay(shown.actor, 'say-painted')) return;
    this.#devices.saw(shown.device, { feed, page });
  }
}
