import { fairnessOf, personDaysOf } from '@footboard/shared/capabilities/dayplan/rules/fairness';
import type { PersonDay } from '@footboard/shared/capabilities/dayplan/rules/fairness';
import type { WardDayTotal } from '@footboard/shared/capabilities/dayplan/rules/totals';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { FairnessPage } from '@footboard/shared/wire/fairness';
import type { Streams } from '../../commanding/streams.ts';
import type { TotalsStore } from './queries.ts';

/** Four weeks of whole ward days; the one that runs is not over and is left out. */
const WARD_DAYS = 28;

/** Who was got up in the last four weeks, by where they lay. */
export async function fairnessPage(
  { streams, totals }: { streams: Streams; totals: TotalsStore },
  ward: WardState,
  calendar: WardCalendar,
  now: EpochMs,
): Promise<FairnessPage> {
  const days = [calendar.wardDay(calendar.wardDay(now).from - 1)];
  while (days.length < WARD_DAYS) days.unshift(calendar.wardDay(days[0]!.from - 1));
  const rows = await Promise.all(days.map(({ from }) => totals.dayTotals(ward.ward, from)));
  const byStay = new Map<StayId, WardDayTotal[]>();
  for (const { row } of rows.flat()) {
    const total = JSON.parse(row) as WardDayTotal;
    byStay.set(total.stay, [...(byStay.get(total.stay) ?? []), total]);
  }
  const personDays: PersonDay[] = [];
  const needs = [...byStay.keys()].map((stay) => ({ ward: ward.ward, stream: streamKey('stay', stay) }));
  const read = needs.length > 0 ? await streams.read(needs) : null;
  for (const [stay, of] of byStay) {
    const { events, version } = read!.slice(ward.ward, streamKey('stay', stay));
    personDays.push(...personDaysOf({ stay, version, events }, of));
  }
  const spell = { from: days[0]!.from, to: days.at(-1)!.to, wardDays: days.length };
  const { groups, ...rest } = fairnessOf(personDays, ward.beds, spell);
  return {
    ward: ward.ward,
    at: now,
    ...rest,
    labels: Object.fromEntries(ward.beds.map(({ bed, label }) => [bed, label])),
    groups: {
      bed: [...groups.bed],
      bay: [...groups.bay],
      isolation: [...groups.isolation],
      weekday: [...groups.weekday],
    },
  };
}
