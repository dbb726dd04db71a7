import { z } from 'zod';
import { commandType, freeText } from '../../kernel/command-type.ts';
import { eventId, stayId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { correctionReason } from './events.ts';

const target = { stay: stayId, target: eventId, reason: correctionReason };

export const makeAddendum = commandType(
  'make-addendum',
  'Add to an entry; the entry stands.',
  z.strictObject({ ...target, text: freeText }),
);
export const makeAmendment = commandType(
  'make-amendment',
  'Clarify the wording of an entry; its facts stand.',
  z.strictObject({ ...target, text: freeText }),
);
export const makeCorrection = commandType(
  'make-correction',
  'Replace a wrong fact by the right one of the same kind; the original stays readable.',
  z.strictObject({
    ...target,
    replacement: z.json(),
    occurredAt: isoInstant.optional(),
    text: freeText.optional(),
  }),
);
export const makeRetraction = commandType(
  'make-retraction',
  'Withdraw an entry made for the wrong person or of something that never happened.',
  z.strictObject({ ...target, text: freeText.optional() }),
);
export const confirmEntry = commandType(
  'confirm-entry',
  'Stand by an entry of your own that was recorded before you had signed in.',
  z.strictObject({ stay: stayId, event: eventId }),
);
export const cosignEntry = commandType(
  'cosign-entry',
  'Answer for an entry of agency staff or a student with a second signature.',
  z.strictObject({ stay: stayId, event: eventId }),
);
export const correctionCommands = [
  makeAddendum,
  makeAmendment,
  makeCorrection,
  makeRetraction,
  confirmEntry,
  cosignEntry,
] as const;
