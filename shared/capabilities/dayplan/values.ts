import { z } from 'zod';

/** Why a visit that was taken is given back. */
export const giveBackReason = z.enum([
  'called-away',
  'not-needed',
  'needs-a-second-person',
  'by-mistake',
  'other',
]);
export type GiveBackReason = z.infer<typeof giveBackReason>;

/** What a huddle agrees that somebody does. Coded, so that no name or diagnosis stands in the ward's own stream. */
export const actionKind = z.enum([
  'check-again',
  'review-the-hold',
  'get-up-today',
  'ask-the-prescriber',
  'ask-the-therapist',
  'bring-a-second-person',
  'bring-or-mend-equipment',
  'prepare-leaving',
  'talk-with-the-person',
  'other',
]);
export type ActionKind = z.infer<typeof actionKind>;
export const actionOutcome = z.enum(['done', 'not-needed-any-more', 'not-possible']);
export type ActionOutcome = z.infer<typeof actionOutcome>;

/** Where somebody is expected from. */
export const arrivalFrom = z.enum(['home', 'emergency', 'ward', 'theatre', 'intensive-care', 'other']);

/** What can have changed for a person between two huddles; spoken of in this order. */
export const changeKind = z.enum([
  'happened',
  'arrived',
  'moved',
  'more-help',
  'other-help',
  'trust-lost',
  'hold-placed',
  'order-changed',
  'tier-down',
  'hold-ended',
  'less-help',
  'tier-up',
  'checked',
  'left',
]);
export type ChangeKind = z.infer<typeof changeKind>;
