import { Inject } from '@nestjs/common';
import type { OnApplicationShutdown } from '@nestjs/common';
import { Ack, ConnectedSocket, MessageBody, SubscribeMessage, WebSocketGateway } from '@nestjs/websockets';
import type { OnGatewayInit } from '@nestjs/websockets';
import { wardId } from '@footboard/shared/kernel/ids';
import { BEAT_EVERY_MS, SOCKET } from '@footboard/shared/wire/messages';
import type { JoinAnswer } from '@footboard/shared/wire/messages';
import { packRows } from '@footboard/shared/wire/pack';
import type { Server, Socket } from 'socket.io';
import { BOARDS } from '../projecting/board.ts';
import type { Boards } from '../projecting/board.ts';
import { answerJoin } from './answer-join.ts';

/** An answer as it travels: its rows packed. */
function packed(told: JoinAnswer): unknown {
  if (told.answer === 'changes') return { ...told, patches: told.patches.map(packRows) };
  if (told.answer !== 'snapshot') return told;
  return { ...told, snapshot: { ...told.snapshot, board: packRows(told.snapshot.board) } };
}

const nothing = () => {};
const roomOf = (ward: string) => `ward/${ward}`;

/**
 * The screens' side of the board: one room a ward. Patches go out as they commit, a beat every two
 * seconds whatever happens to the database: its instants tell the screen how old the board is.
 */
@WebSocketGateway({
  transports: ['websocket', 'polling'],
  maxHttpBufferSize: 64 * 1024,
  perMessageDeflate: false,
  serveClient: false,
})
export class WardGateway implements OnGatewayInit<Server>, OnApplicationShutdown {
  readonly #boards: Boards;
  #stopPatches: () => void = nothing;
  #beating: NodeJS.Timeout | undefined;

  constructor(@Inject(BOARDS) boards: Boards) {
    this.#boards = boards;
  }

  afterInit(server: Server): void {
    this.#stopPatches = this.#boards.onPatch((patch) => {
      server.to(roomOf(patch.ward)).emit(SOCKET.patch, packRows(patch));
    });
    this.#beating = setInterval(() => {
      for (const ward of this.#boards.wards()) {
        server.to(roomOf(ward)).emit(SOCKET.beat, this.#boards.heartbeat(ward));
      }
    }, BEAT_EVERY_MS);
  }

  onApplicationShutdown(): void {
    this.#stopPatches();
    clearInterval(this.#beating);
  }

  /** Without an acknowledgement to answer to there is nobody to tell: the message is dropped. */
  @SubscribeMessage(SOCKET.join)
  async join(
    @MessageBody() message: unknown,
    @ConnectedSocket() screen: Socket,
    @Ack() answer: ((answer: unknown) => void) | undefined,
  ): Promise<void> {
    if (typeof answer !== 'function') return;
    const asked = wardId.safeParse((message as { ward?: unknown } | null | undefined)?.ward);
    // A screen that asks again gets nothing out of order while its answer is worked out.
    if (asked.success) void screen.leave(roomOf(asked.data));
    await answerJoin(this.#boards, message, {
      enter: (ward) => void screen.join(roomOf(ward)),
      answer: (told) => answer(packed(told)),
    });
  }

  @SubscribeMessage(SOCKET.leave)
  leave(@MessageBody() message: unknown, @ConnectedSocket() screen: Socket): void {
    const ward = wardId.safeParse(message);
    if (ward.success) void screen.leave(roomOf(ward.data));
  }
}
