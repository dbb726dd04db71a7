/** What stops a goal from asking for an activity, each with its reason. Source: design, goals row. */
import type { EventId } from '../../../kernel/ids.ts';
import type { Because } from '../../board/because.ts';
import type { HoldView, TaskPlan } from '../../board/moving-view.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import type { Task } from '../../handling/values.ts';
import type { UsualWay } from '../../stays/values.ts';
import type { Activity } from '../values.ts';
import { demandOf, isCleared, isHeld, isOrdered } from './activities.ts';

export interface GoalLimits {
  /** Meanings of the stages cleared; null when the tier is not known. */
  readonly cleared: ReadonlySet<string> | null;
  readonly tierFact: EventId | null;
  readonly holds: readonly HoldView[];
  /** Today's plan: a goal never asks for a task that it holds. */
  readonly plan: readonly TaskPlan[];
  readonly activityOrder: PlanInput['orders']['activity'];
}

export interface Stop {
  readonly rule: string;
  readonly facts: readonly EventId[];
  /** What the words say of this activity alone. */
  readonly of: string;
}

/** Null when nothing stops it. */
export function whatStops(activity: Activity, limits: GoalLimits): Stop | null {
  const { cleared, tierFact, holds, activityOrder: order } = limits;
  if (cleared === null || !isCleared(activity, cleared)) {
    return { rule: 'goal/not-cleared', facts: tierFact ? [tierFact] : [], of: plain(activity) };
  }
  const hold = holds.find((h) => isHeld(activity, h.scope));
  if (hold) return { rule: 'goal/hold', facts: [hold.event], of: plain(hold.scope) };
  if (order && !isOrdered(activity, order.value)) {
    return { rule: 'goal/order', facts: [order.fact], of: plain(order.value) };
  }
  const task = TASK_OF[activity];
  const held = task === null ? undefined : limits.plan.find((p) => p.task === task && p.hold);
  if (!held) return null;
  return {
    rule: 'goal/task-held',
    facts: [...new Set(held.because.flatMap((b) => b.facts))],
    of: plain(held.task),
  };
}

const WORDS: Readonly<Record<string, (of: readonly string[]) => string>> = {
  'goal/not-cleared': (of) => `Not cleared now: ${of.join(', ')}`,
  'goal/hold': (of) => `Hold on ${of.join(', ')}`,
  'goal/order': (of) => `Order: activity up to ${of.join(', ')}`,
  'goal/task-held': (of) => `The plan holds: ${of.join(', ')}`,
};

/** Every reason once, in the order met, with all that it stops. */
export function reasonsOf(stops: readonly Stop[]): Because[] {
  return [...new Set(stops.map((s) => s.rule))].map((rule) => {
    const same = stops.filter((s) => s.rule === rule);
    return {
      rule,
      facts: [...new Set(same.flatMap((s) => s.facts))],
      words: WORDS[rule]!([...new Set(same.map((s) => s.of))]),
    };
  });
}

/** The task of the plan that an activity is; null where the plan has none. A march is on the spot, before walking is cleared. */
export const TASK_OF: Readonly<Record<Activity, Task | null>> = {
  'bed-exercise': null,
  'back-raised': null,
  'edge-sit': 'edge-of-bed',
  stand: 'stand',
  chair: 'bed-chair',
  'lifted-to-chair': 'bed-chair',
  march: 'stand',
  walk: 'walk',
  stairs: 'walk',
  toilet: 'toilet',
};

/** The most that is asked of someone who moved this way before; null for no cap. Ours, practice. */
export function mostByUsualWay(usual: UsualWay): Activity | null {
  if (usual.moves === 'bed' || usual.transfers === 'lifted') return 'edge-sit';
  return usual.moves === 'wheelchair' ? 'chair' : null;
}
export const isWithin = (activity: Activity, most: Activity | null): boolean =>
  most === null || demandOf(activity) <= demandOf(most);

const plain = (code: string): string => code.replaceAll('-', ' ');
