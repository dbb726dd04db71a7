import { z } from 'zod';

/**
 * Identifiers are opaque: 1 to 64 letters, digits, "-" or "_". They are branded so that a bed's id
 * can never be handed where a stay's is meant: clinical facts belong to stays, never to beds.
 */
export const opaqueId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/, 'an id is 1 to 64 letters, digits, "-" or "_"');

export const wardId = opaqueId.brand<'WardId'>();
export const bedId = opaqueId.brand<'BedId'>();
export const stayId = opaqueId.brand<'StayId'>();
export const personId = opaqueId.brand<'PersonId'>();
export const staffId = opaqueId.brand<'StaffId'>();
export const eventId = opaqueId.brand<'EventId'>();
export const commandId = opaqueId.brand<'CommandId'>();
export const deviceId = opaqueId.brand<'DeviceId'>();

export type WardId = z.infer<typeof wardId>;
export type BedId = z.infer<typeof bedId>;
export type StayId = z.infer<typeof stayId>;
export type PersonId = z.infer<typeof personId>;
export type StaffId = z.infer<typeof staffId>;
export type EventId = z.infer<typeof eventId>;
export type CommandId = z.infer<typeof commandId>;
export type DeviceId = z.infer<typeof deviceId>;

/** A reference to personal data or free text kept encrypted outside the log. */
export const textRef = z.strictObject({ ref: opaqueId });
export type TextRef = z.infer<typeof textRef>;
