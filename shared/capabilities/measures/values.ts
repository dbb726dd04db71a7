import { z } from 'zod';
import { walkingSupport } from '../assessments/values.ts';

const seconds = (what: string) =>
  z.number().min(0.5, `${what} is 0.5 to 600 seconds`).max(600, `${what} is 0.5 to 600 seconds`);

/** One walking measure, as it was done. What was not possible is recorded as such, never as a zero. */
export const measure = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('gait-speed'),
    metres: z.number().min(2, 'the course is 2 to 100 m').max(100, 'the course is 2 to 100 m'),
    seconds: seconds('the time'),
    pace: z.enum(['usual', 'fast']),
    /** Timed already walking, or from a word to go. */
    start: z.enum(['walking', 'from-standing']),
    turn: z.boolean(),
    support: walkingSupport,
  }),
  z.strictObject({
    kind: z.literal('six-minute-walk'),
    metres: z.number().min(0).max(1_200, 'six minutes are at most 1200 m'),
    heightCm: z.number().min(100).max(230).optional(),
    weightKg: z.number().min(20).max(500).optional(),
    support: walkingSupport,
  }),
  z.strictObject({
    kind: z.literal('chair-stands'),
    /** In 30 s. */
    stands: z.number().int().min(0).max(60),
    usedArms: z.boolean(),
  }),
  z.strictObject({
    kind: z.literal('five-rises'),
    /** Null: five were not managed. */
    seconds: seconds('the time').nullable(),
    usedArms: z.boolean(),
  }),
  z.strictObject({
    kind: z.literal('up-and-go'),
    seconds: seconds('the time').nullable(),
    support: walkingSupport,
  }),
]);
export type Measure = z.infer<typeof measure>;

/** What published tables are read by; recorded only when the measure is to be compared. */
export const readBy = z.strictObject({
  age: z.number().int().min(18, 'for adults: 18 or more').max(120, 'the age is at most 120'),
  sex: z.enum(['female', 'male']),
});
export type ReadBy = z.infer<typeof readBy>;
