import { z } from 'zod';
import { isoInstant } from '../../kernel/times.ts';

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

/** Why somebody goes to a person who is not the first on the list. Says nothing of who goes. */
export const insteadReason = z.enum([
  'the-person-asks',
  'a-nurse-asks',
  'a-therapist-asks',
  'already-in-the-bay',
  'second-person-free-now',
  'first-is-busy',
  'list-seems-wrong',
  /** By the accepted day plan it is theirs now. */
  'as-planned',
  'other',
]);
export type InsteadReason = z.infer<typeof insteadReason>;

/** SHA-256, hex. */
const digest = z.string().regex(/^[0-9a-f]{64}$/, '64 hexadecimal signs');
/** Which list somebody had before them: enough to make the same list again from the log. */
export const listSeen = z.strictObject({
  /** Position of the ward's log that the list knew. */
  position: z.number().int().min(1),
  /** The instant it was made for. */
  at: isoInstant,
  /** The weights that ranked it: version of the ward's rules document, hash of its group "round". */
  weights: z.strictObject({ version: z.number().int().min(1), hash: digest }),
  /** Hash of the list itself. */
  digest,
});
export type ListSeen = z.infer<typeof listSeen>;
/** What was done about somebody on the list, or beside it. */
export const listAct = z.enum(['taken', 'not-now', 'handed-over', 'given-back']);
export type ListAct = z.infer<typeof listAct>;
