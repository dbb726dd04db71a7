/** Which corrections and retractions of the last day some paired screens have not painted yet. */
import { stayOf } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { HOUR } from '@footboard/shared/kernel/times';
import { correctionMade, retractionMade } from '@footboard/shared/capabilities/corrections/events';
import type { ReceiptsPage } from '@footboard/shared/wire/access';
import type { Log } from '../../log/log.ts';
import type { Boards } from '../../projecting/board.ts';

const FOR_MS = 24 * HOUR;
const PAGE = 500;
const TAKES_BACK: readonly string[] = [correctionMade.name, retractionMade.name];

export async function receiptsOf(
  ports: { readonly boards: Boards; readonly log: Log },
  ward: WardId,
  screens: readonly Pick<ReceiptsPage['screens'][number], 'device' | 'painted'>[],
  now: EpochMs,
): Promise<ReceiptsPage['changes']> {
  const events = await lately(ports.log, ward, now - FOR_MS);
  const feeds = await ports.boards.carriedBy(
    ward,
    events.map(({ position }) => position),
  );
  return events.flatMap((event) => {
    const stay = stayOf(event.stream);
    if (stay === null) return [];
    const feed = feeds.get(event.position) ?? null;
    const waiting = feed === null ? [] : screens.filter(({ painted }) => painted === null || painted < feed);
    return [
      { event: event.id, stay, recorded: event.recorded, feed, waiting: waiting.map(({ device }) => device) },
    ];
  });
}

/** From the end of the log backwards, page by page, to what was recorded before. Newest first. */
async function lately(log: Log, ward: WardId, since: EpochMs): Promise<LoggedEvent[]> {
  const found: LoggedEvent[] = [];
  for (let upTo = await log.head(ward); upTo > 0; upTo -= PAGE) {
    const page = await log.readPage(ward, Math.max(0, upTo - PAGE), PAGE, upTo);
    const fresh = page.filter(({ recorded }) => recorded >= since);
    found.push(...fresh.filter(({ type }) => TAKES_BACK.includes(type)).toReversed());
    if (fresh.length < page.length) break;
  }
  return found;
}
