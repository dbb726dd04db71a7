import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { eventId, textRef } from '../../kernel/ids.ts';

export const correctionReason = z.enum([
  'wrong-person',
  'never-happened',
  'wrong-value',
  'wrong-time',
  'said-more-later',
  'unclear',
]);

/** Adds to an entry; the entry stands. */
export const addendumMade = eventType('addendum-made', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ target: eventId, text: textRef, reason: correctionReason }),
  words: (p, n) => `Addendum: ${n.text(p.text)}`,
});
/** Clarifies the wording of an entry; its facts stand. */
export const amendmentMade = eventType('amendment-made', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ target: eventId, text: textRef, reason: correctionReason }),
  words: (p, n) => `Amendment: ${n.text(p.text)}`,
});
/**
 * Replaces a wrong fact by a right one of the same type. `replacement` is checked against that
 * type's own schema when the command is decided.
 */
export const correctionMade = eventType('correction-made', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    target: eventId,
    type: z.string().min(1).max(60),
    schemaVersion: z.number().int().min(1),
    replacement: z.json(),
    /** When the corrected fact really occurred, if that was the mistake. */
    occurred: z.string().optional(),
    reason: correctionReason,
    text: textRef.optional(),
  }),
  words: (p, n) => `Correction (${p.reason.replaceAll('-', ' ')})${p.text ? `: ${n.text(p.text)}` : ''}`,
});
/** Withdraws an entry: wrong person, or it never happened. The entry stays readable as withdrawn. */
export const retractionMade = eventType('retraction-made', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ target: eventId, reason: correctionReason, text: textRef.optional() }),
  words: (p, n) => `Retraction (${p.reason.replaceAll('-', ' ')})${p.text ? `: ${n.text(p.text)}` : ''}`,
});
/**
 * Its author stands by an entry that was recorded under a name nobody had checked. From then on it
 * counts as theirs, under the same rule as a correction: see rules/effective.ts.
 */
export const entryConfirmed = eventType('entry-confirmed', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ target: eventId }),
  words: () => 'Entry confirmed by its author',
});
/**
 * Somebody qualified answers with their name for an entry of agency staff or a student. It counted
 * from the start: this changes nothing but what the timeline says.
 */
export const entryCosigned = eventType('entry-cosigned', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ target: eventId }),
  words: () => 'Entry co-signed',
});
export const correctionEvents = [
  addendumMade,
  amendmentMade,
  correctionMade,
  retractionMade,
  entryConfirmed,
  entryCosigned,
] as const;
