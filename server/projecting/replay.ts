/** Reading a ward's log from its beginning, in pages by position. */
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Log } from '../log/log.ts';
import { BoardFold } from './board-fold.ts';
import type { StayTotals } from './store-port.ts';

/** Small enough that a page dies young in memory, large enough that round trips do not count. */
export const PAGE = 2_000;

/** Real milliseconds a replay spent in each of its parts. */
export interface ReplayTimes {
  read: number;
  fold: number;
  rules: number;
  write: number;
}
export const noTimes = (): ReplayTimes => ({ read: 0, fold: 0, rules: 0, write: 0 });

/** Folds what follows the fold's position, up to `upTo` or the end of the log. */
export async function readOn(fold: BoardFold, log: Pick<Log, 'readPage'>, upTo?: number): Promise<void> {
  for (;;) {
    const events = await log.readPage(fold.ward, fold.position, PAGE, upTo);
    await fold.take(events);
    if (events.length < PAGE) return;
  }
}

/**
 * A ward from its first event. Stays that have left are done with once a page, so that memory
 * follows the beds and not the length of the log. One page is read while the one before is folded.
 */
export async function replay(
  log: Pick<Log, 'readPage' | 'readStreams'>,
  ward: WardId,
  options: {
    readonly upTo?: number | undefined;
    readonly times?: ReplayTimes;
    /** Takes the ward day totals, seen at `t`, of stays that have left; without it they are not worked out. */
    readonly totals?:
      { readonly t: EpochMs; write(totals: readonly StayTotals[]): Promise<void> } | undefined;
  } = {},
): Promise<BoardFold> {
  const { upTo, times = noTimes(), totals } = options;
  const fold = new BoardFold(ward, log);
  let since = performance.now();
  const spent = (on: keyof ReplayTimes) => {
    const now = performance.now();
    times[on] += now - since;
    since = now;
  };
  const pageAfter = (position: number) => {
    const page = log.readPage(ward, position, PAGE, upTo);
    // Its failure is met where it is awaited, also when something else fails first.
    page.catch(() => {});
    return page;
  };
  let reading = pageAfter(0);
  let writing: Promise<void> = Promise.resolve();
  for (;;) {
    const events = await reading;
    spent('read');
    const more = events.length === PAGE;
    if (more) reading = pageAfter(events.at(-1)!.position);
    await fold.take(events);
    spent('fold');
    const left = totals ? fold.totalsOfLeft(totals.t) : fold.forgetLeft();
    spent('rules');
    await writing;
    if (totals && left.length > 0) {
      writing = totals.write(left);
      writing.catch(() => {});
    }
    spent('write');
    if (more) continue;
    await writing;
    spent('write');
    return fold;
  }
}

/** The board as it was known at position `p`, seen at instant `t`. Reads the log and nothing else. */
export async function boardAsOf(
  log: Pick<Log, 'readPage' | 'readStreams'>,
  ward: WardId,
  p: number,
  t: EpochMs,
): Promise<BoardView> {
  const fold = await replay(log, ward, { upTo: p });
  return fold.view(t).board;
}
