/**
 * Who was got up, by where they lay: by bed, bay, isolation and weekday over whole ward days. Counted is
 * one person on one ward day. Nothing recorded is counted apart from not done, and is no zero. Few
 * days say little: below ten the share is not told. Ours, practice: no published measure is known to us.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { BedId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import type { scopeSet, stayBegun, stayMoved } from '../../stays/events.ts';
import type { WardDayTotal } from './totals.ts';

/** Below this many person-days a share is left out. */
export const FEW_DAYS = 10;

/** One person on one ward day. */
export interface PersonDay {
  readonly day: string;
  readonly bed: BedId;
  readonly isolated: boolean;
  /** A comfort or clinician's plan: not on the round, counted apart. */
  readonly apart: boolean;
  readonly recorded: boolean;
  /** Sessions in which the person was got up, in whole or in part. */
  readonly visits: number;
}

type Total = Pick<WardDayTotal, 'day' | 'from' | 'to' | 'recorded' | 'sessions'>;

/** A stay's days, each with the bed and the isolation that held when it ended, or when the person left. */
export function personDaysOf(record: StayRecord, totals: readonly Total[]): PersonDay[] {
  const { facts } = effectiveFacts(record);
  return totals.flatMap(({ day, to, recorded, sessions }) => {
    const before = facts.filter((fact) => fact.occurred < to);
    const bed = bedBy(before);
    if (bed === null) return [];
    const isolation = before.findLast(({ type }) => type === 'isolation-set')?.data as
      { readonly on: boolean } | undefined;
    const scope = before.findLast(({ type }) => type === 'scope-set')?.data as
      PayloadOf<typeof scopeSet> | undefined;
    return [
      {
        day,
        bed,
        isolated: isolation?.on ?? false,
        apart: scope !== undefined && scope.scope !== 'staged',
        recorded,
        visits: sessions.done + sessions.part + sessions.stopped,
      },
    ];
  });
}

function bedBy(facts: readonly { readonly type: string; readonly data: unknown }[]): BedId | null {
  let bed: BedId | null = null;
  for (const { type, data } of facts) {
    if (type === 'stay-begun') bed = (data as PayloadOf<typeof stayBegun>).bed;
    else if (type === 'stay-moved') bed = (data as PayloadOf<typeof stayMoved>).to;
  }
  return bed;
}

export interface FairnessLine {
  readonly key: string;
  /** Person-days; of these with a visit, with sessions that all were not done, and with nothing recorded. */
  readonly days: number;
  readonly visited: number;
  readonly notDone: number;
  readonly notRecorded: number;
  readonly visits: number;
  /** Share of the days with a visit, 0 to 1; null for too few days. */
  readonly share: number | null;
}
export type Grouping = 'bed' | 'bay' | 'isolation' | 'weekday';

export interface Fairness {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly wardDays: number;
  readonly all: FairnessLine;
  /** Person-days under another plan, in none of the counts. */
  readonly apart: number;
  readonly groups: Readonly<Record<Grouping, readonly FairnessLine[]>>;
}

/** Monday to Sunday, by the date on which the ward day began. */
export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const weekdayOf = (day: string): string => WEEKDAYS[(new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7]!;

export function fairnessOf(
  personDays: readonly PersonDay[],
  beds: readonly { readonly bed: BedId; readonly bay: string }[],
  { from, to, wardDays }: { from: EpochMs; to: EpochMs; wardDays: number },
): Fairness {
  const counted = personDays.filter(({ apart }) => !apart);
  const bayOf = new Map(beds.map(({ bed, bay }) => [bed, bay]));
  const by = (keys: readonly string[], of: (day: PersonDay) => string) =>
    [...new Set([...keys, ...counted.map(of)])].map((key) =>
      lineOf(
        key,
        counted.filter((day) => of(day) === key),
      ),
    );
  return {
    from,
    to,
    wardDays,
    all: lineOf('all', counted),
    apart: personDays.length - counted.length,
    groups: {
      bed: by(
        beds.map(({ bed }) => bed),
        ({ bed }) => (bayOf.has(bed) ? bed : CLOSED),
      ),
      bay: by([...new Set(bayOf.values())], ({ bed }) => bayOf.get(bed) ?? CLOSED),
      isolation: by(['isolated', 'not-isolated'], ({ isolated }) => (isolated ? 'isolated' : 'not-isolated')),
      weekday: by(WEEKDAYS, ({ day }) => weekdayOf(day)),
    },
  };
}
/** Beds that are not on the ward any more, together. */
export const CLOSED = 'closed-beds';

function lineOf(key: string, days: readonly PersonDay[]): FairnessLine {
  const visited = days.filter(({ visits }) => visits > 0).length;
  const notRecorded = days.filter(({ recorded }) => !recorded).length;
  return {
    key,
    days: days.length,
    visited,
    notDone: days.length - visited - notRecorded,
    notRecorded,
    visits: days.reduce((sum, { visits }) => sum + visits, 0),
    share: days.length < FEW_DAYS ? null : visited / days.length,
  };
}
