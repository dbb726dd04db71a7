import { z } from 'zod';
import { commandType } from '../../kernel/command-type.ts';
import { stayId, wardId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { label } from '../wards/values.ts';
import { battery, defect, itemDescription, itemId } from './values.ts';

export const addItem = commandType(
  'add-item',
  'Add a piece of equipment to the ward’s list.',
  z.strictObject({ item: itemId, is: itemDescription }),
);
export const changeItem = commandType(
  'change-item',
  'Describe a piece of equipment anew, as a whole.',
  z.strictObject({ item: itemId, is: itemDescription }),
);
export const withdrawItem = commandType(
  'withdraw-item',
  'Take a piece of equipment off the ward’s list; its history stays.',
  z.strictObject({ item: itemId }),
);
export const takeItem = commandType(
  'take-item',
  'Somebody takes a piece of equipment, for a person where it is known.',
  z.strictObject({ item: itemId, usedBy: stayId.optional() }),
);
export const bringItemBack = commandType(
  'bring-item-back',
  'It is back, clean unless it was in a room with infection steps.',
  z.strictObject({ item: itemId, place: label.optional() }),
);
export const seeItem = commandType(
  'see-item',
  'It was seen at a place.',
  z.strictObject({ item: itemId, place: label }),
);
export const missItem = commandType(
  'miss-item',
  'It was looked for and is not there.',
  z.strictObject({ item: itemId }),
);
export const recordCleaning = commandType(
  'record-cleaning',
  'It was cleaned, or it is dirty.',
  z.strictObject({ item: itemId, clean: z.boolean() }),
);
export const readBattery = commandType(
  'read-battery',
  'What its battery shows.',
  z.strictObject({ item: itemId, band: battery }),
);
export const takeOutOfService = commandType(
  'take-out-of-service',
  'It is broken or not safe: nobody uses it until the handling coordinator returns it.',
  z.strictObject({ item: itemId, defect }),
);
export const returnToService = commandType(
  'return-to-service',
  'The handling coordinator has looked at it: it may be used again.',
  z.strictObject({ item: itemId }),
);
export const bindItem = commandType(
  'bind-item',
  'A sling is kept for one person; null frees it.',
  z.strictObject({ item: itemId, keptFor: stayId.nullable() }),
);

export const lendItem = commandType(
  'lend-item',
  'It goes to another ward of this board, until a time where that is agreed.',
  z.strictObject({ item: itemId, to: wardId, until: isoInstant.optional() }),
);
export const giveBackItem = commandType(
  'give-back-item',
  'What was lent is back on its own ward; said by either of the two.',
  z.strictObject({ item: itemId }),
);

export const aidCommands = [
  addItem,
  changeItem,
  withdrawItem,
  takeItem,
  bringItemBack,
  seeItem,
  missItem,
  recordCleaning,
  readBattery,
  takeOutOfService,
  returnToService,
  bindItem,
  lendItem,
  giveBackItem,
] as const;
