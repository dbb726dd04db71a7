import { roundOf } from '@footboard/shared/capabilities/dayplan/rules/round';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { StaffId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { RoundPage } from '@footboard/shared/wire/round';
import type { Boards } from '../../projecting/board.ts';
import { boardNow } from '../board/queries.ts';

/** The round as of now, with the asker's own visit first. */
export function roundPage(
  boards: Boards,
  ward: WardState,
  calendar: WardCalendar,
  asked: { readonly now: EpochMs; readonly asker: StaffId | null },
): RoundPage {
  const { p, board } = boardNow(boards, ward.ward);
  const named = board.beds.flatMap(({ carers }) => (carers ? [carers.nurse, carers.aide] : []));
  const on = board.peopleOn === null ? null : new Set(named.filter((one): one is StaffId => one !== null));
  const { entries, notListed } = roundOf({
    board,
    t: asked.now,
    calendar,
    rules: rulesOf(ward),
    asker: asked.asker,
    on,
  });
  return {
    ward: ward.ward,
    position: p,
    at: asked.now,
    entries: [...entries],
    notListed: [...notListed],
  } as RoundPage;
}
