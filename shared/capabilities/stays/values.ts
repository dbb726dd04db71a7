import { z } from 'zod';

/** How the person moved before this illness; goals and decline are measured against it. */
export const usualWay = z.strictObject({
  moves: z.enum(['walks', 'frame', 'wheelchair', 'bed']),
  transfers: z.enum(['alone', 'helped', 'lifted']),
  stairs: z.enum(['yes', 'no', 'not known']).default('not known'),
});
export type UsualWay = z.infer<typeof usualWay>;

/** kg; 20 to 500 takes in every adult and catches pounds or grams typed by mistake only by the screen's echo in both units. */
export const weight = z.strictObject({
  kg: z.number().min(20, 'body weight is 20 to 500 kg').max(500, 'body weight is 20 to 500 kg'),
  how: z.enum(['measured', 'estimated']),
});
export type Weight = z.infer<typeof weight>;

/** What the default protocol does not cover (design: scope). */
export const fence = z.enum([
  'under-18',
  'pregnancy-from-20-weeks-or-epidural',
  'ventilated-or-vasopressors',
  'unstable-spine-pelvis-or-long-bone',
  'traction',
  'open-head-or-lumbar-drain',
  'femoral-line-or-sheath',
]);
export type Fence = z.infer<typeof fence>;

/** What walls say of the person: as much as the ward's walls say of everybody, or nothing. */
export const wallShowing = z.enum(['as-ward', 'nothing']);
export type WallShowing = z.infer<typeof wallShowing>;

export const attachmentKind = z.enum([
  'iv-line',
  'urinary-catheter',
  'chest-drain',
  'wound-drain',
  'feeding-tube',
  'oxygen-wall',
  'oxygen-cylinder',
  'monitor',
  'other',
]);
export type AttachmentKind = z.infer<typeof attachmentKind>;
