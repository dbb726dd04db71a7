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
}

/** The last one accepted for this ward day; null where there is none. */
export function acceptedPlan(events: readonly LoggedEvent[], day: string): AcceptedPlan | null {
  const event = events.findLast(
    (e) => e.type === 'day-plan-accepted' && (e.payload as PayloadOf<typeof dayPlanAccepted>).day === day,
  );
  if (!event) return null;
  const { placements, ...p } = event.payload as PayloadOf<typeof dayPlanAccepted>;
  return {
    ...p,
    at: event.occurred,
    by: event.author.staff,
    placements: placements.map((one) => ({ ...one, start: toEpoch(one.start) })),
  };
}
