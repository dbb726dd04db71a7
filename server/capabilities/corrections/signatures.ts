/**
 * The two signatures. A person stands by what was recorded under their name before anybody had
 * checked that it was them; a qualified person answers for an entry of agency staff or a student.
 */
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import * as events from '@footboard/shared/capabilities/corrections/events';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import { newEvent } from '@footboard/shared/kernel/event-type';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import { isRefusal, readsStay, stayStream } from '../stays/standing.ts';
import { entryIsAChange, entryWithdrawn, isVerb, notYours, ownEntry, spokenOf } from './spoken-of.ts';

const FIELD = '/event';

export const confirmEntry = decider({
  command: commands.confirmEntry,
  reads: readsStay,
  decide: ({ stay, event }, context) => {
    const spoken = spokenOf(context, { stay, target: event }, FIELD);
    if (isRefusal(spoken)) return spoken;
    const { standing, entry } = spoken;
    if (isVerb(entry)) return entryIsAChange(entry, FIELD);
    if (!ownEntry(entry, context.author)) {
      return notYours('Only the person it names may confirm it. Enter what you saw yourself.', FIELD);
    }
    if (!entry.source.unconfirmed) {
      return refuse(
        'nothing-to-confirm',
        'its author had signed in when it was recorded',
        'Nothing to do. It counts as it stands.',
        FIELD,
      );
    }
    const { retracted, confirmed } = effectiveFacts(standing.record);
    if (retracted.has(event)) return entryWithdrawn(FIELD);
    if (confirmed.has(event)) {
      return refuse(
        'already-confirmed',
        'you have stood by that entry already',
        'Nothing to do. If it was wrong, correct or withdraw it.',
        FIELD,
      );
    }
    return accept(newEvent(events.entryConfirmed, stayStream(stay), { target: event }));
  },
});

export const cosignEntry = decider({
  command: commands.cosignEntry,
  reads: readsStay,
  decide: ({ stay, event }, context) => {
    const spoken = spokenOf(context, { stay, target: event }, FIELD);
    if (isRefusal(spoken)) return spoken;
    const { standing, entry } = spoken;
    if (!entry.source.cosign) {
      return refuse(
        'nothing-to-cosign',
        "its author is one of the ward's own staff",
        'Nothing to do. It counts as it stands.',
        FIELD,
      );
    }
    if (ownEntry(entry, context.author)) {
      return refuse(
        'cosign-by-another',
        'that entry is your own',
        'Ask another nurse or therapist of the ward to sign it.',
        FIELD,
      );
    }
    const own = context.ward?.staff.get(context.author.staff)?.standing ?? 'own';
    if (own !== 'own') {
      return refuse(
        'cosign-by-another',
        `your own entries wait for a second signature (${own})`,
        "Ask a nurse or therapist of the ward's own staff to sign it.",
        FIELD,
      );
    }
    const { retracted, cosigned } = effectiveFacts(standing.record);
    if (retracted.has(event)) return entryWithdrawn(FIELD);
    if (cosigned.has(event)) {
      return refuse('already-cosigned', 'somebody has signed it already', 'Nothing to do.', FIELD);
    }
    return accept(newEvent(events.entryCosigned, stayStream(stay), { target: event }));
  },
});
