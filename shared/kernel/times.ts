import { z } from 'zod';

/** Milliseconds since 1970-01-01T00:00Z. Facts, rules, views and the wire count in these. */
export type EpochMs = number;

export const SECOND = 1_000;
export const MINUTE = 60 * SECOND;
export const HOUR = 60 * MINUTE;
/** 24 elapsed hours. A ward day is not this long on a clock change: ask the ward's calendar. */
export const ELAPSED_DAY = 24 * HOUR;

/** Instants in events and commands: ISO 8601, UTC, readable without this program. */
export const isoInstant = z
  .string()
  .regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,3})?Z$/,
    'an instant is written like 2026-10-25T01:40:00Z (UTC)',
  )
  .refine((text) => Number.isFinite(Date.parse(text)), 'that day or time does not exist');

export const toEpoch = (iso: string): EpochMs => Date.parse(iso);
export const toIso = (at: EpochMs): string => new Date(at).toISOString();

/** How exactly the time of a fact was known. */
export const precision = z.enum(['exact', 'about']);
export type Precision = z.infer<typeof precision>;

/**
 * When something happened, as a person enters it: an instant, or the ward's wall clock. In the hour
 * that a clock change repeats, the wall clock needs `repeated`; a time the change skipped is refused.
 */
export const occurredInput = z.union([
  z.strictObject({ at: isoInstant, precision: precision.default('exact') }),
  z.strictObject({
    local: z
      .string()
      .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, 'the ward clock is written like 2026-10-25T01:40'),
    repeated: z.enum(['first', 'second']).optional(),
    precision: precision.default('exact'),
  }),
]);
export type OccurredInput = z.infer<typeof occurredInput>;

/** The device's own clock at the moment of entry, with its offset from UTC in minutes. */
export const entered = z.strictObject({
  at: isoInstant,
  offsetMinutes: z
    .number()
    .int()
    .min(-16 * 60)
    .max(16 * 60),
});
export type Entered = z.infer<typeof entered>;
