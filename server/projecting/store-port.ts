/** What the runner asks of its storage, free of SQL. */
import type { EpochMs } from '@footboard/shared/kernel/times';
import { HOUR } from '@footboard/shared/kernel/times';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Patch } from '@footboard/shared/wire/messages';
import type { BoardImage } from './board-image.ts';

/** How far back a returning screen is told what changed; beyond that it gets a snapshot. */
export const FEED_KEPT = 4 * HOUR;
/** How far back it is known which feed number carried an entry: a day of receipts, and some. */
export const FEED_NAMED = 26 * HOUR;

/** Where a projection stands: the compare-and-set of the next commit is on position and feed. */
export interface Checkpoint {
  readonly revision: number;
  readonly position: number;
  readonly feed: number;
  readonly evaluatedAt: EpochMs;
}
export interface Standing {
  readonly checkpoint: Checkpoint;
  readonly image: BoardImage | null;
}
export interface DayTotal {
  /** Start of the ward day. */
  readonly day: EpochMs;
  /** A WardDayTotal as JSON. */
  readonly row: string;
}
export interface StayTotals {
  readonly stay: string;
  /** True when the rows are all there are of this stay: others that are stored go. */
  readonly replace: boolean;
  readonly rows: readonly DayTotal[];
}
export interface Commit {
  readonly ward: WardId;
  readonly before: Standing | null;
  readonly after: Standing & { readonly image: BoardImage };
  readonly patch: Patch | null;
  readonly totals: readonly StayTotals[];
}

export interface Flip extends Commit {
  readonly before: Standing;
  /** Copies the ward day totals of the revision that retires. */
  readonly keepTotals: boolean;
}

/** Another process, or a rebuild, moved this projection first: read what stands and go on from there. */
export class CheckpointMoved extends Error {
  constructor(ward: WardId) {
    super(`the board of ward ${ward} was moved on by another runner`);
    this.name = 'CheckpointMoved';
  }
}

export interface ProjectionStore {
  standing(ward: WardId): Promise<Standing | null>;
  /** @throws CheckpointMoved */
  commit(commit: Commit): Promise<void>;
  /** Throws away what an unfinished rebuild left behind. */
  clearRevision(ward: WardId, revision: number): Promise<void>;
  putTotals(ward: WardId, revision: number, totals: readonly StayTotals[]): Promise<void>;
  /** Writes a whole revision beside the active one and makes it the active one. @throws CheckpointMoved */
  flip(commit: Flip): Promise<void>;
  /** Stored patches after `feed` in order; the first ones may be gone. */
  feedAfter(ward: WardId, feed: number): Promise<readonly Patch[]>;
  /** The feed number that first showed each position; none while no screen had to draw anything for it. */
  carriedBy(ward: WardId, positions: readonly number[]): Promise<ReadonlyMap<number, number>>;
  /** Forgets what changed before `before`, and that anything did before `named`. */
  pruneFeed(ward: WardId, before: EpochMs, named: EpochMs): Promise<void>;
  dayTotals(ward: WardId, day: EpochMs): Promise<readonly (DayTotal & { readonly stay: string })[]>;
}
