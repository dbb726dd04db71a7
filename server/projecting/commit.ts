/** What one step of a runner is going to write. Pure. */
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Patch } from '@footboard/shared/wire/messages';
import { changesBetween } from './board-image.ts';
import type { BoardImage } from './board-image.ts';
import type { Checkpoint, Commit, Standing, StayTotals } from './store-port.ts';

/** The next feed number and its patch when a byte differs; the same number and no patch when none does. */
export function commitOf(
  ward: WardId,
  before: Standing | null,
  image: BoardImage,
  at: { readonly revision: number; readonly position: number; readonly t: EpochMs },
  totals: readonly StayTotals[],
): Commit {
  const { revision, position, t } = at;
  const changes = changesBetween(before?.image ?? null, image);
  const from = before?.checkpoint.feed ?? 0;
  const feed = changes ? from + 1 : from;
  return {
    ward,
    before,
    after: { checkpoint: { revision, position, feed, evaluatedAt: t }, image },
    patch: changes ? { ward, from, to: feed, p: position, t, ...changes } : null,
    totals,
  };
}

/** One linked patch over everything another runner committed since `before`. */
export function patchOver(ward: WardId, before: Standing, now: Checkpoint, image: BoardImage): Patch {
  const changes = changesBetween(before.image, image) ?? { beds: [] };
  const { feed, position, evaluatedAt } = now;
  return { ward, from: before.checkpoint.feed, to: feed, p: position, t: evaluatedAt, ...changes };
}

export function sameCheckpoint(a: Standing | null, b: Standing | null): boolean {
  if (!a || !b) return a === b;
  const [one, two] = [a.checkpoint, b.checkpoint];
  return one.revision === two.revision && one.position === two.position && one.feed === two.feed;
}
