/**
 * The questions that come before any rule of a room, from the one policy document
 * (shared/capabilities/people/policy/document.ts).
 */
import type { Role } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { policyRow } from '@footboard/shared/capabilities/people/policy/document';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { refuse } from '../../commanding/decider.ts';
import type { Decider } from '../../commanding/decider.ts';

for (const name of COMMAND_TYPES.keys()) {
  if (policyRow(name)?.kind !== 'command') throw new Error(`the policy says nothing about who may ${name}`);
}

export const roleWords = (role: Role): string => role.replaceAll('-', ' ');

export const mayUse = (command: string, role: Role): boolean =>
  policyRow(command)?.actors.includes(role) ?? false;

/** Null when the role may use the command at all; the room's own rules come after. */
export function refuseRole(command: string, role: Role): Refusal | null {
  if (mayUse(command, role)) return null;
  return refuse(
    'not-your-role',
    `"${command.replaceAll('-', ' ')}" is not for the role ${roleWords(role)}`,
    policyRow(command)?.instead || 'Ask the charge nurse.',
  );
}

/** Puts the two questions that come before any rule of a room: is there a ward, and may this role. */
export const underPolicy = (deciders: readonly Decider[]): readonly Decider[] =>
  deciders.map((d) => ({
    ...d,
    decide: (data, context) => {
      if (context.ward === null && d.command.name !== 'set-up-ward') {
        return refuse(
          'ward-not-set-up',
          'this ward has no name, clock or beds yet',
          'Set the ward up first, on the set-up page.',
        );
      }
      return refuseRole(d.command.name, context.entitled) ?? d.decide(data, context);
    },
  }));
