/**
 * Who may do what, in one table. Roles of the trade, common practice, no source; local law and policy
 * decide. The asymmetry is fixed: anyone can make it safer, only a qualified person can make it freer.
 */
import type { Author, Role } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { refuse } from '../../commanding/decider.ts';
import type { Decider } from '../../commanding/decider.ts';

const EVERYONE: readonly Role[] = [
  'aide',
  'nurse',
  'therapist',
  'charge-nurse',
  'handling-coordinator',
  'manager',
  'records',
  'administrator',
];
const SETTINGS: readonly Role[] = ['administrator', 'manager', 'charge-nurse'];
const QUALIFIED: readonly Role[] = ['nurse', 'therapist', 'charge-nurse'];
const AT_THE_BEDSIDE: readonly Role[] = ['aide', 'handling-coordinator', ...QUALIFIED];
const PLACING: readonly Role[] = [...QUALIFIED, 'manager', 'administrator'];

interface Row {
  readonly roles: readonly Role[];
  /** What someone else does instead. */
  readonly instead: string;
}
const row = (roles: readonly Role[], instead: string): Row => ({ roles, instead });

const settings = row(SETTINGS, 'Ask an administrator, the manager or the charge nurse.');
const placing = row(PLACING, 'Ask a nurse, or whoever keeps the bed list, to enter it.');
const bedside = row(AT_THE_BEDSIDE, 'Ask whoever was at the bedside to enter it.');
const judging = (instead: string) => row(QUALIFIED, instead);
const anyone = row(EVERYONE, '');

const ALLOWED: Readonly<Record<string, Row>> = {
  'set-up-ward': settings,
  'change-ward': settings,
  'add-bed': settings,
  'change-bed': settings,
  'close-bed': settings,
  'publish-protocol': settings,
  'publish-rules': settings,
  'add-staff-member': settings,
  'change-staff-member': settings,

  'begin-stay': placing,
  'move-stay': placing,
  'swap-stays': placing,
  'transfer-stay': placing,
  'end-stay': placing,
  'go-off-ward': row([...AT_THE_BEDSIDE, 'manager', 'administrator'], placing.instead),
  'come-back': row([...AT_THE_BEDSIDE, 'manager', 'administrator'], placing.instead),
  'record-usual-way': bedside,
  'record-weight': bedside,
  'add-attachment': bedside,
  'remove-attachment': judging(
    'Record the trigger "attachment change" and ask a nurse to take it off the list.',
  ),
  'set-scope': judging('Record a trigger, or place a hold, and ask a nurse.'),

  'record-assessment': judging(
    'Record what you saw as a session, or record a trigger, and ask a nurse to check.',
  ),
  'confirm-plan': judging('Record the move as a session; a nurse or therapist confirms the plan.'),
  'record-seen-walking': row(
    ['nurse', 'charge-nurse'],
    'A nurse who saw it records it; until then the plan asks for a check first.',
  ),

  'record-early-warning': bedside,
  'record-critical-care-signs': judging('Ask a nurse or therapist to enter them.'),
  'record-asleep': bedside,

  'record-trigger': anyone,
  'change-order': judging('Place a hold if it is safer, and ask a nurse to enter the order.'),
  'place-hold': anyone,
  'renew-hold': judging('Ask a nurse or therapist to review the hold; it stays on until then.'),
  'end-hold': judging('Ask a nurse or therapist to review the hold; it stays on until then.'),

  'set-on-own': judging('Ask a nurse or therapist; until then somebody goes along.'),
  'remove-on-own': anyone,

  'record-session': bedside,
  'set-goal': judging('Say it to a nurse or therapist, who sets the goal.'),

  'switch-walking-measures': row(['therapist'], 'Ask a therapist; a walk itself is recorded as a session.'),
  'record-walking-measure': judging('Record the walk as a session; a nurse or therapist measures.'),

  'make-addendum': anyone,
  'make-amendment': anyone,
  'make-correction': anyone,
  'make-retraction': anyone,
};

for (const name of COMMAND_TYPES.keys()) {
  if (!ALLOWED[name]) throw new Error(`the policy says nothing about who may ${name}`);
}

export const roleWords = (role: Role): string => role.replaceAll('-', ' ');

export const mayUse = (command: string, role: Role): boolean =>
  ALLOWED[command]?.roles.includes(role) ?? false;

/** Null when the role may use the command at all; the room's own rules come after. */
export function refuseRole(command: string, author: Author): Refusal | null {
  if (mayUse(command, author.role)) return null;
  return refuse(
    'not-your-role',
    `"${command.replaceAll('-', ' ')}" is not for the role ${roleWords(author.role)}`,
    ALLOWED[command]?.instead ?? 'Ask the charge nurse.',
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
      return refuseRole(d.command.name, context.author) ?? d.decide(data, context);
    },
  }));
