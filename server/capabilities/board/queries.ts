import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import type { BoardPage } from '@footboard/shared/wire/http';
import { Answered, noSuchWard, problem } from '../../commanding/problems.ts';
import type { Log } from '../../log/log.ts';
import type { Boards } from '../../projecting/board.ts';

export interface BoardsAsOf extends Boards {
  boardAsOf(ward: WardId, p: number, t: EpochMs): Promise<BoardView>;
}

/** The board as screens have it now. */
export function boardNow(boards: Boards, ward: WardId): BoardPage {
  const snapshot = boards.snapshot(ward);
  if (!snapshot) throw new Answered(noSuchWard(ward));
  return snapshot;
}

/**
 * The board as of an instant, knowing what was known at a position of the log. `feed` is 0: no
 * screen was ever sent this one.
 */
export async function boardThen(
  ports: { boards: BoardsAsOf; log: Log; now: EpochMs },
  ward: WardId,
  asked: { p?: number | undefined; t?: EpochMs | undefined },
): Promise<BoardPage> {
  const head = await ports.log.head(ward);
  if (head === 0) throw new Answered(noSuchWard(ward));
  const { p = head, t = ports.now } = asked;
  if (p > head) {
    const detail = `The ward's log ends at position ${head}.`;
    const remedy = `Ask for a position from 1 to ${head}.`;
    throw new Answered(
      problem('invalid-query', detail, remedy, { errors: [{ pointer: '/p', detail, remedy }] }),
    );
  }
  return { ward, feed: 0, p, t, board: await ports.boards.boardAsOf(ward, p, t) };
}
