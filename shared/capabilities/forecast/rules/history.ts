/**
 * What the ward recorded before, as counts by the quarter of the day. Only days of stays on which
 * something was recorded are looked at: a gap is not a zero.
 */
import type { LoggedEvent, PayloadOf } from '../../../kernel/event-type.ts';
import { MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { itemTaken } from '../../aids/events.ts';
import type { ItemDescription, ItemId, ItemKind } from '../../aids/values.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { sessionsOf } from '../../sessions/rules/activity.ts';
import type { Session } from '../../sessions/values.ts';
import type { Period } from '../../wards/context.ts';
import { quarterOf, SLOTS_OF_DAY } from './horizon.ts';
import type { Seen } from './rates.ts';
import { SLOT_MINUTES } from './scenario.ts';
import type { Measured } from './supply.ts';

/** How a person is moved, as far as it bears on lifts and hands. Others ask for neither. */
export const STAY_TYPES = ['lifted', 'helped'] as const;
export type StayType = (typeof STAY_TYPES)[number];

export interface History {
  /** Toilet, care and planned moves; meals apart. By type of stay. */
  readonly seen: Readonly<Record<StayType, Seen>>;
  /** The same without planned moves: what a day asks for beside its plan. */
  readonly besidePlan: Readonly<Record<StayType, Seen>>;
  /** Moves of each ward day, of these planned, and how many days of stays of each type it had. */
  readonly days: readonly {
    readonly moves: number;
    readonly planned: number;
    readonly stays: Readonly<Record<StayType, number>>;
  }[];
  /** Meals out of bed, of so many days of stays. */
  readonly meals: { readonly taken: number; readonly stayDays: number };
}

const SLOT = SLOT_MINUTES * MINUTE;
const isLift = (aid: string | undefined) => aid === 'sling-lift' || aid === 'bariatric-lift';

const helped = ({ help }: Session): boolean =>
  (help?.people ?? 0) >= 2 || help?.aid === 'standing-aid' || help?.aid === 'lateral-transfer-aid';

/** By the most help that was written down on that day; null: none that asks for a lift or two people. */
function typeOf(sessions: readonly Session[]): StayType | null {
  if (sessions.some((s) => isLift(s.help?.aid) || s.activities.includes('lifted-to-chair'))) return 'lifted';
  return sessions.some(helped) ? 'helped' : null;
}

/** @param days whole ward days, oldest first */
export function historyOf(records: readonly StayRecord[], days: readonly Period[], zone: string): History {
  const seen = { lifted: nothing(), helped: nothing() };
  const planned = { lifted: nothing().counts, helped: nothing().counts };
  const byDay = days.map(() => ({ moves: 0, planned: 0, stays: { lifted: 0, helped: 0 } }));
  const meals = { taken: 0, stayDays: 0 };
  for (const record of records) {
    const { facts } = effectiveFacts(record);
    const began = facts.find((f) => f.type === 'stay-begun')?.occurred ?? Infinity;
    const ended = facts.findLast((f) => f.type === 'stay-ended')?.occurred ?? Infinity;
    const sessions = sessionsOf(facts, Infinity).filter(({ session }) => session.outcome !== 'not-done');
    days.forEach((day, d) => {
      if (began >= day.to || ended <= day.from) return;
      const here = sessions.filter(({ from }) => from >= day.from && from < day.to);
      const type = typeOf(here.map(({ session }) => session));
      if (type === null) return;
      meals.stayDays++;
      byDay[d]!.stays[type]++;
      for (let at = Math.max(day.from, ceilTo(began, day.from)); at < Math.min(day.to, ended); at += SLOT)
        seen[type].days[quarterOf(zone, at)]!++;
      for (const { from, session } of here) {
        if (session.occasion === 'meal') meals.taken++;
        else {
          seen[type].counts[quarterOf(zone, from)]!++;
          byDay[d]!.moves++;
          if (session.occasion !== 'planned') continue;
          planned[type][quarterOf(zone, from)]!++;
          byDay[d]!.planned++;
        }
      }
    });
  }
  const beside = (type: StayType): Seen => ({
    ...seen[type],
    counts: seen[type].counts.map((n, i) => n - planned[type][i]!),
  });
  const besidePlan = { lifted: beside('lifted'), helped: beside('helped') };
  return { seen, besidePlan, days: byDay.filter(({ stays }) => stays.lifted + stays.helped > 0), meals };
}

const nothing = () => ({
  counts: Array.from({ length: SLOTS_OF_DAY }, () => 0),
  days: Array.from({ length: SLOTS_OF_DAY }, () => 0),
});
const ceilTo = (at: EpochMs, from: EpochMs) => from + Math.ceil((at - from) / SLOT) * SLOT;

/** Longer than this it was forgotten to be brought back, shorter than this it was put down at once (minutes). */
const LONGEST_USE = 60;
const SHORTEST_USE = 1;

/** Mean time from taken to back, by kind of equipment, of uses begun in [from, to). */
export function measuredOf(
  streams: ReadonlyMap<ItemId, readonly LoggedEvent[]>,
  items: ReadonlyMap<ItemId, Pick<ItemDescription, 'kind'>>,
  { from, to }: Period,
): Measured {
  const sums = new Map<ItemKind, { minutes: number; uses: number }>();
  for (const [item, events] of streams) {
    const kind = items.get(item)?.kind;
    if (!kind) continue;
    let taken: EpochMs | null = null;
    for (const event of events.toSorted((a, b) => a.occurred - b.occurred)) {
      if (event.type === 'item-taken') {
        // Taken for nobody in particular, it may be for a week-end or for cleaning.
        taken = (event.payload as PayloadOf<typeof itemTaken>).usedBy ? event.occurred : null;
      } else if (event.type === 'item-back' && taken !== null) {
        const minutes = (event.occurred - taken) / MINUTE;
        if (taken >= from && taken < to && minutes >= SHORTEST_USE && minutes <= LONGEST_USE) {
          const sum = sums.get(kind) ?? { minutes: 0, uses: 0 };
          sums.set(kind, { minutes: sum.minutes + minutes, uses: sum.uses + 1 });
        }
        taken = null;
      }
    }
  }
  return new Map([...sums].map(([kind, s]) => [kind, { minutes: s.minutes / s.uses, uses: s.uses }]));
}
