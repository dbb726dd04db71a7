/**
 * Movement debt: waking time since the person was last up, and what would clear it. Stillness gets a
 * number as plain as falls have one; it is a line to act on, never an alarm. Ours, practice.
 */
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { DebtView } from '../../board/activity-view.ts';
import type { Because } from '../../board/because.ts';
import type { HoldView } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import { isHeld, isOrdered, isUp } from './activities.ts';
import type { DayAmounts } from './activity.ts';
import type { GoalToday } from './goals.ts';
import { nightsSince } from './waking.ts';

export interface DebtInput {
  readonly t: EpochMs;
  readonly began: EpochMs;
  /** The entry of the arrival. */
  readonly arrival: EventId | null;
  readonly scope: StayView['scope']['kind'];
  readonly lastUp: StayView['lastUp'];
  readonly holds: readonly HoldView[];
  readonly activityOrder: PlanInput['orders']['activity'];
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly today: GoalToday;
  readonly amounts: DayAmounts;
  readonly note: (at: EpochMs) => void;
}

/**
 * Since the end of the last time up, or the arrival. Nights that are over are counted out in
 * `sleptMs`, the one that runs by `pausedAt`. Owed from the ward's limit on, unless a hold or an order
 * stops getting up.
 */
export function movementDebt(input: DebtInput): DebtView {
  const { t, lastUp, calendar, rules, note } = input;
  const since = Math.min(t, lastUp?.at ?? input.began);
  const { sleptMs, pausedAt } = nightsSince(calendar, since, t);
  note(calendar.night(t).until);
  const limit = rules.activity.debtFreeHours.value * HOUR;
  const waking = (pausedAt ?? t) - since - sleptMs;
  if (pausedAt === null) note(since + sleptMs + limit);

  const sinceFacts = lastUp ? [lastUp.event] : input.arrival ? [input.arrival] : [];
  const from = lastUp ? 'Waking time since last up' : 'Waking time since arrival, no time up recorded';
  const because: Because[] = [
    {
      rule: 'debt/since',
      facts: sinceFacts,
      words: `${from}; owed from ${rules.activity.debtFreeHours.value} waking hours on`,
    },
  ];
  const stop = stopped(input);
  if (stop) because.push(stop);
  return {
    since,
    sleptMs,
    pausedAt,
    owed: stop === null && waking >= limit,
    clears: stop ? 'Nothing clears it while that stands: ask for its review' : clears(input),
    because,
  };
}

/** Getting up at all, even in a lift. */
function stopped({ holds, activityOrder }: DebtInput): Because | null {
  const hold = holds.find((h) => isHeld('lifted-to-chair', h.scope));
  if (hold) {
    const words = `Not owed while the hold on ${hold.scope.replaceAll('-', ' ')} stands`;
    return { rule: 'debt/hold', facts: [hold.event], words };
  }
  if (activityOrder && !isOrdered('edge-sit', activityOrder.value)) {
    return { rule: 'debt/order', facts: [activityOrder.fact], words: 'Not owed while the order is bed' };
  }
  return null;
}

function clears({ scope, today: { goal, whole }, amounts }: DebtInput): string {
  if (scope !== 'staged') return "One time up clears it, as far as the clinician's plan allows";
  if (!whole) return 'A check first; then one time up clears it';
  if (!isUp(whole.activity)) {
    return 'One time up clears it once that is cleared; until then a chair by lift, if a nurse sets it';
  }
  if (!goal) return 'One time up clears it';
  const left = goal.timesUp - amounts.timesUp;
  if (left <= 0) return "One time up clears it; the times of today's goal are done";
  const soFar = amounts.recorded ? '' : ', none recorded yet';
  return `One time up clears it; ${left} more today ${left === 1 ? 'meets' : 'meet'} the goal${soFar}`;
}
