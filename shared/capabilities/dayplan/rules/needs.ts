/**
 * Who needs hands or a lift today: one rule for the huddle and for the counts at the top of the wall.
 * Asked of the moves that must happen on any day. Standing and walking are not among them: nobody
 * walks in a lift, and where they are not cleared they are left to a therapist's session.
 */
import type { TaskPlan } from '../../board/moving-view.ts';
import type { Task } from '../../handling/values.ts';

/** Moves out of bed, then the others, with the words of the tasks. */
export const OUT_OF_BED: readonly Task[] = ['edge-of-bed', 'bed-chair', 'toilet'];
const MUST_HAPPEN: readonly Task[] = [...OUT_OF_BED, 'in-bed', 'lateral'];

const isLifted = ({ aid }: TaskPlan): boolean => aid === 'sling-lift' || aid === 'bariatric-lift';
const isForTwo = ({ people }: TaskPlan): boolean => people === 'two' || people === 'three-or-more';

/** Moves that must happen, in that order; one on hold does not. */
const moves = (plan: readonly TaskPlan[]): TaskPlan[] =>
  MUST_HAPPEN.flatMap((task) => plan.find((p) => p.task === task && !p.hold) ?? []);

export const liftedMoves = (plan: readonly TaskPlan[]): TaskPlan[] => moves(plan).filter(isLifted);
export const movesForTwo = (plan: readonly TaskPlan[]): TaskPlan[] => moves(plan).filter(isForTwo);
export const needsTwoOrLift = (plan: readonly TaskPlan[]): boolean =>
  moves(plan).some((p) => isForTwo(p) || isLifted(p));
