/** Today's activity against the goal, as the board shows it. */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import {
  amountsOf,
  goalMet,
  lastGoalSet,
  longestWalkOf,
  type DayAmounts,
  type SessionFact,
} from '../../sessions/rules/activity.ts';
import { goalToday, NO_GOAL, type GoalInput, type GoalToday } from '../../sessions/rules/goals.ts';
import { shareOfDay } from '../../sessions/rules/waking.ts';
import type { usualWayRecorded } from '../../stays/events.ts';
import type { Period, WardCalendar } from '../../wards/context.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { goalSet } from '../../sessions/events.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import type { TodayView } from '../activity-view.ts';
import { ifAny, type Because } from '../because.ts';
import type { TaskPlan } from '../moving-view.ts';
import { boardWrongIn } from '../../orders/rules/board-wrong.ts';
import type { Known } from './known.ts';

export interface Today {
  readonly today: TodayView;
  /** Null where no goal applies. */
  readonly goalInput: GoalInput | null;
  readonly goalNow: GoalToday;
  readonly amounts: DayAmounts;
}

export function todayOf(
  known: Known,
  input: PlanInput,
  plan: readonly TaskPlan[],
  sessions: readonly SessionFact[],
  day: Period,
  calendar: WardCalendar,
  note: (at: EpochMs) => void,
): Today {
  const { tier, standing, facts, beyondStop } = known;
  const leaves = leavesOn(day, known, input.t, note);
  const here = { from: standing.began ?? -Infinity, to: leaves?.at ?? Infinity };
  const staged = standing.scope.kind === 'staged';
  const trusted = input.trust.state !== 'not-known';
  const { arrival } = input;
  const goalInput: GoalInput | null = staged
    ? {
        cleared: trusted ? tier.cleared : null,
        tierFact: tier.assessment?.id ?? null,
        holds: input.holds,
        plan,
        activityOrder: input.orders.activity,
        usualWay:
          standing.usualWay && standing.usualWayFact
            ? { value: standing.usualWay, fact: standing.usualWayFact.id }
            : null,
        longestWalk: longestWalkOf(sessions, beyondStop),
        wish: wishOf(facts),
        set: lastGoalSet(facts),
        share: shareOfDay(day, here, calendar, input.rules),
        leaving: leaves?.event ?? null,
        hereBefore: here.from <= day.from,
        arrival,
        rules: input.rules,
      }
    : null;
  const goalNow: GoalToday = goalInput ? goalToday(goalInput) : NO_GOAL;
  const { goal, proposed } = goalNow;
  const because = [...goalNow.because, ...(staged ? [] : noGoalUnder(standing))];
  const amounts = amountsOf(sessions, day, goal);
  if (!amounts.recorded) {
    because.push({
      rule: 'today/not-recorded',
      facts: ifAny(arrival),
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
    boardWrong: boardWrongIn(facts, day),
    because,
  };
  return { today, goalInput, goalNow, amounts };
}

/** Of somebody whose moves follow another plan the board asks nothing a day, and says which plan that is. */
const noGoalUnder = ({ scope, scopeFact }: Known['standing']): Because[] => [
  {
    rule: 'goal/own-plan',
    facts: ifAny(scopeFact?.id),
    words:
      scope.kind === 'comfort'
        ? 'No daily goal: a comfort plan applies'
        : "No daily goal: the clinician's own plan applies",
  },
];

/**
 * When the person leaves on this ward day, by the entry that says so: when they left, else when they are
 * expected to. An expectation that is past and did not come true says nothing: the goal is whole again.
 */
function leavesOn(
  day: Period,
  { facts, besidePlan: { leaving } }: Known,
  t: EpochMs,
  note: (at: EpochMs) => void,
): { readonly at: EpochMs; readonly event: EventId } | null {
  const isToday = (at: EpochMs): boolean => at > day.from && at < day.to;
  const left = facts.findLast((f) => f.type === 'stay-ended');
  if (left) return isToday(left.occurred) ? { at: left.occurred, event: left.id } : null;
  if (!leaving || leaving.at <= t || !isToday(leaving.at)) return null;
  note(leaving.at);
  return leaving;
}

/** The entry that last told of a wish, with the usual way or with a goal. */
function wishOf(facts: readonly Fact[]): EventId | null {
  const told = facts.findLast(
    (f) =>
      (f.type === 'usual-way-recorded' &&
        (f.data as PayloadOf<typeof usualWayRecorded>).wish !== undefined) ||
      (f.type === 'goal-set' && (f.data as PayloadOf<typeof goalSet>).wish !== undefined),
  );
  return told?.id ?? null;
}
