import type { Author, Source } from '../../kernel/author.ts';
import type { LoggedEvent } from '../../kernel/event-type.ts';
import type { EventId, StayId } from '../../kernel/ids.ts';
import type { EpochMs, Precision } from '../../kernel/times.ts';

/**
 * One fact of a stay that counts now: an event after corrections and retractions. `data` is the
 * payload of the event type named `type`, or of the correction that replaced it.
 */
export interface Fact<Data = unknown> {
  readonly id: EventId;
  readonly type: string;
  readonly data: Data;
  readonly occurred: EpochMs;
  readonly precision: Precision;
  readonly recorded: EpochMs;
  readonly position: number;
  readonly author: Author;
  readonly source: Source;
  /** -1 permission, 0 neutral, 1 restriction: folded in that order within one instant. */
  readonly rank: -1 | 0 | 1;
  /** The correction that replaced the original data, if one did. */
  readonly correctedBy: EventId | null;
}

/** All events of a stay's stream up to some position, as read; any order. */
export interface StayRecord {
  readonly stay: StayId;
  /** Version of the stream reached. */
  readonly version: number;
  readonly events: readonly LoggedEvent[];
}
