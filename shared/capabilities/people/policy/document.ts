/**
 * Who may do what: the one policy document. Commands, queries, live messages, exports and account
 * matters alike stand here, and nowhere else. Roles of the trade, common practice, no source; local
 * law and policy decide. The asymmetry is fixed: anyone can make it safer, only a qualified person
 * can make it freer.
 *
 * Everything is scoped by ward: a row speaks of the ward on whose staff list (or in whose pairing)
 * the actor has that role. docs/authorisation.md is made from this file.
 */
import type { Role } from '../../../kernel/author.ts';

/** A role, or what acts without a person: a shared device of the ward nobody signed in on, and a wall. */
export const ACTORS = [
  'aide',
  'nurse',
  'therapist',
  'charge-nurse',
  'handling-coordinator',
  'manager',
  'records',
  'administrator',
  'device',
  'wall',
] as const satisfies readonly (Role | 'device' | 'wall')[];
export type Actor = (typeof ACTORS)[number];

export type ActionKind = 'command' | 'query' | 'live' | 'export' | 'account' | 'concern';

export interface PolicyRow {
  readonly action: string;
  readonly kind: ActionKind;
  readonly actors: readonly Actor[];
  /** What the action can do to the help that is shown: a `safer` row is open to every role. */
  readonly moves: 'safer' | 'freer' | 'neither';
  /**
   * For commands whose author could not be checked (a claimed name on a device of the ward, an
   * expired session). `recorded`: kept at once as an aide's entry marked unconfirmed, so that it can
   * only raise help until its author confirms it. `waits`: stays on the device until they sign in.
   */
  readonly unconfirmed: 'recorded' | 'waits';
  /** What somebody does instead whose role may not. */
  readonly instead: string;
}

const ROLES = ACTORS.filter((a): a is Role => a !== 'device' && a !== 'wall');
const SETTINGS = ['administrator', 'manager', 'charge-nurse'] as const;
const QUALIFIED = ['nurse', 'therapist', 'charge-nurse'] as const;
const AT_THE_BEDSIDE = ['aide', 'handling-coordinator', ...QUALIFIED] as const;
const ON_THE_WARD = [...AT_THE_BEDSIDE, 'manager'] as const;
const PLACING = [...QUALIFIED, 'manager', 'administrator'] as const;

type Extra = Partial<Pick<PolicyRow, 'moves' | 'unconfirmed'>>;
const rows = (
  kind: ActionKind,
  actors: readonly Actor[],
  instead: string,
  actions: readonly string[],
  { moves = 'neither', unconfirmed = 'waits' }: Extra = {},
): readonly PolicyRow[] => actions.map((action) => ({ action, kind, actors, moves, unconfirmed, instead }));

const askSettings = 'Ask an administrator, the manager or the charge nurse.';
const askPlacing = 'Ask a nurse, or whoever keeps the bed list, to enter it.';
const askBedside = 'Ask whoever was at the bedside to enter it.';
const askReview = 'Ask a nurse or therapist to review the hold; it stays on until then.';
const askStaff = 'Ask somebody of the ward, or open it for an emergency with a reason.';
const freer = { moves: 'freer' } as const;
const safer = { moves: 'safer', unconfirmed: 'recorded' } as const;
const seen = { unconfirmed: 'recorded' } as const;

