/** Planned equipment that was not used, over the last four weeks. Of whoever recorded it nothing is read. */
import { evaluateFacts } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import type { Fact } from '@footboard/shared/capabilities/corrections/facts';
import { countNotUsed, notUsedIn } from '@footboard/shared/capabilities/sessions/rules/planned-aid';
import type { sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { stayBegun, stayMoved } from '@footboard/shared/capabilities/stays/events';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import type { StayId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { AidUsePage } from '@footboard/shared/wire/coordinator';
import type { Streams } from '../../commanding/streams.ts';
import type { TotalsStore } from '../dayplan/queries.ts';

/** Four weeks, the ward day that runs with them. */
const WARD_DAYS = 28;
const LISTED_AT_MOST = 100;

export async function aidUsePageOf(
  { streams, totals }: { streams: Streams; totals: TotalsStore },
  { ward, calendar, now }: { ward: WardState; calendar: WardCalendar; now: EpochMs },
): Promise<AidUsePage> {
  const days = [calendar.wardDay(now)];
  while (days.length < WARD_DAYS) days.unshift(calendar.wardDay(days[0]!.from - 1));
  const [from, to] = [days[0]!.from, days.at(-1)!.to];
  const rows = await Promise.all(days.map((day) => totals.dayTotals(ward.ward, day.from)));
  const stays = [...new Set(rows.flat().map(({ row }) => (JSON.parse(row) as { stay: StayId }).stay))];
  const needs = stays.map((stay) => ({ ward: ward.ward, stream: streamKey('stay', stay) }));
  const read = needs.length > 0 ? await streams.read(needs) : null;
  let sessions = 0;
  let told = 0;
  const found: AidUsePage['list'] = [];
  for (const stay of stays) {
    const { events, version } = read!.slice(ward.ward, streamKey('stay', stay));
    const record = { stay, version, events };
    const effective = effectiveFacts(record);
    // In the order of time: what the rules work out for one instant is kept for the next.
    for (const fact of effective.facts) {
      if (fact.type !== 'session-recorded' || fact.occurred < from || fact.occurred > now) continue;
      const { session } = fact.data as PayloadOf<typeof sessionRecorded>;
      if (session.outcome === 'not-done') continue;
      sessions++;
      if (session.aidNotUsed !== undefined || session.help !== undefined) told++;
      const missed = notUsedIn(
        session,
        () => evaluateFacts(record, effective, ward, calendar, fact.occurred - 1).view.plan?.day ?? null,
      );
      if (!missed) continue;
      found.push({
        event: fact.id,
        stay,
        bed: bedAt(effective.facts, fact.occurred, ward),
        at: fact.occurred,
        ...missed,
      });
    }
  }
  const list = found.toSorted((a, b) => b.at - a.at || (a.event < b.event ? -1 : 1));
  return {
    ward: ward.ward,
    at: now,
    from,
    to,
    sessions,
    told,
    counts: countNotUsed(found),
    listed: LISTED_AT_MOST,
    list: list.slice(0, LISTED_AT_MOST),
  };
}

function bedAt(facts: readonly Fact[], t: EpochMs, ward: WardState): string | null {
  let bed: string | null = null;
  for (const { type, data, occurred } of facts) {
    if (occurred > t) break;
    if (type === 'stay-begun') bed = (data as PayloadOf<typeof stayBegun>).bed;
    else if (type === 'stay-moved') bed = (data as PayloadOf<typeof stayMoved>).to;
  }
  return ward.beds.find((one) => one.bed === bed)?.label ?? null;
}
