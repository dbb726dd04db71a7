/** Boards with people of whom only what is asked about differs: all else is known, current and free to get up. */
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { viewBoard } from '../../board/rules/board.ts';
import { calendar, check, hours, stayOf, ward, WARD, type Told } from '../../board/rules/history.testkit.ts';
import type { BedView, BoardView, StayView } from '../../board/view.ts';
import type { StaffId, StayId } from '../../../kernel/ids.ts';

/** Sunday 08:00 on the ward's clock, 14 h after START and an hour after the night (the clocks went back). */
export const MORNING = 15;
export const at = (h: number): number => hours(MORNING + h);

/** Seen walking freely this morning, everything known. */
export const known: readonly Told[] = [
  { type: 'weight-recorded', at: 0, payload: { weight: { kg: 70, how: 'measured' } } },
  check('walk', MORNING - 0.5),
];

export const rowOf = (t: number, ...told: readonly Told[]): StayView =>
  evaluateStay(stayOf(...known, ...told), ward, calendar, t).view;

export const bedOf = (n: number, stay: StayView | null): BedView => ({
  bed: `bed-${n}` as BedView['bed'],
  label: String(n),
  bay: 'A',
  ceilingTrack: false,
  state: stay === null ? 'empty' : stay.away ? 'away' : 'occupied',
  carers: null,
  stay: stay && { ...stay, stay: `stay-${n}` as StayId },
});

export const boardOf = (...stays: readonly (StayView | null)[]): BoardView => ({
  ...emptyBoard,
  beds: stays.map((stay, i) => bedOf(i + 1, stay)),
});
const emptyBoard = viewBoard(
  { ward: WARD, wardState: null, calendar: null } as unknown as Parameters<typeof viewBoard>[0],
  0,
).board;

export const staff = (id: string): StaffId => id as StaffId;
