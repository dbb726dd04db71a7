import { z } from 'zod';
import { commandType, freeText } from '../../kernel/command-type.ts';
import { bedId, opaqueId, staffId, stayId, wardId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { usualWay } from '../stays/values.ts';
import { roundCommands } from './round-commands.ts';
import { actionKind, actionOutcome, arrivalFrom, giveBackReason, insteadReason, listSeen } from './values.ts';

export const takeVisit = commandType(
  'take-visit',
  'Whoever enters it goes to see this person next, alone or with a second person. Refused while somebody else has the visit.',
  z.strictObject({
    stay: stayId,
    visit: opaqueId,
    second: staffId.optional(),
    /** Left out: from now, for 30 minutes. */
    from: isoInstant.optional(),
    until: isoInstant.optional(),
    /** Who was asked before going, where the list says to ask a nurse first. */
    asked: staffId.optional(),
    list: listSeen.optional(),
    /** Why this person, where another stood first on that list. */
    instead: insteadReason.optional(),
  }),
);
export const handOverVisit = commandType(
  'hand-over-visit',
  'A visit that was taken goes to somebody else.',
  z.strictObject({ stay: stayId, visit: opaqueId, to: staffId, list: listSeen.optional() }),
);
export const giveBackVisit = commandType(
  'give-back-visit',
  'A visit that was taken is free again.',
  z.strictObject({ stay: stayId, visit: opaqueId, reason: giveBackReason, list: listSeen.optional() }),
);
export const holdHuddle = commandType(
  'hold-huddle',
  'The morning review was held; the next one begins with what changes from now on.',
  z.strictObject({}),
);
export const agreeAction = commandType(
  'agree-action',
  'Somebody does something by a time; the same action again gives it another owner or time.',
  z.strictObject({
    action: opaqueId,
    kind: actionKind,
    owner: staffId,
    by: isoInstant,
    stay: stayId.optional(),
    note: freeText.max(200, 'a note is at most 200 signs').optional(),
  }),
);
export const closeAction = commandType(
  'close-action',
  'An agreed action is done, not needed any more, or not possible.',
  z.strictObject({ action: opaqueId, outcome: actionOutcome }),
);
export const nameCarers = commandType(
  'name-carers',
  'Who looks after which bed, until the end of the shift or the time given.',
  z.strictObject({
    until: isoInstant.optional(),
    beds: z
      .array(z.strictObject({ bed: bedId, nurse: staffId.nullable(), aide: staffId.nullable() }))
      .min(1)
      .max(60),
  }),
);
export const expectArrival = commandType(
  'expect-arrival',
  'Somebody is expected on the ward. What is told of how they move is history, not confirmed here.',
  z.strictObject({
    expected: opaqueId,
    at: isoInstant,
    from: arrivalFrom,
    bed: bedId.optional(),
    usual: usualWay.optional(),
    previous: z.strictObject({ ward: wardId, stay: stayId }).optional(),
    bariatric: z.boolean().default(false),
  }),
);
export const closeExpectedArrival = commandType(
  'close-expected-arrival',
  'Whoever was expected has arrived, or does not come.',
  z.strictObject({ expected: opaqueId, outcome: z.enum(['arrived', 'not-coming']) }),
);

export const dayplanCommands = [
  takeVisit,
  handOverVisit,
  giveBackVisit,
  holdHuddle,
  agreeAction,
  closeAction,
  nameCarers,
  expectArrival,
  closeExpectedArrival,
  ...roundCommands,
] as const;
