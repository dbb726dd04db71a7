/**
 * What a room contributes for one command: which streams it reads, and a pure decision. No clock,
 * no database, no random: everything it may need comes in through the context.
 */
import type { CommandType, DataOf, Refusal } from '@footboard/shared/kernel/command-type';
import type { NewEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { Author, Role } from '@footboard/shared/kernel/author';
import type { BedId, StayId, TextRef, WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs, Precision } from '@footboard/shared/kernel/times';
import type { RefusalCode } from '@footboard/shared/capabilities/refusals';
import type { StayRecord } from '@footboard/shared/capabilities/corrections/facts';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import type { StreamSlice } from '../log/log.ts';

export interface DecideContext {
  readonly wardId: WardId;
  /** Null until the ward is set up. */
  readonly ward: WardState | null;
  readonly calendar: WardCalendar | null;
  /** Every stream the decider named, with its version (0 and no events if it does not exist). `ward` is this one unless said. */
  slice(stream: StreamKey, ward?: WardId): StreamSlice;
  stay(id: StayId): StayRecord;
  /** Who is in the bed by its guard stream. Two wards may use one bed id, so a transfer names the ward. */
  occupant(bed: BedId, ward?: WardId): StayId | null;
  /** For a transfer: the other ward's state, read like this one's. */
  otherWard(id: WardId): WardState | null;
  readonly now: EpochMs;
  readonly occurred: EpochMs;
  readonly precision: Precision;
  readonly fromOutbox: boolean;
  /** As the entry will name them: for an author who could not be checked, with an aide's role. */
  readonly author: Author;
  /** The role whose rights apply: the claimed one's, where the policy lets the command be unconfirmed. */
  readonly entitled: Role;
  newId(): string;
  /** Puts a name or free text aside, encrypted under the subject's key; the event keeps the reference. */
  keep(subject: `stay/${string}` | `staff/${string}`, text: string): TextRef;
}

export type Decision = { readonly accept: readonly NewEvent[] } | Refusal;

export interface StreamNeed {
  readonly ward: WardId;
  readonly stream: StreamKey;
}

/** What has been read so far, for a decider that knows only by it what else to read. */
export interface ReadSoFar {
  slice(ward: WardId, stream: StreamKey): StreamSlice;
  ward(id: WardId): { readonly state: WardState | null };
}

export interface Decider<C extends CommandType = CommandType> {
  readonly command: C;
  /** Streams this decision reads; the first is the one a `what I saw` version speaks of. The ward's own stream is always read. */
  reads(data: DataOf<C>, ward: WardId): readonly StreamNeed[];
  /** Streams to read as well, asked one after the other: each sees what the ones before have read. */
  readonly further?: readonly ((data: DataOf<C>, ward: WardId, read: ReadSoFar) => readonly StreamNeed[])[];
  /** Nothing it read may have gone on when it is stored, not only what it writes to: else it is decided again. */
  readonly restsOnAll?: true;
  decide(data: DataOf<C>, context: DecideContext): Decision;
}

export const decider = <C extends CommandType>(d: Decider<C>): Decider => d as unknown as Decider;
export const accept = (...events: readonly NewEvent[]): Decision => ({ accept: events });
/** A refusal from the closed lists in shared/capabilities/<room>/refusals.ts. `field` is a JSON pointer into data. */
export const refuse = (refused: RefusalCode, detail: string, remedy: string, field?: string): Refusal => ({
  refused,
  detail,
  remedy,
  ...(field === undefined ? {} : { field }),
});
