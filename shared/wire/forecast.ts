/** Who needs a lift or a second pair of hands, by quarter hour, and whether there is enough. */
import { z } from 'zod';
import { bedId, stayId, wardId } from '../kernel/ids.ts';
import { GROUPS } from '../capabilities/forecast/rules/scenario.ts';

const epoch = z.number();
const share = z.number().min(0).max(1);
const amount = z.number().min(0);

/**
 * A chance, and the range that nine in ten of the sets of rates give which the ward's record leaves
 * open. What the forecast does not know of is in neither.
 */
const chance = { chance: share, low: share, high: share };
const bed = { bed: bedId, label: z.string() };
export const forecastGroup = z.enum(GROUPS);

export const forecastClash = z.strictObject({
  group: forecastGroup,
  from: epoch,
  to: epoch,
  ...chance,
  /** What is missing more often. */
  short: z.enum(['item', 'hands']),
  /** Requests that would wait too long. */
  late: amount,
});
/** Something that a person could do, tried on the same simulated days. `before` and `after`: requests that wait too long. */
const tried = { from: epoch, to: epoch, before: amount, after: amount };
export const forecastHelp = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('borrow'), ...tried, group: forecastGroup.exclude(['hands']) }),
  z.strictObject({ kind: z.literal('pair-of-aides'), ...tried }),
  z.strictObject({
    kind: z.literal('swap-to-track'),
    ...tried,
    who: z.strictObject(bed),
    with: z.strictObject(bed),
  }),
  z.strictObject({
    kind: z.literal('move-session'),
    ...tried,
    who: z.strictObject(bed),
    what: z.enum(['visit', 'meal', 'back-to-bed', 'turn']),
    /** From this time to that. */
    was: epoch,
    becomes: epoch,
  }),
]);

export const forecastPage = z.strictObject({
  ward: wardId,
  position: z.number().int(),
  /** The quarter hour it was made for, and until when it looks. */
  from: epoch,
  to: epoch,
  slotMinutes: z.number().int(),
  /** Waiting longer than this counts as too long (minutes). */
  lateMinutes: amount,
  /** Days of the ward's own record behind it, and how many moves; below `fewDays` it is little more than a guess. */
  record: z.strictObject({
    days: z.number().int(),
    moves: z.number().int(),
    fewDays: z.number().int(),
    /** Uses of lifts that were measured; 0: the rules' own numbers. */
    uses: z.number().int(),
  }),
  runs: z.number().int(),
  /** Whether people were named for all of it, for some, or the usual staffing stands for them. */
  people: z.enum(['named', 'partly', 'usual']),
  /** Only groups that somebody's plan asks for. `listed` false: the ward keeps no list of them, so nobody waits for them here. */
  groups: z.array(
    z.strictObject({
      group: forecastGroup,
      listed: z.boolean(),
      slots: z.array(
        z.strictObject({
          from: epoch,
          /** In use at once if nobody had to wait: the mean, and what one day in ten reaches. */
          wanted: amount,
          wantedTenth: amount,
          /** There for sure, and with those of which nobody has said lately how they are. */
          sure: amount,
          most: amount,
          asked: amount,
          /** That a request of this quarter hour waits too long; null where hardly any is made. */
          late: z.strictObject(chance).nullable(),
        }),
      ),
    }),
  ),
  clashes: z.array(forecastClash),
  /** Who would wait too long at least once, likeliest first, and about when. */
  waits: z.array(z.strictObject({ ...bed, stay: stayId, chance: share, about: epoch })),
  helps: z.array(forecastHelp),
  /** Requests until the end, and how many of them would wait too long. */
  asked: amount,
  late: amount,
  /** Who needs a lift or two people and is not counted, or counted with hands only. */
  leftOut: z.array(z.strictObject({ ...bed, why: z.enum(['nothing-fits', 'on-hold', 'away']) })),
});
export type ForecastPage = z.infer<typeof forecastPage>;
export type ForecastHelp = z.infer<typeof forecastHelp>;
