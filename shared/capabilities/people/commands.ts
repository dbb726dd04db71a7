import { z } from 'zod';
import { role, standing } from '../../kernel/author.ts';
import { commandType } from '../../kernel/command-type.ts';
import { staffId } from '../../kernel/ids.ts';

export const addStaffMember = commandType(
  'add-staff-member',
  'Add a person to the staff list of the ward.',
  z.strictObject({
    staff: staffId,
    name: z.string().trim().min(1).max(80),
    role,
    /** Left out: the ward's own staff. */
    standing: standing.optional(),
  }),
);
export const changeStaffMember = commandType(
  'change-staff-member',
  "Change a staff member's name, role, standing or whether they are active.",
  z.strictObject({
    staff: staffId,
    name: z.string().trim().min(1).max(80).optional(),
    role: role.optional(),
    active: z.boolean().optional(),
    standing: standing.optional(),
  }),
);
export const peopleCommands = [addStaffMember, changeStaffMember] as const;
