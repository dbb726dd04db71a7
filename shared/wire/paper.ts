/** Paper sheets: which were printed, whether they still say what is true, and who lay where then. */
import { z } from 'zod';
import { bedId, stayId, wardId } from '../kernel/ids.ts';

export const paperSheet = z.strictObject({
  serial: z.string(),
  made: z.number().int(),
  /** What it shows is known up to this position of the ward's log, seen at this instant. */
  position: z.number().int(),
  t: z.number().int(),
  validUntil: z.number().int(),
  /** True for the hourly one. */
  byItself: z.boolean(),
  beds: z.array(z.strictObject({ bed: bedId, label: z.string(), stay: stayId.nullable() })),
  /** Beds whose sheet line rests on an entry that was corrected or withdrawn since. */
  superseded: z.array(bedId),
});
export type PaperSheet = z.infer<typeof paperSheet>;

export const paperSheets = z.strictObject({
  ward: wardId,
  /** The newest first, of the last two days. */
  sheets: z.array(paperSheet),
});
export type PaperSheets = z.infer<typeof paperSheets>;
