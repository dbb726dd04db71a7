/** What a huddle may choose from when it agrees an action: what, who first, and by when. Pure. */
import type { BedView, BoardView } from '@footboard/shared/capabilities/board/view';
import { actionKind, type ActionKind } from '@footboard/shared/capabilities/dayplan/values';
import { wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { StaffMember } from '../../people/who-store.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** Keys 1 to 9, then 0: what can be chosen without a pointer. */
export const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'] as const;

/** The likely kind first, then the others in their own order. */
export const kindsFrom = (first: ActionKind | null): readonly ActionKind[] =>
  first === null ? actionKind.options : [first, ...actionKind.options.filter((kind) => kind !== first)];

/** Whoever looks after the bed, then who is named for any bed in this shift, then the staff list by name. */
export function ownersFrom(
  staff: readonly StaffMember[],
  bed: BedView | null,
  beds: readonly BedView[],
): readonly StaffMember[] {
  const named = [bed, ...beds].flatMap((one) => (one?.carers ? [one.carers.nurse, one.carers.aide] : []));
  const rank = (member: StaffMember) => {
    const at = named.indexOf(member.staff);
    return at < 0 ? named.length : at;
  };
  return staff.filter((one) => one.active).toSorted((a, b) => rank(a) - rank(b));
}

export interface TimeChoice {
  readonly at: number;
  readonly is: 'in-hours' | 'before-night' | 'next-day';
  readonly hours: number;
}

/** Hours from now, to the next five minutes; the beginning of the night and of the next ward day. */
export function timesFrom(
  now: number,
  board: Pick<BoardView, 'zone' | 'wardDayFrom' | 'nightFrom' | 'nightTo'>,
): readonly TimeChoice[] {
  const calendar = wardCalendar(board);
  const night = calendar.night(now);
  const soon = (hours: number) => Math.ceil((now + hours * HOUR) / (5 * MINUTE)) * 5 * MINUTE;
  const all: readonly TimeChoice[] = [
    ...[1, 2, 4].map((hours): TimeChoice => ({ at: soon(hours), is: 'in-hours', hours })),
    ...(night.is ? [] : [{ at: night.until, is: 'before-night' as const, hours: 0 }]),
    { at: calendar.wardDay(now).to, is: 'next-day', hours: 0 },
  ];
  return all.filter((one) => one.at - now >= 15 * MINUTE);
}
