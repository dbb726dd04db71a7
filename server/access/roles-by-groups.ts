/**
 * Roles as the provider's groups give them. The ward's staff list stays the only place where a role
 * stands: what differs is put right there by a command, so that the log says when and by what.
 */
import { randomUUID } from 'node:crypto';
import type { Role } from '@footboard/shared/kernel/author';
import type { WardId } from '@footboard/shared/kernel/ids';
import { toIso } from '@footboard/shared/kernel/times';
import { addStaffMember, changeStaffMember } from '@footboard/shared/capabilities/people/commands';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { BY_GROUPS } from '../capabilities/people/author-policy.ts';
import type { Commands } from '../commanding/handle-command.ts';
import { Answered } from '../commanding/problems.ts';
import type { Streams } from '../commanding/streams.ts';
import type { Clock } from '../platform/clock.ts';
import { NOBODY } from './identity.ts';
import type { AccountRecord } from './ports.ts';

export interface RolesByGroupsParts {
  readonly commands: Pick<Commands, 'handle'>;
  readonly streams: Pick<Streams, 'ward'>;
  /** Every ward of this server. */
  readonly wards: readonly WardId[];
  /** The ward's clock, which entries are recorded by. */
  readonly clock: Clock;
}

interface Given {
  /** The wards whose roles the groups give. */
  readonly managed: readonly WardId[];
  readonly roles: ReadonlyMap<WardId, Role>;
}

/**
 * @returns whether the person has a role anywhere now, and whether any of theirs was changed or should
 *   have been: then what they have open must end.
 * @throws Answered when the database is away or a role cannot be given.
 */
export async function rolesByGroups(
  { commands, streams, wards, clock }: RolesByGroupsParts,
  account: Pick<AccountRecord, 'staff' | 'name'>,
  { managed, roles }: Given,
): Promise<{ readonly placed: boolean; readonly changed: boolean }> {
  const { staff, name } = account;
  let placed = false;
  let changed = false;
  for (const ward of new Set([...wards, ...managed])) {
    const { state } = await streams.ward(ward);
    if (!state) continue;
    const member = state.staff.get(staff);
    if (!managed.includes(ward)) {
      placed ||= member?.active === true;
      continue;
    }
    const role = roles.get(ward);
    placed ||= role !== undefined;
    const asked = difference(member, role);
    if (asked === null) continue;
    changed = true;
    const answer = await commands.handle({
      ward,
      name: asked.command,
      claim: NOBODY,
      own: BY_GROUPS,
      body: {
        commandId: randomUUID(),
        occurred: { at: toIso(clock.now()) },
        entered: { at: toIso(clock.now()), offsetMinutes: 0 },
        source: { kind: 'import' },
        expect: 'latest',
        data: { staff, ...asked.data, ...(member ? {} : { name }) },
      },
    });
    // A list must keep somebody who can keep it: the last one stays on it, but is not let in by it.
    if ('problem' in answer && answer.problem.type !== '/problems/last-to-keep-list') {
      throw new Answered(answer.problem);
    }
  }
  return { placed, changed };
}

type Member = WardState['staff'] extends ReadonlyMap<unknown, infer M> ? M : never;

function difference(
  member: Member | undefined,
  role: Role | undefined,
): { readonly command: string; readonly data: object } | null {
  if (role === undefined) {
    return member?.active ? { command: changeStaffMember.name, data: { active: false } } : null;
  }
  if (!member) return { command: addStaffMember.name, data: { role } };
  if (member.active && member.role === role) return null;
  return { command: changeStaffMember.name, data: { role, active: true } };
}
