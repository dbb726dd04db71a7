/** The round as a screen asks for it. */
import { z } from 'zod';
import { because, taskPlan, visitView } from '../capabilities/board/view.ts';
import { bedId, stayId, wardId } from '../kernel/ids.ts';

const placed = {
  bed: bedId,
  label: z.string(),
  bay: z.string(),
  stay: stayId,
  visit: visitView.nullable(),
  yours: z.boolean(),
};
export const roundPage = z.strictObject({
  ward: wardId,
  position: z.number().int(),
  at: z.number(),
  /** In the order in which to go. */
  entries: z.array(
    z.strictObject({
      ...placed,
      reasons: z.array(
        because.extend({
          points: z.number(),
          at: z.number().nullable(),
          until: z.number().nullable(),
        }),
      ),
      points: z.number(),
      move: taskPlan.pick({ task: true, people: true, aid: true }),
      who: z.string(),
      notHigher: z.string().nullable(),
      changes: z.string(),
      askFirst: z.array(z.string()),
    }),
  ),
  /** Everybody else in a bed, each once, with why. */
  notListed: z.array(z.strictObject({ ...placed, kind: z.string(), because, until: z.string() })),
});
export type RoundPage = z.infer<typeof roundPage>;
