import { z } from 'zod';
import { deviceId, staffId } from './ids.ts';

export const role = z.enum([
  'aide',
  'nurse',
  'therapist',
  'charge-nurse',
  'handling-coordinator',
  'manager',
  'records',
  'administrator',
]);
export type Role = z.infer<typeof role>;

/** Who says it. A policy on the server hands this in; a command body cannot choose it. */
export const author = z.strictObject({ staff: staffId, role });
export type Author = z.infer<typeof author>;

/** What a staff member is to the ward beside the role. Entries of agency staff and students count, and wait for a second signature. */
export const standing = z.enum(['own', 'agency', 'student']);
export type Standing = z.infer<typeof standing>;

/** Where an entry came from: typed by a person, sent by a device, imported, keyed from a paper sheet, or played by the demo. */
export const claimedSource = z.strictObject({
  kind: z.enum(['person', 'device', 'import', 'paper', 'demo']),
  device: deviceId.optional(),
  /** Serial of the paper sheet or of the import run. It stands in the log for good: no room for a name. */
  serial: z
    .string()
    .regex(/^(?=.*\d)[A-Za-z0-9./_-]{1,64}$/, 'a serial has digits and no spaces')
    .optional(),
});

/** The same as it is recorded: with what the server adds and no request may say. */
export const source = claimedSource.extend({
  /**
   * The author's name was claimed and not checked. The entry stands as an aide's, whatever the role
   * of the one it names, so that it can only raise help until they confirm it.
   */
  unconfirmed: z.literal(true).optional(),
  /** The author is agency staff or a student: the entry counts, and waits for a second signature. */
  cosign: z.enum(['agency', 'student']).optional(),
});
export type Source = z.infer<typeof source>;

/** Roles that may make a plan freer: set a tier, end a hold, set "on own". Common practice, no source; a ward's policy may narrow it. */
const QUALIFIED: ReadonlySet<Role> = new Set(['nurse', 'therapist', 'charge-nurse']);
export const isQualified = (who: { role: Role }): boolean => QUALIFIED.has(who.role);
