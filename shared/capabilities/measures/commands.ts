import { z } from 'zod';
import { commandType } from '../../kernel/command-type.ts';
import { stayId } from '../../kernel/ids.ts';
import { measure, readBy } from './values.ts';

export const switchWalkingMeasures = commandType(
  'switch-walking-measures',
  'A therapist turns walking measures on or off for a stay.',
  z.strictObject({ stay: stayId, on: z.boolean() }),
);
export const recordWalkingMeasure = commandType(
  'record-walking-measure',
  'Record one walking measure of a stay for which they are on.',
  z.strictObject({ stay: stayId, measure, readBy: readBy.optional() }),
);
export const measureCommands = [switchWalkingMeasures, recordWalkingMeasure] as const;