export const POLICY: readonly PolicyRow[] = [
  ...rows('command', SETTINGS, askSettings, [
    'set-up-ward',
    'change-ward',
    'add-bed',
    'change-bed',
    'close-bed',
    'publish-protocol',
    'publish-rules',
    'add-staff-member',
    'change-staff-member',
  ]),
  ...rows('command', PLACING, askPlacing, [
    'begin-stay',
    'move-stay',
    'swap-stays',
    'transfer-stay',
    'end-stay',
  ]),
  ...rows('command', [...AT_THE_BEDSIDE, 'manager', 'administrator'], askPlacing, [
    'go-off-ward',
    'come-back',
  ]),
  ...rows(
    'command',
    AT_THE_BEDSIDE,
    askBedside,
    ['record-usual-way', 'record-weight', 'add-attachment', 'record-early-warning', 'record-session'],
    seen,
  ),
  ...rows('command', AT_THE_BEDSIDE, askBedside, ['record-asleep']),
  ...rows(
    'command',
    QUALIFIED,
    'Record the trigger "attachment change" and ask a nurse to take it off the list.',
    ['remove-attachment'],
    freer,
  ),
  ...rows('command', QUALIFIED, 'Record a trigger, or place a hold, and ask a nurse.', ['set-scope'], freer),
  ...rows(
    'command',
    QUALIFIED,
    'Record what you saw as a session, or record a trigger, and ask a nurse to check.',
    ['record-assessment'],
    { moves: 'freer', unconfirmed: 'recorded' },
  ),
  ...rows(
    'command',
    QUALIFIED,
    'Record the move as a session; a nurse or therapist confirms the plan.',
    ['confirm-plan'],
    freer,
  ),
  ...rows(
    'command',
    ['nurse', 'charge-nurse'],
    'A nurse who saw it records it; until then the plan asks for a check first.',
    ['record-seen-walking'],
    freer,
  ),
  ...rows('command', QUALIFIED, 'Ask a nurse or therapist to enter them.', ['record-critical-care-signs'], {
    moves: 'freer',
  }),
  ...rows('command', ROLES, '', ['record-trigger', 'place-hold', 'remove-on-own'], safer),
  ...rows(
    'command',
    QUALIFIED,
    'Place a hold if it is safer, and ask a nurse to enter the order.',
    ['change-order'],
    freer,
  ),
  ...rows('command', QUALIFIED, askReview, ['renew-hold', 'end-hold'], freer),
  ...rows(
    'command',
    QUALIFIED,
    'Ask a nurse or therapist; until then somebody goes along.',
    ['set-on-own'],
    freer,
  ),
  ...rows('command', QUALIFIED, 'Say it to a nurse or therapist, who sets the goal.', ['set-goal'], freer),
  ...rows('command', ['therapist'], 'Ask a therapist; a walk itself is recorded as a session.', [
    'switch-walking-measures',
  ]),
  ...rows('command', QUALIFIED, 'Record the walk as a session; a nurse or therapist measures.', [
    'record-walking-measure',
  ]),
  ...rows('command', ROLES, '', ['make-addendum', 'make-amendment', 'make-correction', 'make-retraction']),
  // The claimed author alone may confirm: the decider sees to that.
  ...rows('command', ROLES, '', ['confirm-entry']),
  ...rows('command', QUALIFIED, 'Ask a nurse or therapist who saw it, or can answer for it.', [
    'cosign-entry',
  ]),
  ...rows('command', QUALIFIED, 'Tell a nurse what the person wishes.', ['set-wall-showing']),
  ...rows('command', QUALIFIED, 'Ask a nurse: infection steps are set and ended by a nurse.', [
    'set-isolation',
  ]),
  ...rows('command', [...QUALIFIED, 'manager', 'administrator'], askPlacing, ['expect-leaving']),
  ...rows('command', QUALIFIED, 'Tell a nurse or therapist what whoever comes next should know.', [
    'set-therapist-line',
  ]),
  ...rows('command', AT_THE_BEDSIDE, 'Ask whoever goes to see the person.', [
    'take-visit',
    'hand-over-visit',
    'give-back-visit',
    'name-second',
    'give-back-second',
  ]),
  ...rows('command', ON_THE_WARD, askStaff, ['hold-huddle', 'agree-action', 'close-action']),
  ...rows('command', ['nurse', 'charge-nurse', 'manager'], 'Ask the charge nurse.', ['name-carers']),
  ...rows('command', ['charge-nurse', 'handling-coordinator', 'manager'], 'Ask the charge nurse.', [
    'set-people-on',
    'accept-day-plan',
  ]),
  ...rows('command', PLACING, askPlacing, ['expect-arrival', 'close-expected-arrival']),
  ...rows(
    'command',
    [...SETTINGS, 'handling-coordinator'],
    'Ask the handling coordinator or the charge nurse.',
    ['add-item', 'change-item', 'withdraw-item'],
  ),
  ...rows('command', AT_THE_BEDSIDE, 'Ask whoever has it.', [
    'take-item',
    'bring-item-back',
    'see-item',
    'record-cleaning',
    'read-battery',
    'bind-item',
  ]),
  ...rows(
    'command',
    ['nurse', 'charge-nurse', 'handling-coordinator', 'manager'],
    'Ask a nurse or the handling coordinator.',
    ['lend-item'],
  ),
  ...rows('command', ON_THE_WARD, 'Ask whoever has it.', ['give-back-item']),
  ...rows('command', ROLES, '', ['miss-item', 'take-out-of-service']),
  ...rows(
    'command',
    ['handling-coordinator'],
    'The handling coordinator looks at it and returns it to service.',
    ['return-to-service'],
  ),

  ...rows('query', [...ROLES, 'device', 'wall'], askStaff, ['read-board']),
  ...rows('query', [...ON_THE_WARD, 'records', 'device'], askStaff, [
    'read-board-then',
    'read-huddle',
    'read-forecast',
    'read-round',
    'read-items',
    'read-totals',
    'read-people-on',
    'read-day-plan',
  ]),
  ...rows('query', [...ON_THE_WARD, 'device'], askStaff, ['propose-day-plan']),
  ...rows('query', [...ON_THE_WARD, 'records'], askStaff, ['read-stay']),
  // Only at a level that has them: the address sees to that. Administrators have none.
  ...rows('query', [...ON_THE_WARD, 'records', 'device', 'wall'], askStaff, ['read-initials']),
  ...rows('query', ROLES, askStaff, ['read-receipts']),
  ...rows('query', ON_THE_WARD, askStaff, ['read-fit']),
  ...rows(
    'query',
    ['therapist', 'charge-nurse', 'handling-coordinator', 'manager', 'records'],
    'Ask the charge nurse, a therapist or the handling coordinator.',
    ['read-round-acts'],
  ),
  ...rows(
    'query',
    ['therapist', 'charge-nurse', 'handling-coordinator', 'manager'],
    'Ask the charge nurse, a therapist or the manager.',
    ['read-fairness'],
  ),
  ...rows(
    'query',
    [...SETTINGS, 'handling-coordinator'],
    'Ask the handling coordinator or the charge nurse.',
    ['make-labels'],
  ),
  ...rows(
    'query',
    ['charge-nurse', 'handling-coordinator', 'manager'],
    'Ask the handling coordinator or the charge nurse.',
    ['read-coordinator-list'],
  ),
  ...rows('query', [...ON_THE_WARD, 'device'], askStaff, ['make-sheet', 'read-sheets']),
  ...rows('query', [...ROLES, 'device'], askStaff, ['read-staff', 'read-rules', 'read-protocols']),
  ...rows('query', ['records', 'manager', 'administrator'], 'Ask the records role.', ['verify-log']),
  ...rows('query', ROLES, askStaff, ['read-own-entries']),
  ...rows('query', ['records'], 'Ask whoever keeps the records (the privacy officer).', [
    'read-access-log',
    'read-retention',
  ]),
  ...rows('export', ['records'], 'Ask whoever keeps the records (the privacy officer).', [
    'export-stay',
    'erase-stay',
    'erase-staff',
  ]),
  ...rows('query', [...SETTINGS, 'records'], askSettings, ['read-glass']),
  ...rows(
    'account',
    ['charge-nurse', 'manager', 'records'],
    'Ask the charge nurse, the manager or the records role.',
    ['review-glass'],
  ),
  ...rows('account', SETTINGS, askSettings, [
    'keep-accounts',
    'approve-device',
    'list-devices',
    'revoke-device',
  ]),

  // Near misses and strain stand apart from the record; what is told there moves no help.
  ...rows('concern', [...ROLES, 'device'], askStaff, ['tell-concern']),
  ...rows('concern', ['handling-coordinator'], 'Ask the handling coordinator.', ['read-concerns']),
  ...rows('concern', ['handling-coordinator', 'manager'], 'Ask the manager or the handling coordinator.', [
    'count-concerns',
  ]),

  ...rows('live', [...ROLES, 'device', 'wall'], askStaff, ['join-ward']),
  ...rows('live', [...ROLES, 'device', 'wall'], '', ['leave-ward', 'say-painted']),
];

