/** Reading a ward's log from its beginning, in pages by position. */
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Log } from '../log/log.ts';
import { BoardFold } from './board-fold.ts';

export const PAGE = 5_000;

/** Folds what follows the fold's position, up to `upTo` or the end of the log. */
export async function readOn(
  fold: BoardFold,
  log: Pick<Log, 'readWard'>,
  upTo?: number,
  afterPage?: () => Promise<void> | void,
): Promise<void> {
  for (;;) {
    const events = await log.readWard(fold.ward, fold.position, PAGE, upTo);
    await fold.take(events);
    if (events.length > 0) await afterPage?.();
    if (events.length < PAGE) return;
  }
}

/** The board as it was known at position `p`, seen at instant `t`. Reads the log and nothing else. */
export async function boardAsOf(
  log: Pick<Log, 'readWard' | 'readStreams'>,
  ward: WardId,
  p: number,
  t: EpochMs,
): Promise<BoardView> {
  const fold = new BoardFold(ward, log);
  await readOn(fold, log, p);
  return fold.view(t).board;
}
