/** What a property means by less help: between two views of one stay, task by task, by day and by night. */
import { aidCovers } from '../../handling/rules/help.ts';
import { people as peopleOrder } from '../../handling/values.ts';
import type { TaskPlan } from '../moving-view.ts';
import type { StayView } from '../view.ts';

const rank = (p: TaskPlan): number => peopleOrder.options.indexOf(p.people);
const inBrief = (p: TaskPlan): string =>
  `${p.hold ? 'HOLD ' : ''}${p.people} ${p.aid} (${p.because.map((b) => b.rule).join(', ')})`;

/** An aid below in the task's chain, or of another chain. */
const notCovered = (old: TaskPlan, now: TaskPlan): boolean =>
  !aidCovers(old.task, old.aid, now.aid) && !heldWithoutSupport(old, now);
/** A support of their own that an order lets them load no more is no support: the walk is held instead. */
const heldWithoutSupport = (old: TaskPlan, now: TaskPlan): boolean =>
  old.aid === 'walking-support' && now.hold && now.because.some(({ rule }) => rule === 'order/arm');
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

const TRUST = ['current', 're-check', 'not-known'];
const URGENCY = ['none', 'not-due', 'at-next-move', 'due', 'overdue'];
const START = ['may-start', 'ask-first', 'not-now'];

/** What the second view believes, clears or lets start that the first does not: tier and may-start. */
export function clearsMore(before: StayView, after: StayView): string[] {
  const out: string[] = [];
  if (before.scope.kind !== after.scope.kind) return out;
  if ((after.tier.notch ?? -1) > (before.tier.notch ?? -1)) {
    out.push(`tier ${before.tier.word} became ${after.tier.word}`);
  }
  if (before.mayStart && after.mayStart) {
    const [was, now] = [before.mayStart.word, after.mayStart.word];
    if (START.indexOf(now) < START.indexOf(was)) out.push(`start ${was} became ${now}`);
  }
  return out;
}

/** How much further the second view believes the plan, and how much later it asks for a check. */
export function lessWatched(before: StayView, after: StayView): string[] {
  const out: string[] = [];
  if (before.scope.kind !== after.scope.kind) return out;
  if (TRUST.indexOf(after.trust.state) < TRUST.indexOf(before.trust.state)) {
    out.push(`trust ${before.trust.state} became ${after.trust.state}`);
  }
  const [was, now] = [before.due, after.due];
  const later = was.state === now.state && was.at !== null && now.at !== null && now.at > was.at;
  if (URGENCY.indexOf(now.state) < URGENCY.indexOf(was.state) || later) {
    out.push(`due ${was.state} ${was.at} became ${now.state} ${now.at}`);
  }
  return out;
}
