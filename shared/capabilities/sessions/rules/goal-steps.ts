/** One step up or back from a goal. Ours, practice; every limit is the ward's. */
import type { EventId } from '../../../kernel/ids.ts';
import type { Activity, Goal } from '../values.ts';
import { demandOf, isUp, LADDER } from './activities.ts';
import { isWithin, mostByUsualWay, whatStops } from './goal-limits.ts';
import type { GoalInput } from './goals.ts';

export interface Step {
  readonly goal: Goal;
  readonly words: string;
  /** What sets the step's size, beside the sessions that carry it. */
  readonly facts: readonly EventId[];
}

/**
 * More distance up to the ceiling; at it or without one the next activity that is cleared, allowed
 * and within the usual way of moving; else one time more. Null when there is nothing left to add.
 */
export function stepUp(goal: Goal, input: GoalInput): Step | null {
  const limits = input.rules.activity;
  const ceiling = limits.walkCeilingMetres.value;
  if (goal.activity === 'walk' && goal.metres !== undefined && goal.metres < ceiling) {
    const more = Math.round(goal.metres * (1 + limits.distanceStep.value));
    const metres = Math.min(ceiling, Math.max(goal.metres + 1, more));
    return {
      goal: { ...goal, metres },
      words: `more distance, ${goal.metres} m to ${metres} m a day (at most ${ceiling} m)`,
      facts: [],
    };
  }
  const usual = input.usualWay && mostByUsualWay(input.usualWay.value);
  const next = LADDER.find(
    (a) => demandOf(a) > demandOf(goal.activity) && isWithin(a, usual) && whatStops(a, input) === null,
  );
  if (next !== undefined) return toActivity(goal, next, input);
  if (goal.timesUp < limits.timesUpMost.value) {
    const timesUp = goal.timesUp + 1;
    return { goal: { ...goal, timesUp }, words: `one time more, ${timesUp} times a day`, facts: [] };
  }
  return null;
}

/**
 * After an event a less demanding activity; after misses less of the same first: distance, then the
 * times beyond the ward's usual number. Null when there is nothing less that may be asked.
 */
export function stepBack(goal: Goal, after: 'event' | 'misses', input: GoalInput): Step | null {
  const limits = input.rules.activity;
  const lower = LADDER.toReversed().find(
    (a) => demandOf(a) < demandOf(goal.activity) && whatStops(a, input) === null,
  );
  const less = after === 'event' && lower !== undefined ? toActivity(goal, lower, input) : null;
  if (less) return less;
  const metres = goal.metres && Math.floor(goal.metres / (1 + limits.distanceStep.value));
  if (metres !== undefined && metres >= Math.max(1, goal.timesUp)) {
    return {
      goal: { ...goal, metres },
      words: `less distance, ${goal.metres} m to ${metres} m a day`,
      facts: [],
    };
  }
  if (goal.timesUp > limits.timesUp.value || (lower === undefined && goal.timesUp > 1)) {
    const timesUp = goal.timesUp - 1;
    return { goal: { ...goal, timesUp }, words: `one time less, ${timesUp} a day`, facts: [] };
  }
  return lower === undefined ? null : toActivity(goal, lower, input);
}

/** The same times of another activity; the distance is that of what was done safely, or none. */
function toActivity(goal: Goal, activity: Activity, { longestWalk, rules }: GoalInput): Step {
  const { timesUp, minutesOutOfBed } = goal;
  const walked = activity === 'walk' ? longestWalk : null;
  const metres = walked && Math.min(rules.activity.walkCeilingMetres.value, timesUp * walked.metres);
  return {
    goal: {
      activity,
      timesUp,
      ...(minutesOutOfBed === undefined || !isUp(activity) ? {} : { minutesOutOfBed }),
      ...(metres ? { metres } : {}),
    },
    words: `${activity.replaceAll('-', ' ')}, ${timesUp} times a day`,
    facts: walked ? [walked.fact] : [],
  };
}
