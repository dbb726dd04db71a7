/** What a property means by less help: between two views of one stay, task by task, by day and by night. */
import { aidCovers } from '../../handling/rules/help.ts';
import { people as peopleOrder } from '../../handling/values.ts';
import type { TaskPlan } from '../moving-view.ts';
import type { StayView } from '../view.ts';

const rank = (p: TaskPlan): number => peopleOrder.options.indexOf(p.people);
const inBrief = (p: TaskPlan): string =>
  `${p.hold ? 'HOLD ' : ''}${p.people} ${p.aid} (${p.because.map((b) => b.rule).join(', ')})`;

/** An aid below in the task's chain, or of another chain. */
const notCovered = (old: TaskPlan, now: TaskPlan): boolean => !aidCovers(old.task, old.aid, now.aid);
/** An aid below in the task's chain: where the way of moving changes, aids may be of different chains. */
export const lesserAid = (old: TaskPlan, now: TaskPlan): boolean =>
  now.aid !== old.aid && (now.aid === 'none' || aidCovers(old.task, now.aid, old.aid));

/** Every task for which the second view asks less than the first: no hold where there was one, fewer people, or less of an aid. */
export function lessHelp(before: StayView, after: StayView, lessAid = notCovered): string[] {
  if (!before.plan || !after.plan) return [];
  const less: string[] = [];
  for (const part of ['day', 'night'] as const) {
    for (const old of before.plan[part]) {
      const now = after.plan[part].find((p) => p.task === old.task)!;
      if ((old.hold && !now.hold) || rank(now) < rank(old) || lessAid(old, now)) {
        less.push(`${part} ${old.task}: ${inBrief(old)} became ${inBrief(now)}`);
      }
    }
  }
  if (after.onOwn && !before.onOwn) less.push('on own appeared');
  return less;
}
