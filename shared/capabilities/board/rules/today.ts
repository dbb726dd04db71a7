/** Today's activity against the goal, as the board shows it. */
import type { EpochMs } from '../../../kernel/times.ts';
import {
  amountsOf,
  goalMet,
  lastGoalSet,
  longestWalkOf,
  type DayAmounts,
  type SessionFact,
} from '../../sessions/rules/activity.ts';
import { goalToday, type GoalInput, type GoalToday } from '../../sessions/rules/goals.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import type { TaskPlan, TodayView } from '../view.ts';
import type { Known } from './known.ts';

export interface Today {
  readonly today: TodayView;
  /** Null where no goal applies. */
  readonly goalInput: GoalInput | null;
  readonly goalNow: GoalToday;
  readonly amounts: DayAmounts;
}

export function todayOf(
  { tier, standing, facts }: Known,
  input: PlanInput,
  plan: readonly TaskPlan[],
  sessions: readonly SessionFact[],
  day: { readonly from: EpochMs; readonly to: EpochMs },
): Today {
  const staged = standing.scope.kind === 'staged';
  const known = input.trust.state !== 'not-known';
  const goalInput: GoalInput | null = staged
    ? {
        cleared: known ? tier.cleared : null,
        tierFact: tier.assessment?.id ?? null,
        holds: input.holds,
        plan,
        activityOrder: input.orders.activity,
        usualWay:
          standing.usualWay && standing.usualWayFact
            ? { value: standing.usualWay, fact: standing.usualWayFact.id }
            : null,
        longestWalk: longestWalkOf(sessions),
        set: lastGoalSet(facts),
        rules: input.rules,
      }
    : null;
  const goalNow: GoalToday = goalInput ? goalToday(goalInput) : { goal: null, proposed: false, because: [] };
  const { goal, proposed } = goalNow;
  const because = [...goalNow.because];
  const amounts = amountsOf(sessions, day, goal);
  if (!amounts.recorded) {
    because.push({
      rule: 'today/not-recorded',
      facts: [],
      words: 'No session recorded since the ward day began',
    });
  }
  const today: TodayView = {
    wardDayFrom: day.from,
    goal,
    goalProposed: proposed,
    recorded: amounts.recorded,
    timesUp: amounts.timesUp,
    minutesOutOfBed: amounts.minutesOutOfBed,
    metres: amounts.metres,
    notDone: amounts.notDone,
    met: goalMet(goal, amounts),
    because,
  };
  return { today, goalInput, goalNow, amounts };
}
