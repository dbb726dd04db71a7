import { z } from 'zod';

export const triggerKind = z.enum([
  'arrival',
  'return-from-surgery',
  'return-from-dialysis',
  'sedation',
  'block-on',
  'block-off',
  'fall',
  'faint',
  'seizure',
  'low-glucose',
  'bleed',
  'transfusion',
  'new-symptom',
  'new-confusion',
  'order-change',
  'attachment-change',
  'sheath-out',
  'suspected-clot',
  'failed-attempt',
  'step-down-from-intensive-care',
  /** Anyone's "look again before the next move", with no further reason. */
  'asked-to-look-again',
  /** "The board is wrong": what it says of this person does not fit what somebody sees. Counted. */
  'board-wrong',
  /** Derived from the early-warning score where the ward turned that on; nobody records it. */
  'early-warning-rise',
]);
export type TriggerKind = z.infer<typeof triggerKind>;
/** What a person may record as a trigger. */
export const recordedTriggerKind = triggerKind.exclude(['early-warning-rise']);

export const holdScope = z.enum([
  'walking',
  'standing',
  'out-of-bed',
  'raising-the-back',
  'all-including-turning',
]);
export type HoldScope = z.infer<typeof holdScope>;

export const holdReason = z.enum([
  'waiting-for-review',
  'unstable',
  'bleeding',
  'fracture-unclear',
  'clot-suspected',
  'after-fall',
  'after-procedure',
  'order',
  'other',
]);

export const limb = z.enum(['left-leg', 'right-leg', 'left-arm', 'right-arm']);
export type Limb = z.infer<typeof limb>;

/** The three plain terms; a number the prescriber gave is shown and never inferred. */
export const weightBearing = z.enum(['none', 'limited', 'unrestricted']);
export type WeightBearing = z.infer<typeof weightBearing>;

export const precaution = z.enum(['hip', 'spine', 'sternum']);
export type Precaution = z.infer<typeof precaution>;

/** One question an order answers. A later order replaces an earlier one on the same question only. */
export const order = z.discriminatedUnion('about', [
  z.strictObject({
    about: z.literal('activity'),
    /** The most the prescriber allows. */
    most: z.enum(['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit']),
  }),
  z.strictObject({
    about: z.literal('weight-bearing'),
    limb,
    bears: weightBearing,
    limit: z
      .union([
        z.strictObject({ percent: z.number().min(0).max(100) }),
        z.strictObject({ kg: z.number().min(0).max(250) }),
      ])
      .optional(),
  }),
  z.strictObject({ about: z.literal('precaution'), precaution, on: z.boolean() }),
  z.strictObject({ about: z.literal('brace'), on: z.boolean() }),
  z.strictObject({
    about: z.literal('oxygen-target'),
    low: z.number().min(60).max(100),
    high: z.number().min(60).max(100),
  }),
]);
export type Order = z.infer<typeof order>;
