/** The plan of the day that was accepted last. Pure. */
import type { LoggedEvent, PayloadOf } from '../../../kernel/event-type.ts';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import { toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { ItemId } from '../../aids/values.ts';
import type { dayPlanAccepted } from '../events.ts';
import type { PlannedVisitId, VisitKind } from '../problem.ts';

export interface AcceptedPlacement {
  readonly visit: PlannedVisitId;
  readonly stay: StayId;
  readonly kind: VisitKind;
  readonly start: EpochMs;
  readonly minutes: number;
  readonly crew: readonly StaffId[];
  readonly items: readonly ItemId[];
}
type Unplaced = NonNullable<PayloadOf<typeof dayPlanAccepted>['unplaced']>[number];

export interface AcceptedPlan {
  readonly day: string;
  readonly at: EpochMs;
  readonly by: StaffId;
  readonly hash: string;
  readonly weightsVersion: number;
  readonly how: 'solver' | 'greedy';
  readonly gap: number | null;
  readonly edited: boolean;
  readonly placements: readonly AcceptedPlacement[];
  /** Asked for and not in it; null: not said when it was accepted. */
  readonly unplaced: readonly Readonly<Unplaced>[] | null;
}

/** What one entry says. */
export function planOf(event: LoggedEvent): AcceptedPlan {
  const { placements, unplaced, ...p } = event.payload as PayloadOf<typeof dayPlanAccepted>;
  return {
    ...p,
    at: event.occurred,
    by: event.author.staff,
    placements: placements.map((one) => ({ ...one, start: toEpoch(one.start) })),
    unplaced: unplaced ?? null,
  };
}

/** The one that counts after another was accepted: of a day gone by it replaces nothing. */
export const laterPlan = (before: AcceptedPlan | null, now: AcceptedPlan): AcceptedPlan =>
  before && before.day > now.day ? before : now;
