import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { huddleOf } from '@footboard/shared/capabilities/dayplan/rules/huddle';
import { reviewOf } from '@footboard/shared/capabilities/dayplan/rules/review';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { dayTotal } from '@footboard/shared/wire/documents';
import type { TotalsPage } from '@footboard/shared/wire/documents';
import { localDate, resolveLocal } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { HuddlePage } from '@footboard/shared/wire/http';
import { Answered, problem } from '../../commanding/problems.ts';
import type { Boards } from '../../projecting/board.ts';
import type { Vault } from '../../vault/vault.ts';
import { boardNow } from '../board/queries.ts';
import type { Reviews } from './review.ts';

/** The ward in the order the morning review speaks it through. */
export async function huddlePage(
  ports: { boards: Boards; reviews: Reviews; vault: Vault },
  ward: WardState,
  calendar: WardCalendar,
  now: EpochMs,
): Promise<HuddlePage> {
  const { p, board } = boardNow(ports.boards, ward.ward);
  const state = await ports.reviews.state(ward.ward);
  const notes = [...state.actions.values()].flatMap(({ note }) => (note ? [note.ref] : []));
  const [before, expected, texts] = await Promise.all([
    ports.reviews.before(ward.ward, state, now),
    ports.reviews.expected(state, now),
    ports.vault.open(notes),
  ]);
  const happened = await ports.reviews.happened(ward.ward, before.position);
  return {
    ward: ward.ward,
    position: p,
    at: now,
    ...huddleOf(board, now, calendar, rulesOf(ward)),
    ...reviewOf({ state, before: before.board, now: board, happened, t: now, calendar, texts }),
    expected,
  };
}

/** Rows of the ward day totals projection; `row` is a WardDayTotal as JSON. */
export interface TotalsStore {
  dayTotals(ward: WardId, dayFrom: EpochMs): Promise<readonly { readonly row: string }[]>;
}
export const TOTALS = Symbol('Totals');

/** What every stay did on one ward day: the one that began on `day`, or the one that runs now. */
export async function totalsPage(
  store: TotalsStore,
  ward: WardState,
  calendar: WardCalendar,
  asked: { day: string | undefined; now: EpochMs },
): Promise<TotalsPage> {
  const { from, to } = calendar.wardDay(
    asked.day === undefined ? asked.now : lastMinuteOf(ward.zone, asked.day),
  );
  const rows = await store.dayTotals(ward.ward, from);
  return {
    ward: ward.ward,
    day: localDate(ward.zone, from),
    from,
    to,
    stays: rows.map(({ row }) => {
      const { day: _day, from: _from, to: _to, ...total } = JSON.parse(row) as Record<string, unknown>;
      return dayTotal.parse(total);
    }),
  };
}

/** Whatever the hour a ward day begins at, the last minute of a date lies in the one begun on it. */
function lastMinuteOf(zone: string, day: string): EpochMs {
  const resolved = resolveLocal(zone, `${day}T23:59`);
  if ('at' in resolved) return resolved.at;
  const remedy = 'Write the day like 2026-10-25.';
  throw new Answered(
    problem('invalid-query', resolved.detail, remedy, {
      errors: [{ pointer: '/day', detail: resolved.detail, remedy }],
    }),
  );
}
