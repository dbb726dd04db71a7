/**
 * Every message between a screen and the server, in this one file. A server that speaks another
 * WIRE_VERSION makes the screen say "this page is old: reload".
 */
import { z } from 'zod';
import { wardId, bedId, opaqueId } from '../kernel/ids.ts';
import { bedView, boardView } from '../capabilities/board/view.ts';
import { unpackBed } from './pack.ts';

export const WIRE_VERSION = 4;

/** Screen to server, event `join`, with an acknowledgement of type JoinAnswer. */
export const joinRequest = z.strictObject({
  requestId: opaqueId,
  wireVersion: z.number().int(),
  ward: wardId,
  /** The feed number this screen has painted, or null for "nothing yet". */
  feed: z.number().int().min(0).nullable(),
  /**
   * How much the rows tell that it holds (`shown` of their stays); left out when no row tells anything.
   * Where another level is due now, it gets everything anew: nothing of before may stay.
   */
  holds: z.enum(['whole', 'bed-only', 'visitors']).optional(),
});
export type JoinRequest = z.infer<typeof joinRequest>;

/** A row, packed on its way (pack.ts) and whole again behind this schema. */
const travellingBed = z.unknown().transform(unpackBed).pipe(bedView);

/**
 * One linked change. A screen applies it only when it stands at `from`; it ignores `to` at or
 * below where it stands; anything else is a gap and asks again with `join`.
 */
export const patch = z.strictObject({
  ward: wardId,
  from: z.number().int(),
  to: z.number().int(),
  /** Log position the views have folded, and the instant they were evaluated at. */
  p: z.number().int(),
  t: z.number().int(),
  /** Present when the ward's own facts changed (name, clock, night). */
  board: boardView.omit({ beds: true }).optional(),
  /** Rows that changed, whole. */
  beds: z.array(travellingBed),
  /** The order of all beds, when beds were added, closed or reordered. */
  order: z.array(bedId).optional(),
});
export type Patch = z.infer<typeof patch>;

export const snapshot = z.strictObject({
  ward: wardId,
  feed: z.number().int(),
  p: z.number().int(),
  t: z.number().int(),
  board: boardView.extend({ beds: z.array(travellingBed) }),
});
export type Snapshot = z.infer<typeof snapshot>;

/**
 * Sent to each ward's room every 2 s, and in every join answer. All instants are the server's
 * clock; `rate` is how fast that clock runs (1, except in the demo).
 */
export const heartbeat = z.strictObject({
  ward: wardId,
  clock: z.number(),
  rate: z.number().positive(),
  /** Head of the ward's log as last read. */
  head: z.number().int(),
  /** Position the board has folded. */
  projected: z.number().int(),
  feed: z.number().int(),
  /** Last successful database read, and last successful evaluation of the board. */
  readAt: z.number(),
  evaluatedAt: z.number(),
  /** Since when the projection has trailed the head; null when it has caught up. */
  trailingSince: z.number().nullable(),
  demo: z.boolean(),
});
export type Heartbeat = z.infer<typeof heartbeat>;

export const joinAnswer = z.discriminatedUnion('answer', [
  z.strictObject({ answer: z.literal('current'), requestId: opaqueId, beat: heartbeat }),
  z.strictObject({
    answer: z.literal('changes'),
    requestId: opaqueId,
    patches: z.array(patch),
    beat: heartbeat,
  }),
  z.strictObject({
    answer: z.literal('snapshot'),
    requestId: opaqueId,
    snapshot,
    beat: heartbeat,
  }),
  z.strictObject({
    answer: z.literal('refused'),
    requestId: opaqueId.nullable(),
    refused: z.enum([
      'old-page',
      'old-server',
      'no-such-ward',
      'malformed',
      /** Nobody is signed in here, and this screen is not paired with the ward. */
      'sign-in-first',
      /** Signed in or paired, but not for this ward. */
      'not-allowed',
    ]),
    detail: z.string(),
    remedy: z.string(),
  }),
]);
export type JoinAnswer = z.infer<typeof joinAnswer>;

/**
 * Server to screen, event `out`: this screen gets no more of the ward (of every ward: null). The
 * socket may be closed after it: a screen that opens a new one is asked anew who it is.
 */
export const putOut = z.strictObject({
  ward: wardId.nullable(),
  why: z.enum([
    /** The sign-in ended or ran out. */
    'sign-in-first',
    'not-allowed',
    /** Somebody took this device's key back: it has to be paired again. */
    'device-revoked',
    /** It may be shown more or less than before: join again with feed null. */
    'join-again',
  ]),
  detail: z.string(),
  remedy: z.string(),
});
export type PutOut = z.infer<typeof putOut>;

/**
 * Screen to server, event `painted`, no answer: what this screen shows now (the display receipt).
 * Kept for devices only; say it after a paint, not more often than every few seconds.
 */
export const painted = z.strictObject({
  ward: wardId,
  feed: z.number().int().min(0),
  /** Version of the screen's program. */
  page: z.string().regex(/^[A-Za-z0-9.+_-]{1,40}$/, 'a version: letters, digits, ".", "+", "_" or "-"'),
});
export type Painted = z.infer<typeof painted>;

/** Names of the socket.io events. */
export const SOCKET = {
  join: 'join',
  leave: 'leave',
  painted: 'painted',
  patch: 'patch',
  beat: 'beat',
  out: 'out',
} as const;

export const BEAT_EVERY_MS = 2_000;
/** Design rule 5: beyond this the whole board reads LAST KNOWN. */
export const LAST_KNOWN_AFTER_MS = 10_000;
