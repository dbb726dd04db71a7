/** Who is on the ward, as a screen asks for it. */
import { z } from 'zod';
import { staffId, wardId } from '../kernel/ids.ts';

const stretch = { from: z.number(), to: z.number() };

export const peopleOnPage = z.strictObject({
  ward: wardId,
  /** The date the ward day began on; [from, to) as instants. */
  day: z.iso.date(),
  ...stretch,
  at: z.number(),
  /** As named for this ward day. Empty: nobody was named. */
  people: z.array(z.strictObject({ staff: staffId, ...stretch, breaks: z.array(z.strictObject(stretch)) })),
  /** The shifts of the ward's roster that begin in this ward day. */
  shifts: z.array(z.strictObject(stretch)),
  /** By quarter hours: who is there, or the usual staffing where nobody was named. */
  slots: z.array(
    z.strictObject({
      ...stretch,
      said: z.enum(['named', 'usual']),
      people: z.array(staffId),
      nurses: z.number().int(),
      aides: z.number().int(),
      therapists: z.number().int(),
    }),
  ),
});
export type PeopleOnPage = z.infer<typeof peopleOnPage>;
