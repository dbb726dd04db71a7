import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { stayId } from '../../kernel/ids.ts';
import { label } from '../wards/values.ts';
import { battery, defect, itemDescription, itemId } from './values.ts';

const plain = (code: string): string => code.replaceAll('-', ' ');

/** On the ward's own stream, like beds: which items there are. */
export const itemAdded = eventType('item-added', {
  stream: 'ward',
  version: 2,
  // Version 1 had no date of the last examination.
  upcasts: { 1: (old) => old },
  schema: z.strictObject({ item: itemId, is: itemDescription }),
  words: (p) => `Equipment added: ${p.is.label} (${plain(p.is.kind)}, ${p.is.model})`,
});
/** The whole description anew: what it was stays readable in the event before. */
export const itemChanged = eventType('item-changed', {
  stream: 'ward',
  version: 2,
  // Version 1 had no date of the last examination.
  upcasts: { 1: (old) => old },
  schema: z.strictObject({ item: itemId, is: itemDescription }),
  words: (p) => `Equipment described anew: ${p.is.label} (${plain(p.is.kind)}, ${p.is.model})`,
});
export const itemWithdrawn = eventType('item-withdrawn', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ item: itemId }),
  words: () => 'Equipment taken off the ward’s list',
});

const item = { item: itemId };

/** The item's own stream: what somebody saw or did with it. */
export const itemTaken = eventType('item-taken', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, usedBy: stayId.optional(), isolation: z.boolean().default(false) }),
  words: (p) => (p.usedBy ? 'Taken for a person' : 'Taken'),
});
export const itemBack = eventType('item-back', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, place: label.optional() }),
  words: (p) => `Back${p.place ? ` at ${p.place}` : ''}`,
});
export const itemSeen = eventType('item-seen', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, place: label }),
  words: (p) => `Seen at ${p.place}`,
});
export const itemNotThere = eventType('item-not-there', {
  stream: 'item',
  version: 1,
  schema: z.strictObject(item),
  words: () => 'Looked for, not there',
});
export const itemCleaning = eventType('item-cleaning', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, clean: z.boolean() }),
  words: (p) => (p.clean ? 'Cleaned' : 'Dirty'),
});
export const batteryRead = eventType('battery-read', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, band: battery }),
  words: (p) => `Battery ${p.band}`,
});
export const itemOutOfService = eventType('item-out-of-service', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, defect }),
  words: (p) => `Out of service (${plain(p.defect)})`,
});
export const itemInService = eventType('item-in-service', {
  stream: 'item',
  version: 1,
  schema: z.strictObject(item),
  words: () => 'Returned to service',
});
/** A sling of one person; null frees it. */
export const itemBound = eventType('item-bound', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, keptFor: stayId.nullable() }),
  words: (p) => (p.keptFor === null ? 'Kept for nobody any more' : 'Kept for one person'),
});

export const aidEvents = [
  itemAdded,
  itemChanged,
  itemWithdrawn,
  itemTaken,
  itemBack,
  itemSeen,
  itemNotThere,
  itemCleaning,
  batteryRead,
  itemOutOfService,
  itemInService,
  itemBound,
] as const;
