import { z } from 'zod';
import { walkingSupport } from '../assessments/values.ts';

const between = (low: number, high: number, says: string) => z.number().min(low, says).max(high, says);
const seconds = (what: string) => between(0.5, 600, `${what} is 0.5 to 600 seconds`);
const STANDS = 'the count is a whole number from 0 to 60';
const AGE = 'the age is a whole number of years, for adults from 18 to 120';

/** One walking measure, as it was done. What was not possible is recorded as such, never as a zero. */
export const measure = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('gait-speed'),
    metres: between(2, 100, 'the course is 2 to 100 m'),
    seconds: seconds('the time'),
    pace: z.enum(['usual', 'fast']),
    /** Timed already walking, or from a word to go. */
    start: z.enum(['walking', 'from-standing']),
    turn: z.boolean(),
    support: walkingSupport,
  }),
  z.strictObject({
    kind: z.literal('six-minute-walk'),
    metres: between(0, 1_200, 'six minutes are 0 to 1200 m'),
    heightCm: between(100, 230, 'the height is 100 to 230 cm').optional(),
    weightKg: between(20, 500, 'the weight is 20 to 500 kg').optional(),
    support: walkingSupport,
  }),
  z.strictObject({
    kind: z.literal('chair-stands'),
    /** In 30 s. */
    stands: between(0, 60, STANDS).int(STANDS),
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
  age: between(18, 120, AGE).int(AGE),
  sex: z.enum(['female', 'male']),
});
export type ReadBy = z.infer<typeof readBy>;
