import { z } from 'zod';
import { role, standing } from '../../kernel/author.ts';
import { eventType } from '../../kernel/event-type.ts';
import { staffId, textRef } from '../../kernel/ids.ts';

/** Kept in the ward's stream; the name stands apart, under the staff member's own key. */
export const staffMemberAdded = eventType('staff-member-added', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ staff: staffId, role, name: textRef, standing: standing.optional() }),
  words: (p, n) => `${n.text(p.name)} added to the staff list as ${p.role}`,
});
export const staffMemberChanged = eventType('staff-member-changed', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    staff: staffId,
    role: role.optional(),
    name: textRef.optional(),
    active: z.boolean().optional(),
    standing: standing.optional(),
  }),
  words: (p, n) => `Staff list entry of ${n.staff(p.staff)} changed`,
});
export const peopleEvents = [staffMemberAdded, staffMemberChanged] as const;
