/**
 * The four verbs, and the two signatures (signatures.ts). Nothing is overwritten: each is an entry of its own with author and reason, and the
 * original stays readable. Nobody who may not let a person go freer does so by correcting.
 */
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import * as events from '@footboard/shared/capabilities/corrections/events';
import type { Fact, StayRecord } from '@footboard/shared/capabilities/corrections/facts';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import {
  replacingMayLowerHelp,
  takingOutMayLowerHelp,
} from '@footboard/shared/capabilities/corrections/rules/lowers-help';
import { eventTypeNamed } from '@footboard/shared/capabilities/registry';
import { isQualified } from '@footboard/shared/kernel/author';
import type { Author } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import { toEpoch } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { isRefusal, readsStay, sayAt, stayStream } from '../stays/standing.ts';
import { fitReplacement } from './replacement.ts';
import { confirmEntry, cosignEntry } from './signatures.ts';
import {
  entryIsAChange,
  entryWithdrawn,
  isVerb,
  isWithdrawn,
  notYours,
  ownEntry,
  spokenOf,
} from './spoken-of.ts';
import type { Spoken } from './spoken-of.ts';

const PLACEMENT: ReadonlySet<string> = new Set(['stay-begun', 'stay-moved', 'stay-ended']);

const loweringNeedsQualified = (): Refusal =>
  refuse(
    'lowering-needs-qualified',
    'without that entry as it stands, the plan might ask for less help',
    'Ask a nurse or therapist to do it. Anything safer you can enter yourself: a trigger, a hold, a session.',
    '/target',
  );

/** Where a person was is told by what was done about it, never by rewriting it. */
const placementStands = (): Refusal =>
  refuse(
    'placement-stands',
    'arrivals, moves and leaving guard the beds and are not rewritten',
    'Move the person to the right bed or end the stay; say what happened in an addendum.',
    '/target',
  );

/** An addendum or amendment changes no fact: on one's own entry, or by a qualified person. */
function annotating(
  context: DecideContext,
  data: Parameters<typeof spokenOf>[1],
  instead: string,
): Spoken | Refusal {
  const spoken = spokenOf(context, data);
  if (isRefusal(spoken)) return spoken;
  if (isVerb(spoken.entry)) return entryIsAChange(spoken.entry);
  if (!ownEntry(spoken.entry, context.author) && !isQualified(context.author)) return notYours(instead);
  return spoken;
}

const makeAddendum = decider({
  command: commands.makeAddendum,
  reads: readsStay,
  decide: ({ stay, target, reason, text }, context) => {
    const spoken = annotating(
      context,
      { stay, target },
      'Record what you saw yourself as an entry of your own.',
    );
    if (isRefusal(spoken)) return spoken;
    return accept(
      newEvent(events.addendumMade, stayStream(stay), {
        target,
        reason,
        text: context.keep(`stay/${stay}`, text),
      }),
    );
  },
});

const makeAmendment = decider({
  command: commands.makeAmendment,
  reads: readsStay,
  decide: ({ stay, target, reason, text }, context) => {
    const spoken = annotating(
      context,
      { stay, target },
      'Ask whoever made the entry, or a nurse, to clarify it.',
    );
    if (isRefusal(spoken)) return spoken;
    return accept(
      newEvent(events.amendmentMade, stayStream(stay), {
        target,
        reason,
        text: context.keep(`stay/${stay}`, text),
      }),
    );
  },
});

/** Charge nurse and records may put right what another entered. Source: users' roles table. */
const mayChangeOthers = ({ role }: Author): boolean => role === 'charge-nurse' || role === 'records';

const makeCorrection = decider({
  command: commands.makeCorrection,
  reads: readsStay,
  decide: ({ stay, target, reason, replacement, occurredAt, text }, context) => {
    const spoken = spokenOf(context, { stay, target });
    if (isRefusal(spoken)) return spoken;
    const { standing, entry } = spoken;
    if (isVerb(entry)) return entryIsAChange(entry);
    if (PLACEMENT.has(entry.type)) return placementStands();
    if (isWithdrawn(standing.record, target)) return entryWithdrawn();
    if (!ownEntry(entry, context.author) && !mayChangeOthers(context.author)) {
      return notYours('Ask whoever made the entry, the charge nurse or the records office to correct it.');
    }
    const occurred = occurredAt === undefined ? null : toEpoch(occurredAt);
    if (occurred !== null) {
      const { began, ended } = standing;
      if (occurred < began || occurred > context.now || (ended !== null && occurred >= ended)) {
        return refuse(
          'corrected-time-outside-stay',
          `the stay runs from ${sayAt(context, began)} to ${ended === null ? 'now' : sayAt(context, ended)}`,
          'Give a time within the stay. An entry of another stay is withdrawn here and entered there.',
          '/occurredAt',
        );
      }
    }
    const now = effectiveFacts(standing.record).facts.find((f) => f.id === target) as Fact;
    const fitted = fitReplacement(context, standing, now, replacement);
    if (isRefusal(fitted)) return fitted;
    const next = { type: entry.type, data: fitted.payload, occurred: occurred ?? entry.occurred };
    if (!isQualified(context.author) && replacingMayLowerHelp(now, next)) return loweringNeedsQualified();
    return accept(
      newEvent(events.correctionMade, stayStream(stay), {
        target,
        type: entry.type,
        schemaVersion: eventTypeNamed(entry.type).version,
        replacement: fitted.payload,
        reason,
        ...(occurredAt === undefined ? {} : { occurred: occurredAt }),
        ...(text === undefined ? {} : { text: context.keep(`stay/${stay}`, text) }),
      }),
    );
  },
});

const makeRetraction = decider({
  command: commands.makeRetraction,
  reads: readsStay,
  decide: ({ stay, target, reason, text }, context) => {
    const spoken = spokenOf(context, { stay, target });
    if (isRefusal(spoken)) return spoken;
    const { standing, entry } = spoken;
    const { author } = context;
    if (isVerb(entry) && entry.type !== 'correction-made') return entryIsAChange(entry);
    if (PLACEMENT.has(entry.type)) return placementStands();
    if (isWithdrawn(standing.record, target)) return entryWithdrawn();
    const undoesCorrection = entry.type === 'correction-made' && isQualified(author);
    if (!ownEntry(entry, author) && !mayChangeOthers(author) && !undoesCorrection) {
      return notYours('Ask whoever made the entry, the charge nurse or the records office to withdraw it.');
    }
    const lowers =
      entry.type === 'correction-made' ||
      takingOutMayLowerHelp({ type: entry.type, data: counting(standing.record, entry) });
    if (lowers && !isQualified(author)) return loweringNeedsQualified();
    return accept(
      newEvent(events.retractionMade, stayStream(stay), {
        target,
        reason,
        ...(text === undefined ? {} : { text: context.keep(`stay/${stay}`, text) }),
      }),
    );
  },
});

/** What the entry says now, corrections applied. */
const counting = (record: StayRecord, entry: LoggedEvent): unknown =>
  effectiveFacts(record).facts.find((f) => f.id === entry.id)?.data ?? entry.payload;

export const deciders = underPolicy([
  makeAddendum,
  makeAmendment,
  makeCorrection,
  makeRetraction,
  confirmEntry,
  cosignEntry,
]);
