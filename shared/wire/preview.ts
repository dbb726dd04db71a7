/** What an entry that is not recorded yet would make of a stay, as a screen asks for it. */
import { z } from 'zod';
import { taskPlan } from '../capabilities/board/moving-view.ts';
import { stayView } from '../capabilities/board/view.ts';
import { stayId, wardId } from '../kernel/ids.ts';

const planSide = stayView.pick({
  tier: true,
  trust: true,
  plan: true,
  checkBeforeMoving: true,
  cautions: true,
  walkingSupport: true,
  scope: true,
  due: true,
});

/** Nothing is recorded: `would` is what the rules would make of it with all that is known at `at`. */
export const planPreview = z.strictObject({
  ward: wardId,
  stay: stayId,
  /** Version of the stay's stream that both sides rest on. */
  version: z.number().int(),
  at: z.number().int(),
  now: planSide,
  would: planSide,
  /** Task by task, by day and by night. `words`: the same help with another item, side or caution. */
  moves: z.array(
    z.strictObject({
      task: taskPlan.shape.task,
      by: z.enum(['day', 'night']),
      change: z.enum(['more-help', 'less-help', 'other-help', 'words', 'same']),
    }),
  ),
  /** Whether the entry would stand as an aide's until its author signs it: it can then only raise help. */
  unconfirmed: z.boolean(),
});
export type PlanPreview = z.infer<typeof planPreview>;
