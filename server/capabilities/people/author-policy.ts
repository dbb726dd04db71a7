/**
 * Who says it. A command's body cannot choose its author: a policy makes one of what the server
 * knows of the request and of the ward's staff list.
 *
 * With accounts, a signed-in person (or one who typed their short code) speaks in the role that the
 * ward's list gives them. A name that is only claimed can raise caution: such an entry stands as an
 * aide's, marked unconfirmed, until its author confirms it. With sign-in off (the demo), the claim
 * is believed.
 */
import type { Author, Role, Source } from '@footboard/shared/kernel/author';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { policyRow } from '@footboard/shared/capabilities/people/policy/document';
import { addStaffMember } from '@footboard/shared/capabilities/people/commands';
import { setUpWard } from '@footboard/shared/capabilities/wards/commands';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import type { Problem } from '@footboard/shared/wire/http';
import { glassMay } from '../../access/gate.ts';
import type { Gate, Pass } from '../../access/gate.ts';
import type { Identity } from '../../access/identity.ts';
import { problem } from '../../commanding/problems.ts';
import { mayUse } from './policy.ts';

export const STAFF_HEADER = 'x-footboard-staff';

/** An author as the policy settled them. */
export interface Voice {
  readonly author: Author;
  /** The role whose rights apply to the command. */
  readonly entitled: Role;
  /** What the server adds to the entry's source. */
  readonly adds: Pick<Source, 'unconfirmed' | 'cosign'>;
}

export interface AuthorPolicy {
  authorOf(
    claim: Identity,
    command: string,
    id: WardId,
    ward: WardState | null,
  ): Promise<Voice | { readonly problem: Problem }>;
  /** Who the request claims to come from, believed or not: a repeat is answered only to the same claim. */
  claimed(claim: Identity): StaffId;
}

/** Stands for whoever sets the ward up, before there is a staff list to choose from. */
export const FIRST_RUN: Author = { staff: 'first-run' as StaffId, role: 'administrator' };

/** Stands for the provider's groups, where single sign-on keeps the staff list by them. */
export const BY_GROUPS: Author = { staff: 'single-sign-on' as StaffId, role: 'administrator' };

const KEEPS_STAFF_LIST: ReadonlySet<Role> = new Set(['administrator', 'manager', 'charge-nurse']);

export const plainly = (author: Author, adds: Voice['adds'] = {}): Voice => ({
  author,
  entitled: author.role,
  adds,
});

/** Entries of agency staff and students wait for a second signature. */
const cosignOf = (ward: WardState | null, staff: StaffId): Voice['adds'] => {
  const standing = ward?.staff.get(staff)?.standing;
  return standing === 'agency' || standing === 'student' ? { cosign: standing } : {};
};

const anothersEntry = (): Problem =>
  problem(
    'sign-in-first',
    'This entry was made by somebody else than the person who is signed in.',
    'It stays on this device until the one who made it signs in, and is not taken for yours.',
  );

export const accountsPolicy = (gate: Gate): AuthorPolicy => ({
  claimed: ({ person, claimed }) => claimed ?? person?.staff ?? FIRST_RUN.staff,

  async authorOf(identity, command, id, ward) {
    // An entry that waited on a device is its author's, whoever has signed in there since.
    const anothers =
      identity.person !== null && identity.claimed !== null && identity.claimed !== identity.person.staff;
    const person = anothers ? null : identity.person;
    if (person) {
      const passes = await gate.passes(identity, id, ward);
      const own = passes.filter(
        (pass): pass is Pass & { actor: Role } => pass.actor !== 'wall' && pass.actor !== 'device',
      );
      const pass = own.find((p) => !p.glass && mayUse(command, p.actor)) ?? own[0];
      if (!pass) return gate.on(identity, command, id, ward) as Promise<{ problem: Problem }>;
      if (pass.glass && !glassMay(command)) {
        return gate.on(identity, command, id, ward) as Promise<{ problem: Problem }>;
      }
      return plainly({ staff: person.staff, role: pass.actor }, cosignOf(ward, person.staff));
    }
    const { claimed } = identity;
    const member = claimed === null ? undefined : ward?.staff.get(claimed);
    const hereOrRanOut =
      (identity.ranOut && !anothers) || (identity.device?.kind === 'shared' && identity.device.ward === id);
    if (
      claimed !== null &&
      member?.active &&
      hereOrRanOut &&
      policyRow(command)?.unconfirmed === 'recorded'
    ) {
      return {
        author: { staff: claimed, role: 'aide' },
        entitled: member.role,
        adds: { ...cosignOf(ward, claimed), unconfirmed: true },
      };
    }
    if (anothers) return { problem: anothersEntry() };
    const passed = await gate.on({ ...identity, person: null, device: null }, command, id, ward);
    return 'problem' in passed
      ? passed
      : { problem: problem('sign-in-first', 'Nobody is signed in here.', 'Sign in, then send it again.') };
  },
});

/**
 * First run lasts until the ward has somebody who may keep its staff list; otherwise a list begun
 * with an aide could never grow.
 */
const isFirstRun = (ward: WardState | null): boolean =>
  !ward || ![...ward.staff.values()].some((member) => member.active && KEEPS_STAFF_LIST.has(member.role));

/** Sign-in is off: whoever holds a device says who they are, as on a paper chart. It proves nothing. */
export const openPolicy: AuthorPolicy = {
  claimed: ({ claimed }) => claimed ?? FIRST_RUN.staff,

  async authorOf({ claimed }, command, _id, ward) {
    const member = claimed === null ? undefined : ward?.staff.get(claimed);
    if (claimed !== null && member?.active) {
      const mayGoOn = !isFirstRun(ward) || command !== addStaffMember.name;
      if (mayGoOn) return plainly({ staff: claimed, role: member.role }, cosignOf(ward, claimed));
    }
    if (isFirstRun(ward) && (command === addStaffMember.name || command === setUpWard.name)) {
      return plainly(FIRST_RUN);
    }
    if (claimed === null) {
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
            `The staff list of this ward has nobody with the id "${claimed.slice(0, 64)}".`,
            'Choose your name from the list, or ask whoever keeps it to add you.',
          ),
    };
  },
};
