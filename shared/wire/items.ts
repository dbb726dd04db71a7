/** Shapes of the equipment queries. */
import { z } from 'zod';
import { battery, defect, itemDescription, itemId } from '../capabilities/aids/values.ts';
import { task, aidClass } from '../capabilities/handling/values.ts';
import { staffId, stayId, wardId } from '../kernel/ids.ts';

const since = { at: z.number(), by: staffId };
/** Which other ward, by its name then, since when, and until when it was agreed. */
const loan = z.strictObject({ ...since, ward: wardId, name: z.string(), until: z.number().nullable() });

export const itemLine = z.strictObject({
  item: itemId,
  is: itemDescription,
  /** What is known of it now; what is older than the ward's hours is null. */
  place: z.strictObject({ ...since, words: z.string() }).nullable(),
  missing: z.strictObject(since).nullable(),
  inUse: z.strictObject({ ...since, usedBy: stayId.nullable() }).nullable(),
  clean: z.strictObject({ ...since, is: z.boolean() }).nullable(),
  battery: z.strictObject({ ...since, band: battery }).nullable(),
  outOfService: z.strictObject({ ...since, defect }).nullable(),
  keptFor: stayId.nullable(),
  /** Of another ward; null: the ward's own. */
  borrowed: loan.nullable(),
  /** Date of the next examination, and by which interval in months it was worked out; null where the date was told. */
  examination: z.strictObject({ due: z.iso.date().nullable(), everyMonths: z.number().int().nullable() }),
  usable: z.strictObject({
    word: z.enum(['usable', 'in-use', 'not-usable', 'unknown']),
    against: z.array(z.string()),
  }),
});
export type ItemLine = z.infer<typeof itemLine>;
/** A piece of the ward's own that another ward has: nothing is counted with it here. */
export const lentLine = z.strictObject({
  item: itemId,
  is: itemDescription,
  loan,
  outOfService: itemLine.shape.outOfService,
});
export type LentLine = z.infer<typeof lentLine>;
export const itemsPage = z.strictObject({
  ward: wardId,
  at: z.number(),
  items: z.array(itemLine),
  lent: z.array(lentLine),
});
export type ItemsPage = z.infer<typeof itemsPage>;

export const fitTask = z.strictObject({
  task,
  aid: aidClass,
  need: z.enum(['lift-and-sling', 'standing-aid', 'lateral-aid', 'walking-aid', 'nothing-listed']),
  judged: z.array(
    z.strictObject({
      item: itemId,
      part: z.enum(['lift', 'sling', 'aid']),
      suits: z.boolean(),
      for: z.array(z.string()),
      against: z.array(z.string()),
    }),
  ),
  sets: z.array(z.strictObject({ item: itemId, sling: itemId.nullable(), usableNow: z.boolean() })),
  warnings: z.array(z.string()),
});
export const fitPage = z.strictObject({
  ward: wardId,
  at: z.number(),
  /** Who needs something of the list by day, in the order of beds; whoever needs nothing of it is left out. */
  stays: z.array(
    z.strictObject({
      stay: stayId,
      bed: z.string(),
      label: z.string(),
      weight: z.enum(['measured', 'estimated', 'not-known']),
      tasks: z.array(fitTask),
    }),
  ),
});
export type FitPage = z.infer<typeof fitPage>;
