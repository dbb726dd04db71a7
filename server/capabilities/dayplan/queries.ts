import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { huddleOf } from '@footboard/shared/capabilities/dayplan/rules/huddle';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { HuddlePage } from '@footboard/shared/wire/http';
import type { Boards } from '../../projecting/board.ts';
import { boardNow } from '../board/queries.ts';

/** The ward in the order the morning review speaks it through. */
export function huddlePage(
  boards: Boards,
  ward: WardState,
  calendar: WardCalendar,
  now: EpochMs,
): HuddlePage {
  const { p, board } = boardNow(boards, ward.ward);
  return {
    ward: ward.ward,
    position: p,
    at: now,
    ...huddleOf(board, now, calendar, rulesOf(ward)),
  };
}
