import type { BedView } from '@footboard/shared/capabilities/board/view';
import { needsTwoOrLift } from '@footboard/shared/capabilities/dayplan/rules/needs';

export interface BoardCounts {
  readonly occupied: number;
  readonly away: number;
  readonly empty: number;
  /** Two people or more, or a lift, for a move that must happen: the huddle's rule. A move on hold is not one. */
  readonly twoOrLift: number;
  readonly reCheck: number;
  readonly notKnown: number;
  readonly overdue: number;
  readonly onHold: number;
}

/** What the head of the wall counts, from the rows it shows and nothing else. */
export function countBoard(beds: readonly BedView[], night: boolean): BoardCounts {
  // A row that says nothing is not counted as if it had said "not known".
  const stays = beds.flatMap(({ stay }) => (stay && stay.shown !== 'ask-at-the-bedside' ? [stay] : []));
  const count = (test: (stay: (typeof stays)[number]) => boolean) => stays.filter(test).length;
  return {
    occupied: beds.filter((bed) => bed.state === 'occupied').length,
    away: beds.filter((bed) => bed.state === 'away').length,
    empty: beds.filter((bed) => bed.state === 'empty').length,
    twoOrLift: count(({ plan }) => plan !== null && needsTwoOrLift(night ? plan.night : plan.day)),
    reCheck: count((stay) => stay.trust.state === 're-check'),
    notKnown: count((stay) => stay.trust.state === 'not-known'),
    overdue: count((stay) => stay.due.state === 'overdue'),
    onHold: count((stay) => stay.holds.length > 0),
  };
}
