/** Near misses and strain, told by staff apart from the record. Shapes of their own addresses. */
import { z } from 'zod';
import { freeText } from '../kernel/command-type.ts';
import { opaqueId, staffId, wardId } from '../kernel/ids.ts';

export const concernKind = z.enum(['near-miss', 'strain']);
export type ConcernKind = z.infer<typeof concernKind>;

/** What lay behind it. Our own list, from why lifts go unused (users' job 5b, S79) and common practice, no source. */
export const concernAbout = z.enum([
  'one-pair-of-hands',
  'aid-not-to-hand',
  'aid-faulty',
  'no-room',
  'moved-unexpectedly',
  'plan-did-not-fit',
  'pressed-for-time',
  'other',
]);
export type ConcernAbout = z.infer<typeof concernAbout>;

const concernId = opaqueId;
export const tellConcern = z.strictObject({
  /** Made by the screen at random, so that a second tap is the same telling. */
  concern: concernId,
  kind: concernKind,
  about: concernAbout.optional(),
  /** The telling that this one says more of. */
  adds: concernId.optional(),
  /** Only where whoever tells it chose so. */
  named: z.boolean().default(false),
  words: freeText.optional(),
});
export type TellConcern = z.infer<typeof tellConcern>;

export const concernList = z.strictObject({
  ward: wardId,
  /** The newest first, of the last year. `at` is the full hour it was told in (epoch ms). */
  concerns: z.array(
    z.strictObject({
      concern: concernId,
      at: z.number().int(),
      kind: concernKind,
      about: z.array(concernAbout),
      words: z.array(z.string()),
      /** Null where nobody chose to be named. */
      by: z.strictObject({ staff: staffId, name: z.string() }).nullable(),
    }),
  ),
});
export type ConcernList = z.infer<typeof concernList>;

export const concernCounts = z.strictObject({
  ward: wardId,
  /** Over so many days up to now. */
  days: z.number().int(),
  kinds: z.array(
    z.strictObject({
      kind: concernKind,
      count: z.number().int(),
      /** A reason that stands behind fewer than `fewest` is not told apart: it could point at a person. */
      about: z.array(z.strictObject({ about: concernAbout, count: z.number().int() })),
    }),
  ),
  fewest: z.number().int(),
});
export type ConcernCounts = z.infer<typeof concernCounts>;
