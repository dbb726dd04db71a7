import { z } from 'zod';
import { commandType, freeText } from '../../kernel/command-type.ts';
import { bedId, opaqueId, personId, stayId, wardId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { attachmentKind, fence, usualWay, wallShowing, weight } from './values.ts';

const identity = z.strictObject({
  name: z.string().trim().min(1).max(120),
  recordNumber: z.string().trim().min(1).max(40).optional(),
  born: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, 'a date is written like 1941-03-09')
    .optional(),
});

export const beginStay = commandType(
  'begin-stay',
  'A person arrives in an empty bed; where they were expected, that expected arrival is closed in the same act.',
  z.strictObject({
    stay: stayId,
    person: personId,
    bed: bedId,
    from: z.enum(['home', 'emergency', 'ward', 'theatre', 'intensive-care', 'other']),
    identity: identity.optional(),
    usual: usualWay.optional(),
    weight: weight.optional(),
    /** The expected arrival that this is. One that was closed meanwhile keeps nobody out of the bed. */
    expected: opaqueId.optional(),
  }),
);
export const moveStay = commandType(
  'move-stay',
  'Move a person to an empty bed of the same ward.',
  z.strictObject({ stay: stayId, from: bedId, to: bedId }),
);
export const swapStays = commandType(
  'swap-stays',
  'Two people change beds, in one act.',
  z.strictObject({
    first: z.strictObject({ stay: stayId, bed: bedId }),
    second: z.strictObject({ stay: stayId, bed: bedId }),
  }),
);
export const transferStay = commandType(
  'transfer-stay',
  'A person leaves this ward for a bed on another ward of this board; the new stay starts with no plan.',
  z.strictObject({
    stay: stayId,
    bed: bedId,
    to: z.strictObject({ ward: wardId, bed: bedId, stay: stayId }),
  }),
);
export const endStay = commandType(
  'end-stay',
  'A person leaves the ward.',
  z.strictObject({ stay: stayId, bed: bedId, to: z.enum(['home', 'facility', 'died', 'other']) }),
);
export const goOffWard = commandType(
  'go-off-ward',
  'The person is away from the ward for a while.',
  z.strictObject({
    stay: stayId,
    reason: z.enum(['test', 'theatre', 'dialysis', 'home-visit', 'other']),
    dueBack: isoInstant.optional(),
  }),
);
export const comeBack = commandType(
  'come-back',
  'The person is back on the ward; from theatre or dialysis the return is a trigger.',
  z.strictObject({ stay: stayId }),
);
export const recordUsualWay = commandType(
  'record-usual-way',
  'How the person moved before this illness, and what they wish for.',
  z.strictObject({ stay: stayId, usual: usualWay, wish: freeText.optional() }),
);
export const recordWeight = commandType(
  'record-weight',
  'Body weight in kg, measured or estimated.',
  z.strictObject({ stay: stayId, weight }),
);
export const addAttachment = commandType(
  'add-attachment',
  'A line, drain, tube or oxygen was attached.',
  z.strictObject({
    stay: stayId,
    attachment: opaqueId,
    kind: attachmentKind,
    disconnects: z.enum(['nobody', 'nurse', 'anyone-trained']),
    tetherMetres: z.number().min(0).max(20).optional(),
    needsOwnPerson: z.boolean().default(false),
  }),
);
export const removeAttachment = commandType(
  'remove-attachment',
  'A line, drain, tube or oxygen was removed.',
  z.strictObject({ stay: stayId, attachment: opaqueId }),
);
export const setScope = commandType(
  'set-scope',
  "Say which plan applies: the staged check, the clinician's own plan, or comfort.",
  z.discriminatedUnion('scope', [
    z.strictObject({ scope: z.literal('staged'), stay: stayId }),
    z.strictObject({
      scope: z.literal('clinicians-plan'),
      stay: stayId,
      fence,
      plan: freeText,
    }),
    z.strictObject({ scope: z.literal('comfort'), stay: stayId, plan: freeText.optional() }),
  ]),
);
export const setWallShowing = commandType(
  'set-wall-showing',
  'Say whether walls show this person as they show everybody, or nothing of them.',
  z.strictObject({ stay: stayId, showing: wallShowing }),
);

export const setIsolation = commandType(
  'set-isolation',
  'Infection steps apply in the room, or no longer do.',
  z.strictObject({ stay: stayId, on: z.boolean() }),
);
export const expectLeaving = commandType(
  'expect-leaving',
  'When the person is expected to leave the ward; null takes it back.',
  z.strictObject({ stay: stayId, at: isoInstant.nullable() }),
);
/** As long as one look at a phone. */
export const LINE_AT_MOST = 60;
export const setTherapistLine = commandType(
  'set-therapist-line',
  'One line of up to 60 signs for whoever moves the person, shown at the bedside only; null takes it down.',
  z.strictObject({
    stay: stayId,
    line: z.string().trim().min(1).max(LINE_AT_MOST, `the line is at most ${LINE_AT_MOST} signs`).nullable(),
  }),
);

export const stayCommands = [
  beginStay,
  moveStay,
  swapStays,
  transferStay,
  endStay,
  goOffWard,
  comeBack,
  recordUsualWay,
  recordWeight,
  addAttachment,
  removeAttachment,
  setScope,
  setWallShowing,
  setIsolation,
  expectLeaving,
  setTherapistLine,
] as const;
