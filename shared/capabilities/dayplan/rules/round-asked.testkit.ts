/** The round as somebody asks for it, over single people: who asks, at which hour, and what was told of each. */
import type { EpochMs } from '../../../kernel/times.ts';
import { toIso } from '../../../kernel/times.ts';
import { calendar, type Told } from '../../board/rules/history.testkit.ts';
import type { StayView } from '../../board/view.ts';
import { roundOf, type RoundInput } from './round.ts';
import { at, boardOf, MORNING, staff } from './round.testkit.ts';

/** Noon on the ward's clock; everybody was last up at the check at 07:30. */
export const NOON: EpochMs = at(4);

interface Asked extends Partial<Pick<RoundInput, 't' | 'rules' | 'on' | 'hands'>> {
  readonly asker?: string;
}
export const roundFor = (stays: readonly (StayView | null)[], { asker, ...more }: Asked = {}) =>
  roundOf({
    board: boardOf(...stays),
    t: NOON,
    calendar,
    asker: asker === undefined ? null : staff(asker),
    on: null,
    ...more,
  });

/** A visit taken at noon less six minutes: who goes, with whom, and from when until when, in hours from 08:00. */
export const visitTaken = (
  by: string,
  from: number,
  until: number,
  more: { readonly second?: string } = {},
): Told => ({
  type: 'visit-taken',
  at: MORNING + 3.9,
  role: 'aide',
  staff: by,
  id: `taken-by-${by}`,
  payload: { visit: `visit-of-${by}`, by, from: toIso(at(from)), until: toIso(at(until)), ...more },
});

export const goalSet = (activity: string, timesUp = 2): Told => ({
  type: 'goal-set',
  at: MORNING,
  payload: { goal: { activity, timesUp } },
});
