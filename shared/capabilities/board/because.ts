import { z } from 'zod';
import { eventId, type EventId } from '../../kernel/ids.ts';

/** Why a thing is shown: the rule that produced it, the facts it stands on, and plain words. */
export const because = z.strictObject({
  rule: z.string(),
  facts: z.array(eventId),
  words: z.string(),
});
export type Because = z.infer<typeof because>;

/** The entry that a reason stands on, where there is one. */
export const ifAny = (fact: EventId | null | undefined): EventId[] => (fact ? [fact] : []);