/**
 * What needs no role on a ward: anybody at all (`anyone`: before sign-in), or whoever has signed in
 * (`signed-in`: their own session, the list of their wards, breaking the glass with a reason).
 */
export const WITHOUT_A_WARD = {
  'read-health': 'anyone',
  'read-openapi': 'anyone',
  'read-problem-page': 'anyone',
  'read-me': 'anyone',
  'sign-in': 'anyone',
  'sign-out': 'anyone',
  'use-invitation': 'anyone',
  'begin-single-sign-on': 'anyone',
  'begin-pairing': 'anyone',
  /** On a device of the ward only: the signing service sees to that. */
  'sign-with-code': 'anyone',
  'list-wards': 'anyone',
  'change-own-secret': 'signed-in',
  'break-glass': 'signed-in',
  'keep-all-accounts': 'wide',
} as const satisfies Record<string, 'anyone' | 'signed-in' | 'wide'>;
export type ActionWithoutWard = keyof typeof WITHOUT_A_WARD;

const BY_ACTION = new Map(POLICY.map((row) => [row.action, row]));
export const policyRow = (action: string): PolicyRow | undefined => BY_ACTION.get(action);

/** How much of a board an actor is shown. `whole` has plans with their whys; the others are for walls. */
export const BOARD_LEVELS = ['whole', 'initials', 'bed-only', 'visitors'] as const;
export type BoardLevel = (typeof BOARD_LEVELS)[number];
