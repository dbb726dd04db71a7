import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { TrustView } from '../../board/view.ts';
import type { Fact, StayRecord } from '../facts.ts';

export interface Change {
  readonly verb: 'addendum' | 'amendment' | 'correction' | 'retraction';
  readonly event: EventId;
}
export interface Effective {
  /** Ordered by occurred, rank, event id. */
  readonly facts: readonly Fact[];
  /** By the entry spoken of. */
  readonly changes: ReadonlyMap<EventId, readonly Change[]>;
  /** Entries that no longer count. */
  readonly retracted: ReadonlySet<EventId>;
  readonly conflicts: TrustView['conflicts'];
  /** Corrections and retractions that may have lowered help: each asks for a look until the next check. */
  readonly lookAgain: readonly { event: EventId; at: EpochMs; words: string }[];
}
export function effectiveFacts(_record: StayRecord): Effective {
  throw new Error('signature only');
}
