/**
 * Two looks at one stay that differ in a doubtful entry: the goal that asks for less, and no step up
 * that only one of them carries. Source: design, rule 2 (the safer stands).
 */
import { STAGE_MEANINGS } from '../../assessments/rules/protocol.ts';
import { demandOf } from '../../sessions/rules/activities.ts';
import { reasonsOf, whatStops, type Stop } from '../../sessions/rules/goal-limits.ts';
import type { Activity, Goal } from '../../sessions/values.ts';
import type { ProposalView, TodayView } from '../activity-view.ts';
import type { StayView } from '../view.ts';

/** `joined`: all that restricts in either of the two. */
export function withLesserGoal(joined: StayView, safer: StayView, told: StayView): StayView {
  const today = lesserToday(joined, safer.today, told.today);
  const proposal = today.goal && lesserProposal(joined, safer.proposal, told.proposal);
  return { ...joined, today, proposal };
}

function lesserToday(joined: StayView, safer: TodayView, told: TodayView): TodayView {
  const today = asks(told.goal) < asks(safer.goal) ? told : safer;
  const stops = today.goal ? stopsOf(joined, today.goal.activity) : [];
  if (stops.length === 0) return today;
  return { ...today, goal: null, goalProposed: false, met: null, because: reasonsOf(stops) };
}
const asks = (goal: Goal | null): number => (goal === null ? -1 : demandOf(goal.activity));

function lesserProposal(
  joined: StayView,
  safer: ProposalView | null,
  told: ProposalView | null,
): ProposalView | null {
  const back = [safer, told].find((p) => p?.step === 'back' && stopsOf(joined, p.goal.activity).length === 0);
  if (back) return back;
  const same = JSON.stringify(safer) === JSON.stringify(told) && safer !== null;
  const stands =
    same && joined.trust.state === 'current' && stopsOf(joined, safer.goal.activity).length === 0;
  return stands ? safer : null;
}

/** What the two looks stop together. Whatever asks for less is cleared in both when each cleared its own. */
function stopsOf({ holds, orders, plan }: StayView, activity: Activity): Stop[] {
  const limits = { cleared: new Set<string>(STAGE_MEANINGS), tierFact: null, holds, plan: plan?.day ?? [] };
  const activityOrders = orders.flatMap(({ event, order, at }) =>
    order.about === 'activity' ? [{ value: order.most, fact: event, at }] : [],
  );
  return [null, ...activityOrders].flatMap(
    (activityOrder) => whatStops(activity, { ...limits, activityOrder }) ?? [],
  );
}
