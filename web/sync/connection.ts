import { io } from 'socket.io-client';
import {
  SOCKET,
  WIRE_VERSION,
  heartbeat,
  joinAnswer,
  patch,
  putOut,
  type Heartbeat,
  type JoinAnswer,
  type JoinRequest,
  type Painted,
  type Patch,
  type PutOut,
} from '@footboard/shared/wire/messages';
import type { WardId } from '@footboard/shared/kernel/ids';
import { version } from '../package.json';
import { newId } from '../people/device.ts';

const ANSWER_WITHIN_MS = 5_000;

/** What a ward's link reports. Everything has passed its schema; `unreadable` is what did not. */
export interface LinkReports {
  /** The link is up (again): ask to join. */
  up(): void;
  down(): void;
  answer(answer: JoinAnswer): void;
  patch(patch: Patch): void;
  beat(beat: Heartbeat): void;
  /** The server gives this screen no more of the ward. */
  out(out: PutOut): void;
  unreadable(what: string): void;
  /** The server did not answer a join in time. */
  unanswered(): void;
}

export interface Link {
  /** @param holds how much the rows tell that the screen holds; left out for none. */
  join(feed: number | null, holds?: JoinRequest['holds']): void;
  /** The display receipt: this feed number is on the screen now. */
  painted(feed: number): void;
  close(): void;
}

export type OpenLink = (ward: WardId, reports: LinkReports) => Link;

/** One socket to one ward's room. It reconnects by itself; what to ask for then is the store's business. */
export const openLink: OpenLink = (ward, reports) => {
  const socket = io({ transports: ['websocket', 'polling'], reconnectionDelayMax: 4_000 });
  let asked: string | null = null;

  socket.on('connect', () => reports.up());
  socket.on('disconnect', () => {
    asked = null;
    reports.down();
  });
  socket.on(SOCKET.patch, (message: unknown) => {
    const read = patch.safeParse(message);
    if (read.success) reports.patch(read.data);
    else reports.unreadable('patch');
  });
  socket.on(SOCKET.beat, (message: unknown) => {
    const read = heartbeat.safeParse(message);
    // A heartbeat that cannot be read is no heartbeat: the board grows old by itself.
    if (read.success && read.data.ward === ward) reports.beat(read.data);
  });
  socket.on(SOCKET.out, (message: unknown) => {
    const read = putOut.safeParse(message);
    // Put out without a reason that can be read is put out all the same: ask who we are to the server.
    if (!read.success) reports.unreadable('out');
    else if (read.data.ward === null || read.data.ward === ward) reports.out(read.data);
  });

  return {
    join(feed, holds) {
      if (!socket.connected) return;
      const request: JoinRequest = {
        requestId: newId(),
        wireVersion: WIRE_VERSION,
        ward,
        feed,
        ...(holds === undefined ? {} : { holds }),
      };
      asked = request.requestId;
      socket.timeout(ANSWER_WITHIN_MS).emit(SOCKET.join, request, (late: Error | null, message: unknown) => {
        // A newer question has been put since: its answer is the one that counts.
        if (asked !== request.requestId) return;
        asked = null;
        if (late) return reports.unanswered();
        const read = joinAnswer.safeParse(message);
        if (read.success) reports.answer(read.data);
        else reports.unreadable('answer');
      });
    },
    painted(feed) {
      const receipt: Painted = { ward, feed, page: version };
      if (socket.connected) socket.volatile.emit(SOCKET.painted, receipt);
    },
    close() {
      asked = null;
      socket.removeAllListeners();
      socket.disconnect();
    },
  };
};
