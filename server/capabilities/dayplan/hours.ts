import { streamKey } from '@footboard/shared/kernel/event-type';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { hoursOf } from '@footboard/shared/capabilities/dayplan/rules/hours';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import type { WardHours } from '@footboard/shared/wire/pictures';
import type { Streams } from '../../commanding/streams.ts';
import { totalsPage, type TotalsStore } from './queries.ts';

/** A ward day by the hour. Whose day it is the totals know; what each did, their own streams. */
export async function hoursPage(
  { streams, totals }: { streams: Streams; totals: TotalsStore },
  { state, calendar }: { state: WardState; calendar: WardCalendar },
  asked: { day: string | undefined; now: EpochMs },
): Promise<WardHours> {
  const { ward, day, from, to, stays } = await totalsPage(totals, state, calendar, asked);
  const needs = stays.map(({ stay }) => ({ ward, stream: streamKey('stay', stay) }));
  const read = needs.length > 0 ? await streams.read(needs) : null;
  const records = stays.map(({ stay }) => {
    const { events, version } = read!.slice(ward, streamKey('stay', stay));
    return { stay, version, events };
  });
  return { ward, day, from, to, at: asked.now, ...hoursOf(records, { from, to }, asked.now) };
}
