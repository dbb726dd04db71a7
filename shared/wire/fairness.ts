/** Who was got up in the last four weeks, as a screen asks for it. */
import { z } from 'zod';
import { wardId } from '../kernel/ids.ts';

const count = z.number().int().min(0);
export const fairnessLine = z.strictObject({
  key: z.string(),
  /** Person-days, and what they came to: their sum. */
  days: count,
  visited: count,
  notDone: count,
  notRecorded: count,
  visits: count,
  /** Share of the days with a visit; null where the days are too few to say one. */
  share: z.number().min(0).max(1).nullable(),
});
export type FairnessLine = z.infer<typeof fairnessLine>;
const lines = z.array(fairnessLine);
export const fairnessPage = z.strictObject({
  ward: wardId,
  at: z.number(),
  /** Whole ward days: [from, to). */
  from: z.number(),
  to: z.number(),
  wardDays: count,
  all: fairnessLine,
  /** Person-days under a comfort or clinician's plan, in none of the counts. */
  apart: count,
  /** Label of each bed by its id. */
  labels: z.record(z.string(), z.string()),
  groups: z.strictObject({ bed: lines, bay: lines, isolation: lines, weekday: lines }),
});
export type FairnessPage = z.infer<typeof fairnessPage>;
