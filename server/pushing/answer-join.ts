/** What a screen that joins is told: it is current, these are the changes, here is everything, or no. */
import { opaqueId } from '@footboard/shared/kernel/ids';
import type { WardId } from '@footboard/shared/kernel/ids';
import { rowsFor, shownAt } from '@footboard/shared/capabilities/board/rules/for-wall';
import type { BoardLevel } from '@footboard/shared/capabilities/people/policy/document';
import { WIRE_VERSION, joinRequest } from '@footboard/shared/wire/messages';
import type { JoinAnswer, Patch, Snapshot } from '@footboard/shared/wire/messages';
import type { Problem } from '@footboard/shared/wire/http';
import { z } from 'zod';
import type { Boards } from '../projecting/board.ts';

type Refused = Extract<JoinAnswer, { answer: 'refused' }>;
type ReadableBoards = Pick<Boards, 'snapshot' | 'patchesSince' | 'heartbeat'>;

/** More than this and the whole board is the smaller answer. */
const MOST_PATCHES = 64;
const TRIES = 3;

const envelope = z.looseObject({ requestId: opaqueId, wireVersion: z.number() });

function refusal(refused: Refused['refused'], detail: string, remedy: string, requestId?: string): Refused {
  return { answer: 'refused', requestId: requestId ?? null, refused, detail, remedy };
}

function readRequest(message: unknown) {
  const outer = envelope.safeParse(message);
  const requestId = outer.success ? outer.data.requestId : undefined;
  // The version is looked at first: another version's request may have another shape.
  if (outer.success && outer.data.wireVersion < WIRE_VERSION) {
    return refusal('old-page', 'this page is older than the server', 'reload the page', requestId);
  }
  if (outer.success && outer.data.wireVersion > WIRE_VERSION) {
    return refusal(
      'old-server',
      'this page is newer than the server',
      'update or restart the server',
      requestId,
    );
  }
  const request = joinRequest.safeParse(message);
  if (request.success) return request.data;
  const fault = request.error.issues[0];
  const field = fault && fault.path.length > 0 ? `${fault.path.join('.')}: ` : '';
  return refusal(
    'malformed',
    `the request to join cannot be read (${field}${fault?.message ?? 'not an object'})`,
    'reload the page; if it stays, tell who looks after Footboard',
    requestId,
  );
}

/** Linked patches that end where the board stands now; null when only a snapshot will do. */
async function changesSince(
  boards: ReadableBoards,
  ward: WardId,
  feed: number,
): Promise<readonly Patch[] | null> {
  for (let tries = 0; tries < TRIES; tries++) {
    const patches = await boards.patchesSince(ward, feed);
    if (patches === null) return null;
    // While history was read, the board may have moved on.
    if ((patches.at(-1)?.to ?? feed) === boards.snapshot(ward)?.feed) return patches;
  }
  return null;
}

/** How much of a ward a screen may be shown, or why nothing. */
export type Admitted = { readonly level: BoardLevel } | { readonly problem: Problem };

export interface Joining {
  /** Asks the policy, before anything is said of the ward. */
  admit(ward: WardId): Promise<Admitted>;
  /** False when what was admitted no longer holds: then nothing is told. */
  enter(ward: WardId, level: BoardLevel): boolean;
  answer(answer: JoinAnswer): void;
}

export const refusedFor = ({ type }: Problem): 'sign-in-first' | 'not-allowed' =>
  type === '/problems/sign-in-first' ? 'sign-in-first' : 'not-allowed';

export const snapshotFor = (snapshot: Snapshot, level: BoardLevel): Snapshot =>
  level === 'whole' ? snapshot : { ...snapshot, board: rowsFor(snapshot.board, level) };

/**
 * Works out the answer and hands it over in the same turn of the event loop in which `enter` puts
 * the screen into the ward's room: the next patch the room gets is the one after the answer.
 */
export async function answerJoin(boards: ReadableBoards, message: unknown, screen: Joining): Promise<void> {
  const request = readRequest(message);
  if ('answer' in request) return screen.answer(request);
  const { ward, requestId, holds } = request;

  const admitted = await screen.admit(ward);
  if ('problem' in admitted) {
    const { detail, remedy } = admitted.problem;
    return screen.answer(refusal(refusedFor(admitted.problem), detail, remedy, requestId));
  }
  const { level } = admitted;
  const feed = holds === undefined || holds === shownAt(level) ? request.feed : null;
  const patches = feed === null ? null : await changesSince(boards, ward, feed);

  // From here to the answer nothing is awaited.
  const snapshot = boards.snapshot(ward);
  const beat = boards.heartbeat(ward);
  if (!snapshot || !beat) {
    return screen.answer(
      refusal(
        'no-such-ward',
        `there is no ward "${ward}" here`,
        'choose a ward from the start page',
        requestId,
      ),
    );
  }
  if (!screen.enter(ward, level)) {
    const why = 'what this screen may be shown has just changed';
    return screen.answer(refusal('sign-in-first', why, 'sign in, or reload the page', requestId));
  }
  if (patches?.length === 0) screen.answer({ answer: 'current', requestId, beat });
  else if (patches && patches.length <= MOST_PATCHES) {
    screen.answer({
      answer: 'changes',
      requestId,
      patches: patches.map((one) => rowsFor(one, level)),
      beat,
    });
  } else screen.answer({ answer: 'snapshot', requestId, snapshot: snapshotFor(snapshot, level), beat });
}
