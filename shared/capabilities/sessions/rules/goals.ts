/**
 * The day's goal: what a person set, else the rules' proposal. It starts from the usual way of
 * moving; the tier, holds and orders only cap it, so it never asks for an activity whose stage is
 * not cleared. Source: design, goals row (doses in the users' research; the rest ours).
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { Because, HoldView, TaskPlan } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import type { Task } from '../../handling/values.ts';
import type { UsualWay } from '../../stays/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { goalSet } from '../events.ts';
import type { Activity, Goal } from '../values.ts';
import { demandOf, isCleared, isHeld, isOrdered } from './activities.ts';

export interface GoalInput {
  /** Meanings of the stages cleared; null when the tier is not known. */
  readonly cleared: ReadonlySet<string> | null;
  readonly tierFact: EventId | null;
  readonly holds: readonly HoldView[];
  /** Today's plan: a goal never asks for a task that it holds. */
  readonly plan: readonly TaskPlan[];
  readonly activityOrder: PlanInput['orders']['activity'];
  readonly usualWay: { readonly value: UsualWay; readonly fact: EventId } | null;
  /** Longest walk done without anything going wrong, metres. */
  readonly longestWalk: { readonly metres: number; readonly fact: EventId } | null;
  /** The last goal-set fact. */
  readonly set: Fact<PayloadOf<typeof goalSet>> | null;
  readonly rules: RulesDocument;
}
export interface GoalToday {
  readonly goal: Goal | null;
  readonly proposed: boolean;
  readonly because: Because[];
}

/** Proposals from the most demanding down; the first that is allowed is taken. */
const PROPOSALS: readonly Activity[] = ['walk', 'chair', 'stand', 'edge-sit', 'back-raised'];
const TIMES_A_DAY = 3;

export function goalToday(input: GoalInput): GoalToday {
  const { cleared, set } = input;
  if (cleared === null) {
    return {
      goal: null,
      proposed: false,
      because: [say('goal/not-known', [], 'No goal before the first check')],
    };
  }
  const stopped = (activity: Activity): Because | null => whatStops(activity, input, cleared);
  if (set) {
    const { goal } = set.data;
    const stop = stopped(goal.activity);
    if (!stop) {
      return { goal, proposed: false, because: [say('goal/set', [set.id], 'Set by a person')] };
    }
    const lesser = propose(input, stopped);
    const words = `The goal that was set asks for ${plain(goal.activity)}: ${stop.words.toLowerCase()}`;
    return {
      ...lesser,
      because: [say('goal/capped', [set.id, ...stop.facts], words), ...lesser.because],
    };
  }
  return propose(input, stopped);
}

function propose(input: GoalInput, stopped: (activity: Activity) => Because | null): GoalToday {
  const usual = input.usualWay && mostByUsualWay(input.usualWay.value);
  const because: Because[] = [];
  for (const activity of PROPOSALS) {
    if (usual && demandOf(activity) > demandOf(usual)) continue;
    const stop = stopped(activity);
    if (stop) {
      if (because.length === 0) because.push(stop);
      continue;
    }
    const facts = input.tierFact ? [input.tierFact] : [];
    because.unshift(
      say('goal/proposed', facts, `Proposed from what is cleared: ${TIMES_A_DAY} times ${plain(activity)}`),
    );
    if (usual && input.usualWay) {
      because.push(
        say('goal/usual-way', [input.usualWay.fact], `Usual way of moving: at most ${plain(usual)} asked`),
      );
    }
    return { goal: goalFor(activity, input, because), proposed: true, because };
  }
  return { goal: null, proposed: false, because };
}

function goalFor(activity: Activity, { longestWalk, rules }: GoalInput, because: Because[]): Goal {
  if (activity !== 'walk' || !longestWalk) return { activity, timesUp: TIMES_A_DAY };
  const ceiling = rules.activity.walkCeilingMetres;
  const metres = Math.min(ceiling.value, TIMES_A_DAY * longestWalk.metres);
  because.push(
    say(
      'goal/distance',
      [longestWalk.fact],
      `${TIMES_A_DAY} times the longest walk done safely (${longestWalk.metres} m), at most ${ceiling.value} m (${ceiling.source})`,
    ),
  );
  return { activity, timesUp: TIMES_A_DAY, metres };
}

function whatStops(activity: Activity, input: GoalInput, cleared: ReadonlySet<string>): Because | null {
  if (!isCleared(activity, cleared)) {
    const facts = input.tierFact ? [input.tierFact] : [];
    return say('goal/not-cleared', facts, `${capital(plain(activity))} is not cleared now`);
  }
  const hold = input.holds.find((h) => isHeld(activity, h.scope));
  if (hold) return say('goal/hold', [hold.event], `Hold on ${plain(hold.scope)}`);
  const order = input.activityOrder;
  if (order && !isOrdered(activity, order.value)) {
    return say('goal/order', [order.fact], `Order: activity up to ${plain(order.value)}`);
  }
  const task = TASK_OF[activity];
  const held = task === null ? undefined : input.plan.find((p) => p.task === task && p.hold);
  return held
    ? say(
        'goal/task-held',
        [...new Set(held.because.flatMap((b) => b.facts))],
        `The plan holds: ${plain(held.task)}`,
      )
    : null;
}

/** The task of the plan that an activity is. */
const TASK_OF: Readonly<Record<Activity, Task | null>> = {
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

/** The most that a goal asks of someone who moved this way before; null for no cap. Ours, practice. */
function mostByUsualWay(usual: UsualWay): Activity | null {
  if (usual.moves === 'bed' || usual.transfers === 'lifted') return 'edge-sit';
  return usual.moves === 'wheelchair' ? 'chair' : null;
}

const plain = (code: string): string => code.replaceAll('-', ' ');
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const say = (rule: string, facts: EventId[], words: string): Because => ({ rule, facts, words });
