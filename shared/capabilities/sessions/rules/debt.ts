/** Movement debt: waking time since the person was last up, and what would clear it. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { DebtView, HoldView, StayView } from '../../board/view.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { DayAmounts } from './activity.ts';
import type { GoalToday } from './goals.ts';

export interface DebtInput {
  readonly t: EpochMs;
  readonly began: EpochMs;
  readonly lastUp: StayView['lastUp'];
  readonly holds: readonly HoldView[];
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly today: GoalToday;
  readonly amounts: DayAmounts;
  readonly note: (at: EpochMs) => void;
}

export function movementDebt(_input: DebtInput): DebtView | null {
  return null;
}
