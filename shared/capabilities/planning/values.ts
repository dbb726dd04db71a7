import { z } from 'zod';
import { staffId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';

/** The date a ward day began on, on the ward's clock. */
export const wardDate = z.iso.date();

/** One person on the ward: [from, until), and the breaks within it. */
export const onTheWard = z.strictObject({
  staff: staffId,
  from: isoInstant,
  until: isoInstant,
  breaks: z.array(z.strictObject({ from: isoInstant, until: isoInstant })).max(6),
});
