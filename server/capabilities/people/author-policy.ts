/**
 * Who says it. A command's body cannot choose its author: a policy makes one of what the request
 * claims and of the ward's staff list.
 *
 * The policy here trusts the claim: whoever holds a device says who they are, as on a paper chart.
 * It proves nothing. Sign-in is a later part of Footboard; it will be another AuthorPolicy, and
 * nothing else changes. Until then the server listens on this machine only unless told otherwise.
 */
import type { Author, Role } from '@footboard/shared/kernel/author';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { addStaffMember } from '@footboard/shared/capabilities/people/commands';
import { setUpWard } from '@footboard/shared/capabilities/wards/commands';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import type { Problem } from '@footboard/shared/wire/http';
import { problem } from '../../commanding/problems.ts';

export const STAFF_HEADER = 'x-footboard-staff';

export interface AuthorClaim {
  /** Staff id from the header; null when the request names nobody. */
  readonly staff: string | null;
}

export interface AuthorPolicy {
  authorOf(
    claim: AuthorClaim,
    command: string,
    ward: WardState | null,
  ): Author | { readonly problem: Problem };
  /** Who the request claims to come from, believed or not: a repeat is answered only to the same claim. */
  claimed(claim: AuthorClaim): StaffId;
}
export const AUTHOR_POLICY = Symbol('AuthorPolicy');

/** Stands for whoever sets the ward up, before there is a staff list to choose from. */
export const FIRST_RUN: Author = { staff: 'first-run' as StaffId, role: 'administrator' };

const KEEPS_STAFF_LIST: ReadonlySet<Role> = new Set(['administrator', 'manager', 'charge-nurse']);

/**
 * First run lasts until the ward has somebody who may keep its staff list; otherwise a list begun
 * with an aide could never grow.
 */
const isFirstRun = (ward: WardState | null): boolean =>
  !ward || ![...ward.staff.values()].some((member) => member.active && KEEPS_STAFF_LIST.has(member.role));

export const staffListPolicy: AuthorPolicy = {
  claimed: ({ staff }) => (staff as StaffId | null) ?? FIRST_RUN.staff,

  authorOf({ staff }, command, ward) {
    const member = staff === null ? undefined : ward?.staff.get(staff as StaffId);
    if (member?.active) {
      const mayGoOn = !isFirstRun(ward) || command !== addStaffMember.name;
      if (mayGoOn) return { staff: staff as StaffId, role: member.role };
    }
    if (isFirstRun(ward) && (command === addStaffMember.name || command === setUpWard.name)) {
      return FIRST_RUN;
    }
    if (staff === null) {
      return {
        problem: problem(
          'no-author',
          `The request does not say who makes the entry (header ${STAFF_HEADER}).`,
          ward && ward.staff.size === 0
            ? 'Add the first staff member, then choose who you are.'
            : 'Choose who you are on this device.',
        ),
      };
    }
    return {
      problem: member
        ? problem(
            'inactive-author',
            'That staff member is marked as no longer active on this ward.',
            'Choose another name, or ask whoever keeps the staff list.',
          )
        : problem(
            'unknown-author',
            `The staff list of this ward has nobody with the id "${staff.slice(0, 64)}".`,
            'Choose your name from the list, or ask whoever keeps it to add you.',
          ),
    };
  },
};
