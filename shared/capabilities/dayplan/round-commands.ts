import { z } from 'zod';
import { commandType } from '../../kernel/command-type.ts';
import { opaqueId, staffId, stayId } from '../../kernel/ids.ts';

export const nameSecond = commandType(
  'name-second',
  'Somebody goes along to a visit that was taken. Refused while they are booked elsewhere at that time.',
  z.strictObject({ stay: stayId, visit: opaqueId, second: staffId }),
);
export const giveBackSecond = commandType(
  'give-back-second',
  'The second person cannot go along; the visit stays taken and needs a second person again.',
  z.strictObject({ stay: stayId, visit: opaqueId }),
);
export const roundCommands = [nameSecond, giveBackSecond] as const;
