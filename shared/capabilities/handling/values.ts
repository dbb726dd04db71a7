import { z } from 'zod';

/** Where and when a person may go alone. Set by a nurse or therapist, never derived. */
export const onOwn = z.strictObject({
  where: z.array(z.enum(['room', 'toilet', 'ward'])).min(1),
  when: z.array(z.enum(['day', 'night'])).min(1),
});
export type OnOwn = z.infer<typeof onOwn>;

/** The tasks a plan speaks of. */
export const task = z.enum([
  'in-bed',
  'edge-of-bed',
  'bed-chair',
  'toilet',
  'lateral',
  'stand',
  'walk',
  'from-floor',
  'in-chair',
]);
export type Task = z.infer<typeof task>;

/** From least to most help. The words are shown, never the order. */
export const people = z.enum(['on-own', 'stand-by', 'one', 'two', 'three-or-more']);
export type People = z.infer<typeof people>;

/**
 * Classes of equipment. They are only partly ordered: each task declares its own chain
 * (handling/rules/help), and aids of different chains cannot be combined.
 */
export const aidClass = z.enum([
  'none',
  'walking-support',
  'belt',
  'seated-transfer-aid',
  'standing-aid',
  'slide-sheet',
  'lateral-transfer-aid',
  'sling-lift',
  'bariatric-lift',
]);
export type AidClass = z.infer<typeof aidClass>;
