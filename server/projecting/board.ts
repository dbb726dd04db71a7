/** The port between the projection and what reads it (push, queries, commands waiting to be shown). */
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Heartbeat, Patch, Snapshot } from '@footboard/shared/wire/messages';

export interface Boards {
  wards(): readonly WardId[];
  /** The last evaluated board of a ward; null when the ward does not exist (yet). */
  snapshot(ward: WardId): Snapshot | null;
  /** Patches linked from `feed` to now, or null when history does not reach back so far. */
  patchesSince(ward: WardId, feed: number): Promise<readonly Patch[] | null>;
  /** The feed number that first showed each of these log positions, of the last day; none for what changed no screen. */
  carriedBy(ward: WardId, positions: readonly number[]): Promise<ReadonlyMap<number, number>>;
  heartbeat(ward: WardId): Heartbeat | null;
  /** Called with each new patch after its rows, checkpoint and feed row have committed. */
  onPatch(listener: (patch: Patch) => void): () => void;
  /** Resolves true when the board has folded `position`, false after `withinMs`. */
  waitFor(ward: WardId, position: number, withinMs: number): Promise<boolean>;
}
export const BOARDS = Symbol('Boards');
