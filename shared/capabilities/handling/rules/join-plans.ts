/**
 * The plan that asks at least as much as each of two plans for the same person, task by task. Where
 * their aids cannot be combined the task is a HOLD: ask. Source: design, rule 1.
 */
import type { Because } from '../../board/because.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import { aidClass } from '../values.ts';
import { aidCovers, atLeast, morePeople } from './help.ts';

export const samePlan = (a: TaskPlan, b: TaskPlan): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

/** Whether `a` asks for something in its task that `b` does not: a hold, more people, an aid that b's does not cover. */
export const asksMore = (a: TaskPlan, b: TaskPlan): boolean =>
  (a.hold && !b.hold) || !atLeast(b.people, a.people) || !aidCovers(a.task, a.aid, b.aid);

export function joinPlans(a: TaskPlan, b: TaskPlan): TaskPlan {
  if (samePlan(a, b)) return a;
  const aAid = aidCovers(a.task, b.aid, a.aid);
  const bAid = aidCovers(a.task, a.aid, b.aid);
  const cannotCombine = !aAid && !bAid;
  const later = aidClass.options.indexOf(a.aid) > aidClass.options.indexOf(b.aid) ? a : b;
  const aided = aAid ? a : bAid ? b : later;
  return {
    task: a.task,
    hold: a.hold || b.hold || cannotCombine,
    people: morePeople(a.people, b.people),
    aid: aided.aid,
    with: [...new Set([...a.with, ...b.with])],
    towards: a.towards === b.towards ? a.towards : null,
    cautions: [
      ...(cannotCombine ? [`Aids that cannot be combined (${plain(a.aid)}, ${plain(b.aid)}): ask`] : []),
      ...new Set([...a.cautions, ...b.cautions]),
    ],
    because: joinReasons(a.because, b.because),
  };
}

/** Each reason once, those of the first list first. */
export function joinReasons(a: readonly Because[], b: readonly Because[]): Because[] {
  const known = new Set(a.map((r) => JSON.stringify(r)));
  return [...a, ...b.filter((r) => !known.has(JSON.stringify(r)))];
}

const plain = (code: string): string => code.replaceAll('-', ' ');
