import type { EpochMs } from '../../../kernel/times.ts';
import type { Because, TaskPlan } from '../../board/view.ts';
import { task } from '../values.ts';
import type { PlanInput } from './types.ts';

export interface StayPlan {
  /** One plan a task, in the order of the task list. */
  readonly day: TaskPlan[];
  readonly night: TaskPlan[];
  readonly checkBeforeMoving: boolean;
  readonly cautions: { words: string; because: Because[] }[];
  /** The next instant at which this plan can change with no new fact; null when there is none. */
  readonly nextChange: EpochMs | null;
}

export function planStay(_input: PlanInput): StayPlan {
  const unknown = (): TaskPlan[] =>
    task.options.map((t) => ({
      task: t,
      hold: true,
      people: 'three-or-more',
      aid: 'bariatric-lift',
      with: [],
      towards: null,
      cautions: [],
      because: [],
    }));
  return { day: unknown(), night: unknown(), checkBeforeMoving: true, cautions: [], nextChange: null };
}
