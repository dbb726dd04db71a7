import type { SheetName } from './sheets.ts';

/** What each sheet sends, by the names of the policy document: one of them is enough to open it. */
const COMMANDS: Readonly<Record<SheetName, readonly [string, ...string[]]>> = {
  session: ['record-session'],
  check: ['record-assessment', 'confirm-plan'],
  trigger: ['record-trigger'],
  hold: ['place-hold'],
  'hold-review': ['renew-hold', 'end-hold'],
  order: ['change-order'],
  attachment: ['add-attachment', 'remove-attachment'],
  'on-own': ['set-on-own', 'remove-on-own'],
  goal: ['set-goal'],
  weight: ['record-weight'],
  'usual-way': ['record-usual-way'],
  'seen-walking': ['record-seen-walking'],
  'early-warning': ['record-early-warning'],
  'critical-care': ['record-critical-care-signs'],
  asleep: ['record-asleep'],
  scope: ['set-scope'],
  'wall-showing': ['set-wall-showing'],
  isolation: ['set-isolation'],
  leaving: ['expect-leaving'],
  'therapist-line': ['set-therapist-line'],
  away: ['go-off-ward', 'come-back'],
  move: ['move-stay', 'swap-stays'],
  transfer: ['transfer-stay'],
  leave: ['end-stay'],
  arrival: ['begin-stay'],
};

/** The first command that a sheet is about and that may not be sent by whoever is here; null when it may be used. */
export function refusedCommand(sheet: SheetName, may: (command: string) => boolean): string | null {
  const commands = COMMANDS[sheet];
  return commands.some(may) ? null : commands[0];
}

/**
 * Sheets on which somebody writes down what they saw of the person before them: those ask first who it
 * is. What raises caution never waits for that; what only moves people on paper is done at a desk.
 */
const ASKS_WHO: ReadonlySet<SheetName> = new Set<SheetName>([
  'session',
  'check',
  'on-own',
  'seen-walking',
  'early-warning',
  'critical-care',
  'weight',
]);
export const asksWho = (sheet: SheetName): boolean => ASKS_WHO.has(sheet);
