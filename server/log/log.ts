/** The port of the event log. Promises LOG-1 .. are listed in docs/promises.md and tested on PGlite and PostgreSQL. */
import type { Author, Source } from '@footboard/shared/kernel/author';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { CommandId, EventId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs, Precision } from '@footboard/shared/kernel/times';

/** An event ready to append: its payload already checked; the log writes it as canonical JSON (RFC 8785). */
export interface EventToAppend {
  readonly ward: WardId;
  readonly stream: StreamKey;
  /** Version this event takes in its stream (expected version + 1 for the first). The unique key judges it. */
  readonly version: number;
  readonly id: EventId;
  readonly type: string;
  readonly schemaVersion: number;
  readonly payload: unknown;
  readonly occurred: EpochMs;
  readonly precision: Precision;
  readonly entered: EpochMs;
  readonly enteredOffsetMinutes: number;
  readonly author: Author;
  readonly source: Source;
}

/** Personal data to keep encrypted beside the events, in the same transaction. */
export interface TextToKeep {
  readonly ref: string;
  /** Whose key it is under: `stay/<id>` or `staff/<id>`. */
  readonly subject: `stay/${string}` | `staff/${string}`;
  readonly text: string;
}

/** What a command came to; stored with it, and given again for a repeat. */
export interface CommandOutcome {
  readonly commandId: CommandId;
  /** The ward whose log keeps this outcome. */
  readonly ward: WardId;
  readonly name: string;
  /** SHA-256, hex, of the canonical validated body. */
  readonly bodyHash: string;
  readonly author: Author;
  readonly outcome: 'accepted' | 'refused';
  /** JSON answered to the caller. */
  readonly result: unknown;
  /** Given when read back: position of the command's last event in this ward's log, 0 for none. */
  readonly position?: number;
}

export interface AppendRequest {
  readonly command: CommandOutcome;
  /** May name several streams and several wards; empty for a stored refusal. */
  readonly events: readonly EventToAppend[];
  readonly texts?: readonly TextToKeep[];
  /** Streams of the command's ward, read and perhaps not written, that must still be at these versions. */
  readonly restsOn?: readonly { readonly stream: StreamKey; readonly version: number }[];
}

export interface Appended {
  /** One per event, in order. */
  readonly events: readonly { ward: WardId; position: number; recorded: EpochMs }[];
}

/** Someone else took that version of that stream first. Read again, decide again. */
export class VersionConflict extends Error {
  constructor(
    readonly ward: WardId,
    detail: string,
  ) {
    super(`another entry came first: ${detail}`);
    this.name = 'VersionConflict';
  }
}
/** A stream that the decision rests on has gone on, though it writes to others. Read again, decide again. */
export class RestsOnPast extends VersionConflict {
  constructor(ward: WardId) {
    super(ward, 'a stream that the decision rests on');
    this.name = 'RestsOnPast';
  }
}
/** This command id already has an outcome (perhaps stored a moment ago by a twin). */
export class CommandSeen extends Error {
  constructor(readonly stored: CommandOutcome) {
    super(`command ${stored.commandId} already has an outcome`);
    this.name = 'CommandSeen';
  }
}
/** The connection broke before the commit was answered. Ask again with the same command id. */
export class OutcomeUnknown extends Error {
  constructor(cause: unknown) {
    super('the connection broke before the database answered', { cause });
    this.name = 'OutcomeUnknown';
  }
}
/** The database cannot be reached; nothing was written. */
export class LogUnavailable extends Error {
  constructor(cause: unknown) {
    super('the database cannot be reached', { cause });
    this.name = 'LogUnavailable';
  }
}

export interface StreamSlice {
  readonly stream: StreamKey;
  readonly version: number;
  readonly events: readonly LoggedEvent[];
}

export interface VerifyReport {
  readonly ward: WardId;
  readonly events: number;
  readonly head: { position: number; chain: string };
  /** Empty when everything holds. Each names the position and what is wrong, in plain words. */
  readonly faults: readonly { position: number; fault: string }[];
}

/** An event as it was hashed: `payload` and `source` are the stored canonical texts, not parsed. */
export interface ChainedEvent {
  readonly position: number;
  readonly ward: WardId;
  readonly stream: StreamKey;
  readonly version: number;
  readonly id: EventId;
  readonly type: string;
  readonly schemaVersion: number;
  readonly payload: string;
  /** SHA-256 of the payload's UTF-8 bytes, hex. */
  readonly payloadHash: string;
  readonly occurred: EpochMs;
  readonly precision: Precision;
  readonly entered: EpochMs;
  readonly enteredOffsetMinutes: number;
  readonly recorded: EpochMs;
  readonly author: Author;
  readonly source: string;
  readonly commandId: CommandId;
  /** Chain hash of the event in front of it in the ward's log, and its own; hex. */
  readonly previous: string;
  readonly chain: string;
}

/** Which mark the source carries, and the type of the event that takes it off by naming the entry as its target. */
export interface Unsigned {
  readonly mark: 'unconfirmed' | 'cosign';
  readonly signature: string;
  /** Only entries of this author, or only of others. */
  readonly by?: StaffId;
  readonly notBy?: StaffId;
  readonly limit: number;
}

export interface Log {
  /** @throws VersionConflict, CommandSeen, OutcomeUnknown, LogUnavailable */
  append(request: AppendRequest): Promise<Appended>;
  outcomeOf(ward: WardId, commandId: CommandId): Promise<CommandOutcome | null>;
  /** Events of one stream of a ward with version > after and position <= upTo. */
  readStream(ward: WardId, stream: StreamKey, after?: number, upTo?: number): Promise<StreamSlice>;
  /**
   * Several streams in one round trip. `after` names versions the caller already holds: only newer
   * events of those streams come back, and the slice's version is still the stream's own. As with
   * `readPage`, a payload is not the event's own property.
   */
  readStreams(
    ward: WardId,
    streams: readonly StreamKey[],
    after?: ReadonlyMap<StreamKey, number>,
  ): Promise<ReadonlyMap<StreamKey, StreamSlice>>;
  /** Events of a ward in position order, position > after, at most `limit`. */
  readWard(ward: WardId, after: number, limit: number, upTo?: number): Promise<readonly LoggedEvent[]>;
  /**
   * The same events for a fold, cheaper: a payload is parsed when it is looked at, and is not the
   * event's own property, so that a copy (`{ ...event }`) would not have it.
   */
  readPage(ward: WardId, after: number, limit: number, upTo?: number): Promise<readonly LoggedEvent[]>;
  /** Entries of stays whose source carries a mark and that nobody has signed, the newest first. */
  readUnsigned(
    ward: WardId,
    asked: Unsigned,
  ): Promise<readonly { readonly stream: StreamKey; readonly id: EventId }[]>;
  /** Position of the last event of a ward; 0 for none. */
  head(ward: WardId): Promise<number>;
  heads(): Promise<ReadonlyMap<WardId, number>>;
  /** Rings when a ward's log has grown: in-process at once, by NOTIFY from other processes. Only a doorbell. */
  onGrowth(listener: (ward: WardId) => void): () => void;
  /** Checks chain, contiguity, payload hashes, head, and an earlier exported anchor if given. */
  verify(ward: WardId, anchor?: { position: number; chain: string }): Promise<VerifyReport>;
  anchor(ward: WardId): Promise<{ position: number; chain: string }>;
  /** Events of one stream as their links in the chain were made, in order: for an export to be checked by. */
  links(ward: WardId, stream: StreamKey): Promise<readonly ChainedEvent[]>;
}
export const LOG = Symbol('Log');
