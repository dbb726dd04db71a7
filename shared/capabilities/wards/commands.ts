import { z } from 'zod';
import { commandType } from '../../kernel/command-type.ts';
import { bedId } from '../../kernel/ids.ts';
import { clockTime, ianaZone, label, language, panel, units } from './values.ts';

const bed = z.strictObject({
  bed: bedId,
  label,
  bay: label,
  ceilingTrack: z.boolean().default(false),
});

export const setUpWard = commandType(
  'set-up-ward',
  'Set up a new ward with its clock, ward day, bays and beds.',
  z.strictObject({
    name: label,
    zone: ianaZone,
    wardDayFrom: clockTime.default('07:00'),
    nightFrom: clockTime.default('21:00'),
    nightTo: clockTime.default('07:00'),
    beds: z.array(bed).min(1, 'a ward has at least one bed').max(120),
  }),
);
export const changeWard = commandType(
  'change-ward',
  "Change the name, the clock, the ward day, the panel of the walls, or the screens' units and language.",
  z.strictObject({
    name: label.optional(),
    zone: ianaZone.optional(),
    wardDayFrom: clockTime.optional(),
    nightFrom: clockTime.optional(),
    nightTo: clockTime.optional(),
    panel: panel.optional(),
    units: units.optional(),
    language: language.optional(),
  }),
);
export const addBed = commandType('add-bed', 'Add a bed to the ward.', bed);
export const changeBed = commandType(
  'change-bed',
  "Change a bed's label, bay or ceiling track.",
  z.strictObject({
    bed: bedId,
    label: label.optional(),
    bay: label.optional(),
    ceilingTrack: z.boolean().optional(),
  }),
);
export const closeBed = commandType(
  'close-bed',
  "Take an empty bed off the ward's list.",
  z.strictObject({ bed: bedId }),
);
export const publishProtocol = commandType(
  'publish-protocol',
  "Publish a new version of the ward's own staged protocol.",
  z.strictObject({ document: z.json() }),
);
export const publishRules = commandType(
  'publish-rules',
  "Publish a new version of the ward's limits and validities.",
  z.strictObject({ document: z.json() }),
);

export const wardCommands = [
  setUpWard,
  changeWard,
  addBed,
  changeBed,
  closeBed,
  publishProtocol,
  publishRules,
] as const;
