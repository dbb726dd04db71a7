/** Which equipment the plan has for what was done, and whether it was used. Ours, practice. */
import type { TaskPlan } from '../../board/moving-view.ts';
import type { AidClass } from '../../handling/values.ts';
import type { Activity, AidNotUsedReason, Session } from '../values.ts';
import { TASK_OF } from './goal-limits.ts';

/** The plan has no equipment for stairs. */
const TASK_WITH_AID: typeof TASK_OF = { ...TASK_OF, stairs: null };

type Planned = Pick<TaskPlan, 'task' | 'aid'>;

/** Equipment that the plan has for these activities, each once, in their order; none where it has none. */
export function plannedAids(plan: readonly Planned[], activities: readonly Activity[]): AidClass[] {
  const tasks = activities.map((one) => TASK_WITH_AID[one]);
  const aids = tasks.flatMap((task) => plan.filter((one) => one.task === task).map(({ aid }) => aid));
  return [...new Set(aids)].filter((aid) => aid !== 'none');
}

/** What was planned and not used; null when it was. A lift that bears more is the lift that was planned. */
export function missedAid(planned: readonly AidClass[], used: AidClass): AidClass | null {
  const first = planned[0];
  if (first === undefined || planned.includes(used)) return null;
  return used === 'bariatric-lift' && planned.includes('sling-lift') ? null : first;
}

export interface NotUsed {
  readonly planned: AidClass;
  /** Null where nobody wrote down what was used instead. */
  readonly used: AidClass | null;
  /** Null where nobody said why. */
  readonly because: AidNotUsedReason | null;
}

/**
 * Whether the planned equipment of a session was not used: as whoever recorded it said, else from what was used
 * and the plan at that time. Null when it was used, or nothing was recorded of it.
 *
 * @param planThen the day plan in force when the session began; asked only where it is needed
 */
export function notUsedIn(session: Session, planThen: () => readonly Planned[] | null): NotUsed | null {
  const { aidNotUsed, help, activities, outcome } = session;
  if (aidNotUsed)
    return { planned: aidNotUsed.planned, used: help?.aid ?? null, because: aidNotUsed.because ?? null };
  if (outcome === 'not-done' || help === undefined) return null;
  const planned = missedAid(plannedAids(planThen() ?? [], activities), help.aid);
  return planned === null ? null : { planned, used: help.aid, because: null };
}

export interface NotUsedCount {
  readonly planned: AidClass;
  readonly because: AidNotUsedReason | null;
  readonly count: number;
}
/** By equipment and reason, what came most often first; "not said" is counted apart. */
export function countNotUsed(all: readonly NotUsed[]): NotUsedCount[] {
  const counts = new Map<string, { planned: AidClass; because: AidNotUsedReason | null; count: number }>();
  for (const { planned, because } of all) {
    const key = `${planned} ${because ?? ''}`;
    const one = counts.get(key) ?? { planned, because, count: 0 };
    counts.set(key, { ...one, count: one.count + 1 });
  }
  return [...counts.values()].toSorted(
    (a, b) =>
      b.count - a.count ||
      a.planned.localeCompare(b.planned, 'en') ||
      (a.because ?? '').localeCompare(b.because ?? '', 'en'),
  );
}
