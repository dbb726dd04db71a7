/** A plan in a few plain sentences, for where it is told as history or printed. Pure. */
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import type { Task } from '../../handling/values.ts';

const TASKS: readonly (readonly [Task, string])[] = [
  ['bed-chair', 'Bed to chair'],
  ['toilet', 'Toilet'],
  ['walk', 'Walk'],
];
const PEOPLE: Readonly<Record<TaskPlan['people'], string>> = {
  'on-own': 'on own',
  'stand-by': 'stand by',
  one: '1 person',
  two: '2 people',
  'three-or-more': '3 people or more',
};

/** "Bed to chair: 2 people, sling lift". A hold, and a plan that is no plan of the board, are said as such. */
export function planInWords(stay: StayView): string[] {
  if (stay.scope.kind === 'comfort') return ['Comfort plan'];
  if (!stay.plan) return ["Clinician's plan only"];
  const { day } = stay.plan;
  const unknown = stay.checkBeforeMoving ? ['Not checked there; if it could not wait'] : [];
  const moves = TASKS.flatMap(([task, words]) => {
    const plan = day.find((one) => one.task === task);
    return plan ? [`${words}: ${plan.hold ? 'HOLD; ' : ''}${PEOPLE[plan.people]}, ${aid(plan)}`] : [];
  });
  return [...unknown, ...moves];
}
const aid = (plan: TaskPlan): string => (plan.aid === 'none' ? 'no aid' : plan.aid.replaceAll('-', ' '));
