import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { stayId, wardId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
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

/**
 * Lending, on the stream of each of the two wards: which pieces are on a ward. A name is the other ward's
 * as it was called then.
 */
export const itemLent = eventType('item-lent', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ ...item, to: wardId, name: z.string(), until: isoInstant.optional() }),
  words: (p, n) => `Equipment lent to ${p.name}${p.until ? ` until ${n.time(p.until)}` : ''}`,
});
/** The link at the borrower's, with the description as it was lent. */
export const itemBorrowed = eventType('item-borrowed', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    ...item,
    from: wardId,
    name: z.string(),
    is: itemDescription,
    until: isoInstant.optional(),
  }),
  words: (p, n) =>
    `Equipment borrowed: ${p.is.label} (${plain(p.is.kind)}, ${p.is.model})${p.until ? `, until ${n.time(p.until)}` : ''}`,
});
/** It was given back: in both wards. */
export const itemLoanEnded = eventType('item-loan-ended', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject(item),
  words: () => 'Borrowed equipment given back',
});
/** The item's own stream on the ward that it left: from here on nothing is said of it here. */
export const itemSent = eventType('item-sent', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({ ...item, to: wardId, name: z.string() }),
  words: (p) => `Went to ${p.name}`,
});
/**
 * The item's own stream on the ward that it came to. What was known of it goes with it, each with its own
 * time; where it is, and who has it, is not known there before somebody says so.
 */
export const itemReceived = eventType('item-received', {
  stream: 'item',
  version: 1,
  schema: z.strictObject({
    ...item,
    from: wardId,
    name: z.string(),
    clean: z.strictObject({ is: z.boolean(), at: isoInstant }).nullable(),
    battery: z.strictObject({ band: battery, at: isoInstant }).nullable(),
    outOfService: z.strictObject({ defect, at: isoInstant }).nullable(),
  }),
  words: (p) => `Came from ${p.name}`,
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
  itemLent,
  itemBorrowed,
  itemLoanEnded,
  itemSent,
  itemReceived,
] as const;
