import { z } from 'zod';
import type { EpochMs } from './times.ts';
import type { EventId, StayId, WardId } from './ids.ts';
import type { Author, Source } from './author.ts';
import type { Precision } from './times.ts';

export type StreamKind = 'ward' | 'bed' | 'stay' | 'item';

/** Names a reader needs to put an event into words. Each falls back to a plain noun, never throws. */
export interface Names {
  bed(id: string): string;
  staff(id: string): string;
  /** A free text or name by reference; "(text removed)" once its key is destroyed. */
  text(ref: { ref: string } | undefined): string;
  /** An instant on the ward's clock, with the offset when the hour is repeated. */
  time(at: string | EpochMs): string;
}

/**
 * One kind of fact, defined in this one place: its name on the wire and in the log, the stream it
 * belongs to, its current schema and version, how older versions become the current one, how it
 * reads in plain words, and how it ranks among facts of the same instant.
 */
export interface EventType<Name extends string = string, Schema extends z.ZodType = z.ZodType> {
  readonly name: Name;
  readonly stream: StreamKind;
  readonly version: number;
  readonly schema: Schema;
  /** upcasts[n] turns a payload of version n into one of version n + 1. Pure. */
  readonly upcasts: Readonly<Record<number, (old: never) => unknown>>;
  /** Permission is folded before neutral, restriction last: at one instant the safer stands. */
  readonly rank: (payload: z.infer<Schema>) => -1 | 0 | 1;
  readonly words: (payload: z.infer<Schema>, names: Names) => string;
}

export type PayloadOf<T> = T extends EventType<string, infer S> ? z.infer<S> : never;

export function eventType<const Name extends string, Schema extends z.ZodType>(
  name: Name,
  definition: {
    stream: StreamKind;
    version: number;
    schema: Schema;
    upcasts?: Record<number, (old: never) => unknown>;
    rank?: -1 | 0 | 1 | ((payload: z.infer<Schema>) => -1 | 0 | 1);
    words: (payload: z.infer<Schema>, names: Names) => string;
  },
): EventType<Name, Schema> {
  const { rank = 0, upcasts = {} } = definition;
  for (let v = 1; v < definition.version; v++) {
    if (!upcasts[v]) throw new Error(`event type ${name} has no upcast from version ${v}`);
  }
  return {
    name,
    stream: definition.stream,
    version: definition.version,
    schema: definition.schema,
    upcasts,
    rank: typeof rank === 'function' ? rank : () => rank,
    words: definition.words,
  };
}

/** Payload of any released version, raised to the current one. Throws on a version from the future. */
export function upcast(type: EventType, version: number, payload: unknown): unknown {
  if (version > type.version) {
    throw new Error(
      `event ${type.name} has version ${version}, this program knows up to ${type.version}: update Footboard`,
    );
  }
  let current = payload;
  for (let v = version; v < type.version; v++) current = type.upcasts[v]!(current as never);
  return current;
}

/** Streams: `ward/<ward>`, `bed/<bed>`, `stay/<stay>`, `item/<item>`. Each belongs to one ward for life. */
export type StreamKey = `${StreamKind}/${string}`;
export const streamKey = (kind: StreamKind, id: string): StreamKey => `${kind}/${id}`;
export const stayOf = (stream: StreamKey): StayId | null =>
  stream.startsWith('stay/') ? (stream.slice('stay/'.length) as StayId) : null;

/** An event as it stands in the log, payload raised to the current version. */
export interface LoggedEvent<Payload = unknown> {
  readonly ward: WardId;
  /** Contiguous, commit-ordered, from 1, per ward. */
  readonly position: number;
  readonly stream: StreamKey;
  /** From 1 within the stream. */
  readonly version: number;
  readonly id: EventId;
  readonly type: string;
  readonly payload: Payload;
  readonly occurred: EpochMs;
  readonly precision: Precision;
  readonly entered: EpochMs;
  readonly enteredOffsetMinutes: number;
  readonly recorded: EpochMs;
  readonly author: Author;
  readonly source: Source;
}

/**
 * The same event as if somebody else had said it. Field by field: an event of a page reads its payload
 * when asked, and a copy by `{ ...event }` would not have it.
 */
export const saidBy = (event: LoggedEvent, author: Author): LoggedEvent => ({
  ward: event.ward,
  position: event.position,
  stream: event.stream,
  version: event.version,
  id: event.id,
  type: event.type,
  payload: event.payload,
  occurred: event.occurred,
  precision: event.precision,
  entered: event.entered,
  enteredOffsetMinutes: event.enteredOffsetMinutes,
  recorded: event.recorded,
  author,
  source: event.source,
});

/** An event that a decision wants appended. Occurred defaults to the command's. */
export interface NewEvent<Payload = unknown> {
  readonly ward?: WardId;
  readonly stream: StreamKey;
  readonly type: string;
  readonly payload: Payload;
  readonly occurred?: EpochMs;
}
export const newEvent = <T extends EventType>(
  type: T,
  stream: StreamKey,
  payload: PayloadOf<T>,
  extra: { ward?: WardId; occurred?: EpochMs } = {},
): NewEvent<PayloadOf<T>> => ({ stream, type: type.name, payload, ...extra });
