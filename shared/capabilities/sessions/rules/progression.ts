/** A step up or back of the day's goal, proposed from its sessions; a qualified person accepts it. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { ProposalView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { SessionFact } from './activity.ts';
import type { GoalInput, GoalToday } from './goals.ts';

export interface ProgressionInput extends GoalInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly sessions: readonly SessionFact[];
  readonly t: EpochMs;
  readonly calendar: WardCalendar;
  readonly today: GoalToday;
}

export function proposalOf(_input: ProgressionInput): ProposalView | null {
  return null;
}
