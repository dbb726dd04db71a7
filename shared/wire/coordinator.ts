/** What the handling coordinator is to see to, as a screen asks for it. */
import { z } from 'zod';
import { CLOSES, ITEM_MATTERS, STAY_MATTERS } from '../capabilities/aids/rules/coordinator-list.ts';
import { itemId } from '../capabilities/aids/values.ts';
import { aidClass, task } from '../capabilities/handling/values.ts';
import { aidNotUsedReason } from '../capabilities/sessions/values.ts';
import { eventId, stayId, wardId } from '../kernel/ids.ts';
import { fitTask } from './items.ts';

const named = { item: itemId, label: z.string() };
const closes = z.enum(CLOSES);

export const stayToSee = z.strictObject({
  stay: stayId,
  /** Label of the bed. */
  bed: z.string(),
  matter: z.enum(STAY_MATTERS),
  /** Since when it has been so without a break (epoch ms). */
  since: z.number(),
  closes,
  tasks: z.array(task),
  aids: z.array(aidClass),
  /** Pieces that bear less than the person counts as, and by how much (kg). */
  over: z.array(z.strictObject({ ...named, bearsKg: z.number(), overKg: z.number() })),
  countsKg: z.number().nullable(),
  /** Pieces that cannot do it, each with the question of the fit rules that it fails. */
  failed: z.array(z.strictObject({ ...named, against: z.array(z.string()) })),
  /** For a missing sling: the lifts it must be listed for. */
  lifts: z.array(z.strictObject(named)),
});
export type StayToSee = z.infer<typeof stayToSee>;

export const itemToSee = z.strictObject({
  ...named,
  matter: z.enum(ITEM_MATTERS),
  since: z.number(),
  closes,
  against: z.array(z.string()),
  /** Date of the examination. */
  due: z.iso.date().nullable(),
});
export type ItemToSee = z.infer<typeof itemToSee>;

export const coordinatorPage = z.strictObject({
  ward: wardId,
  at: z.number(),
  /** Pieces on the ward's list; with none, only weights are asked about. */
  listed: z.number().int(),
  /** Kinds that plans ask for and the list has none of, with the number of stays. */
  unlisted: z.array(z.strictObject({ need: fitTask.shape.need, stays: z.number().int() })),
  /** What the ward has against what its own ratios ask for today. */
  ratios: z.array(
    z.strictObject({
      of: z.enum(['lift', 'standing-aid', 'sling']),
      have: z.number().int(),
      people: z.number().int(),
      wanted: z.number().int(),
      source: z.string(),
    }),
  ),
  stays: z.array(stayToSee),
  items: z.array(itemToSee),
});
export type CoordinatorPage = z.infer<typeof coordinatorPage>;

export const aidUsePage = z.strictObject({
  ward: wardId,
  at: z.number(),
  /** The last four weeks: the ward days of [from, to), the one that runs with them. */
  from: z.number(),
  to: z.number(),
  /** Sessions that took place, and of these those that say what was used or was not. */
  sessions: z.number().int(),
  told: z.number().int(),
  counts: z.array(
    z.strictObject({
      planned: aidClass,
      /** Null where nobody said why. */
      because: aidNotUsedReason.nullable(),
      count: z.number().int(),
    }),
  ),
  /** The newest first; at most so many as `listed` says. */
  listed: z.number().int(),
  list: z.array(
    z.strictObject({
      event: eventId,
      stay: stayId,
      /** Label of the bed then; null where it is on the ward no more. */
      bed: z.string().nullable(),
      at: z.number(),
      planned: aidClass,
      used: aidClass.nullable(),
      because: aidNotUsedReason.nullable(),
    }),
  ),
});
export type AidUsePage = z.infer<typeof aidUsePage>;
