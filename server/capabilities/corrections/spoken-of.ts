/** The entry that an entry speaks of, and the refusals that every way of speaking of one may meet. */
import * as events from '@footboard/shared/capabilities/corrections/events';
import type { StayRecord } from '@footboard/shared/capabilities/corrections/facts';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import type { Author } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import type { EventId } from '@footboard/shared/kernel/ids';
import { refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { isRefusal, knownStay } from '../stays/standing.ts';
import type { Standing } from '../stays/standing.ts';

/** What each entry that speaks of another is called. */
const VERBS: ReadonlyMap<string, string> = new Map([
  [events.addendumMade.name, 'an addendum'],
  [events.amendmentMade.name, 'an amendment'],
  [events.correctionMade.name, 'a correction'],
  [events.retractionMade.name, 'a retraction'],
  [events.entryConfirmed.name, 'a confirmation'],
  [events.entryCosigned.name, 'a second signature'],
]);

export interface Spoken {
  readonly standing: Standing;
  readonly entry: LoggedEvent;
}

/** A closed stay's entries may still be put right and signed. `field`: where the command names the entry. */
export function spokenOf(
  context: DecideContext,
  data: { readonly stay: Standing['record']['stay']; readonly target: EventId },
  field = '/target',
): Spoken | Refusal {
  const standing = knownStay(context, data.stay);
  if (isRefusal(standing)) return standing;
  const entry = standing.record.events.find((e) => e.id === data.target);
  if (!entry) {
    return refuse(
      'entry-unknown',
      'this stay has no entry with that id',
      "Open the person's timeline and choose the entry there.",
      field,
    );
  }
  return { standing, entry };
}

export const ownEntry = (entry: LoggedEvent, author: Author): boolean => entry.author.staff === author.staff;
export const isVerb = (entry: LoggedEvent): boolean => VERBS.has(entry.type);
export const isWithdrawn = (record: StayRecord, id: EventId): boolean =>
  effectiveFacts(record).retracted.has(id);

export const entryIsAChange = (entry: LoggedEvent, field = '/target'): Refusal =>
  refuse(
    'entry-is-a-change',
    `that entry is itself ${VERBS.get(entry.type)}`,
    'Speak of the original entry. A wrong correction is withdrawn, or made again.',
    field,
  );

export const notYours = (instead: string, field = '/target'): Refusal =>
  refuse('not-your-entry', 'someone else made that entry', instead, field);

export const entryWithdrawn = (field = '/target'): Refusal =>
  refuse(
    'entry-withdrawn',
    'that entry was withdrawn already',
    'Nothing to do. If it did happen, enter it again with the time it happened.',
    field,
  );
