import { z } from 'zod';

/** A short visible name: a ward, a bay, a bed. Not for people. */
export const label = z.string().trim().min(1, 'give it a name').max(40, 'at most 40 characters');

export const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day is written like 07:00');

export const ianaZone = z.string().refine((zone) => {
  try {
    const known = new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
    return known.length > 0 && /^[A-Z]/.test(zone);
  } catch {
    return false;
  }
}, 'a time zone is written like Europe/Lisbon (IANA name)');

/** The panel a ward's walls hang on: its diagonal, and from how far it must be read. Sizes of type follow from it. */
export const panel = z.strictObject({
  inches: z.number().min(10, 'the diagonal is 10 to 120 inches').max(120, 'the diagonal is 10 to 120 inches'),
  metres: z.number().min(1, 'read from 1 to 15 m').max(15, 'read from 1 to 15 m'),
});
export type Panel = z.infer<typeof panel>;
/** Guaranteed on this one (design, the wall). */
export const DEFAULT_PANEL: Panel = { inches: 55, metres: 5 };

/** What screens of the ward write amounts in; everything is stored in SI. */
export const units = z.strictObject({ weight: z.enum(['kg', 'lb']), length: z.enum(['m', 'ft']) });
export type Units = z.infer<typeof units>;
export const DEFAULT_UNITS: Units = { weight: 'kg', length: 'm' };

/** Language of the ward's screens. A person may choose another on their own device. */
export const language = z.enum(['en', 'de']);
export type Language = z.infer<typeof language>;
