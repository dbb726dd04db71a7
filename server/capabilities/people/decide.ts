/** The staff list. Names are kept apart, under each staff member's own key. */
import {
  addStaffMember as addStaffMemberCommand,
  changeStaffMember as changeStaffMemberCommand,
} from '@footboard/shared/capabilities/people/commands';
import { staffMemberAdded, staffMemberChanged } from '@footboard/shared/capabilities/people/events';
import type { Role } from '@footboard/shared/kernel/author';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import { mayUse, underPolicy } from './policy.ts';

const addStaffMember = decider({
  command: addStaffMemberCommand,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    if (context.ward?.staff.has(data.staff)) {
      return refuse(
        'staff-known',
        `the staff list already has the id ${data.staff}`,
        'Change that entry, or use another id.',
        '/staff',
      );
    }
    return accept(
      newEvent(staffMemberAdded, streamKey('ward', context.wardId), {
        staff: data.staff,
        role: data.role,
        name: context.keep(`staff/${data.staff}`, data.name),
        ...(data.standing === undefined ? {} : { standing: data.standing }),
      }),
    );
  },
});

/** A list that nobody may keep could never be put right. */
const keepsTheList = ({ role, active }: { readonly role: Role; readonly active: boolean }): boolean =>
  active && mayUse(changeStaffMemberCommand.name, role);

const changeStaffMember = decider({
  command: changeStaffMemberCommand,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    const known = context.ward?.staff.get(data.staff);
    if (!known) {
      return refuse(
        'staff-unknown',
        `nobody on the staff list has the id ${data.staff}`,
        'Choose someone from the staff list, or add them first.',
        '/staff',
      );
    }
    if (
      data.name === undefined &&
      (data.role ?? known.role) === known.role &&
      (data.active ?? known.active) === known.active &&
      (data.standing ?? known.standing) === known.standing
    ) {
      return refuse(
        'nothing-to-change',
        'the entry already says this',
        'Change a name, a role, the standing or active.',
      );
    }
    const after = [...context.ward!.staff].map(([id, member]) =>
      id === data.staff
        ? { role: data.role ?? known.role, active: data.active ?? known.active }
        : { role: member.role, active: member.active },
    );
    if (keepsTheList(known) && !after.some(keepsTheList)) {
      return refuse(
        'last-to-keep-list',
        `nobody else who is active may keep the staff list of ${context.ward!.name}`,
        'Add or choose someone to keep it first: an administrator, the manager or a charge nurse.',
        data.active === false ? '/active' : '/role',
      );
    }
    // A keeper of the list who could become a nurse at will could make plans freer at will.
    if (data.staff === context.author.staff && data.role !== undefined && data.role !== known.role) {
      return refuse(
        'own-role',
        'your own role is changed by somebody else who keeps the staff list',
        'Ask another administrator, manager or charge nurse.',
        '/role',
      );
    }
    return accept(
      newEvent(staffMemberChanged, streamKey('ward', context.wardId), {
        staff: data.staff,
        ...(data.role === undefined ? {} : { role: data.role }),
        ...(data.active === undefined ? {} : { active: data.active }),
        ...(data.standing === undefined ? {} : { standing: data.standing }),
        ...(data.name === undefined ? {} : { name: context.keep(`staff/${data.staff}`, data.name) }),
      }),
    );
  },
});

export const deciders = underPolicy([addStaffMember, changeStaffMember]);
