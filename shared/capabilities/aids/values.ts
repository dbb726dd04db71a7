import { z } from 'zod';
import { opaqueId } from '../../kernel/ids.ts';
import { label } from '../wards/values.ts';

/** An aid item: one piece of equipment with an id of its own. What it can carry is never inferred from a size letter. */
export const itemId = opaqueId.brand<'ItemId'>();
export type ItemId = z.infer<typeof itemId>;

export const itemKind = z.enum([
  'floor-lift',
  'ceiling-lift',
  'standing-aid',
  'sling',
  'lateral-aid',
  'walking-aid',
]);
export type ItemKind = z.infer<typeof itemKind>;

/** How a sling hangs on a lift. Loops and clips do not go together. */
export const attachmentClass = z.enum(['loops', 'clips', 'fixed']);
export const slingStyle = z.enum(['whole-body', 'toileting', 'standing', 'walking', 'turning']);

/** kg; a safe working load is printed on the item. */
const load = z
  .number()
  .min(20, 'a safe working load is 20 to 1000 kg')
  .max(1_000, 'a safe working load is 20 to 1000 kg');

/** What an item is, apart from how it is now. A value that is not known is null, never a guess. */
export const itemDescription = z
  .strictObject({
    label,
    kind: itemKind,
    model: label,
    powered: z.boolean().default(false),
    safeLoadKg: load.nullable().default(null),
    /** Safe working load of the bar between lift and sling, where it is another. */
    barLoadKg: load.nullable().default(null),
    attachment: attachmentClass.nullable().default(null),
    /** Bays that a ceiling track covers. */
    covers: z.array(label).max(30).default([]),
    style: slingStyle.nullable().default(null),
    /** Body weight a sling is made for (kg). */
    fitsFromKg: z.number().min(0).max(1_000).nullable().default(null),
    fitsToKg: z.number().min(0).max(1_000).nullable().default(null),
    /** The maker's list: models, and single items, that it may be used with. */
    worksWithModels: z.array(label).max(60).default([]),
    worksWithItems: z.array(itemId).max(60).default([]),
    /** Next examination; null when no date is known. */
    inspectionDue: z.iso.date().nullable().default(null),
    /** Last examination: the next is due by the ward's interval for its kind, or by the date above if that is earlier. */
    lastExamined: z.iso.date().nullable().optional(),
    /** Where it hangs or stands when nobody has it. */
    home: label,
  })
  .refine((d) => d.fitsFromKg === null || d.fitsToKg === null || d.fitsFromKg <= d.fitsToKg, {
    message: 'the weight it fits from is above the weight it fits to',
    path: ['fitsFromKg'],
  })
  .refine((d) => d.kind !== 'ceiling-lift' || d.covers.length > 0, {
    message: 'say which bays the track covers',
    path: ['covers'],
  });
export type ItemDescription = z.infer<typeof itemDescription>;

export const battery = z.enum(['full', 'half', 'low', 'flat']);
export type Battery = z.infer<typeof battery>;

export const defect = z.enum([
  'does-not-run',
  'brake-or-wheel',
  'strap-or-stitching',
  'label-not-readable',
  'inspection',
  'other',
]);
export type Defect = z.infer<typeof defect>;

/** A lift: powered, with a safe working load (design, the language). */
export const isLift = (d: Pick<ItemDescription, 'kind' | 'powered'>): boolean =>
  d.kind === 'floor-lift' || d.kind === 'ceiling-lift' || (d.kind === 'standing-aid' && d.powered);
