/**
 * What the board would say of a stay if one more entry were recorded, beside what it says without it.
 * Pure, and no other rules than the board's own: nothing is written, and nothing is promised, since
 * what others enter meanwhile counts too.
 */
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { helpKind, type HelpKind } from '../../dayplan/rules/help-changes.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import type { TaskPlan } from '../moving-view.ts';
import type { StayView } from '../view.ts';
import { evaluateStay } from './evaluate-stay.ts';

/** What a plan is shown by: the tier, how far to believe it, each task by day and by night, what to mind. */
export type PlanSide = Pick<
  StayView,
  'tier' | 'trust' | 'plan' | 'checkBeforeMoving' | 'cautions' | 'walkingSupport' | 'scope' | 'due'
>;
/** How one task's help would change. `words`: the same help with another item, side or caution. */
export interface MoveChange {
  readonly task: TaskPlan['task'];
  readonly by: 'day' | 'night';
  readonly change: HelpKind | 'words' | 'same';
}
export interface IfRecorded {
  /** The instant that both are of. */
  readonly at: EpochMs;
  readonly now: PlanSide;
  readonly would: PlanSide;
  /** In the order of the plan; empty where either side has no plan of tasks. */
  readonly moves: readonly MoveChange[];
}

/** `drafted` are the events the entry would append, numbered as the log would number them. */
export function ifRecorded(
  record: StayRecord,
  drafted: readonly LoggedEvent[],
  ward: WardState,
  calendar: WardCalendar,
  t: EpochMs,
): IfRecorded {
  const now = evaluateStay(record, ward, calendar, t).view;
  const longer = {
    ...record,
    version: record.version + drafted.length,
    events: [...record.events, ...drafted],
  };
  const would = evaluateStay(longer, ward, calendar, t).view;
  return { at: t, now: sideOf(now), would: sideOf(would), moves: movesOf(now, would) };
}

const sideOf = (view: StayView): PlanSide => ({
  tier: view.tier,
  trust: view.trust,
  plan: view.plan,
  checkBeforeMoving: view.checkBeforeMoving,
  cautions: view.cautions,
  walkingSupport: view.walkingSupport,
  scope: view.scope,
  due: view.due,
});

function movesOf(now: StayView, would: StayView): MoveChange[] {
  if (!now.plan || !would.plan) return [];
  const [was, will] = [now.plan, would.plan];
  return (['day', 'night'] as const).flatMap((by) =>
    will[by].map((plan) => {
      const before = was[by].find(({ task }) => task === plan.task);
      return { task: plan.task, by, change: before ? changeOf(before, plan) : 'words' };
    }),
  );
}

const changeOf = (was: TaskPlan, will: TaskPlan): MoveChange['change'] =>
  helpKind(was, will) ?? (inWords(was) === inWords(will) ? 'same' : 'words');
const inWords = ({ towards, with: items, cautions }: TaskPlan): string =>
  JSON.stringify([towards, items, cautions]);
