/** A board built from the first event, beside the one that is in use. */
import type { WardId } from '@footboard/shared/kernel/ids';
import type { BoardFold } from './board-fold.ts';
import { noTimes, replay } from './replay.ts';
import type { RebuildOptions, RunnerPorts } from './runner-ports.ts';
import type { Standing, StayTotals } from './store-port.ts';

/** Its totals are written as `revision`; the board itself is not in use before somebody flips to it. */
export async function buildBeside(
  { log, store, clock }: Pick<RunnerPorts, 'log' | 'store' | 'clock'>,
  ward: WardId,
  inUse: Standing | null,
  { totals = 'build', times = noTimes() }: RebuildOptions,
): Promise<{ readonly fold: BoardFold; readonly revision: number }> {
  if (!inUse) throw new Error(`ward ${ward} has no board yet to build beside`);
  const revision = inUse.checkpoint.revision + 1;
  await store.clearRevision(ward, revision);
  const write = (rows: readonly StayTotals[]) => store.putTotals(ward, revision, rows);
  const fold = await replay(log, ward, {
    times,
    totals: totals === 'build' ? { t: clock.now(), write } : undefined,
  });
  return { fold, revision };
}
