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
