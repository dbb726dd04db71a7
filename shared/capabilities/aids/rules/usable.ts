/** Whether a piece of equipment can be used now, with every reason for and against. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import { examinationDue, sayDate } from './examination.ts';
import { itemAt, type ItemState } from './item-state.ts';
import type { ItemDescription } from '../values.ts';

export interface Usable {
  readonly word: 'usable' | 'in-use' | 'not-usable' | 'unknown';
  /** What speaks against it, in words; empty when it is usable. */
  readonly against: readonly string[];
}
export interface UsableWhy extends Usable {
  /** Of what speaks against it, what nobody has said lately. */
  readonly unknown: readonly string[];
}
export const NO_DATE = 'no date of its next examination';

const plain = (code: string): string => code.replaceAll('-', ' ');

/**
 * Usable = in date, clean, charged, in service, where somebody saw it, and nobody has it (users' job,
 * lifts and slings: fields and rules). What is not known makes it unknown, never usable.
 *
 * @param today date on the ward's clock, like 2026-10-25
 * @param note told when the answer can change by time alone
 */
export function usableAt(
  is: ItemDescription,
  state: ItemState,
  t: EpochMs,
  today: string,
  rules: RulesDocument['aids'],
  note: (at: EpochMs) => void,
): UsableWhy {
  const now = itemAt(state, t, rules, note);
  const no: string[] = [];
  const unknown: string[] = [];
  if (now.outOfService) no.push(`out of service (${plain(now.outOfService.defect)})`);
  if (now.missing) no.push('not there when looked for');
  if (now.clean?.is === false) no.push('dirty');
  const due = examinationDue(is, rules);
  if (due !== null && due < today) no.push(`examination was due ${sayDate(due)}`);
  if (is.powered && now.battery?.band === 'flat') no.push('battery flat');

  if (!now.missing && !now.inUse && !now.place && is.kind !== 'ceiling-lift')
    unknown.push('nobody has said where it is');
  if (!now.clean) unknown.push('nobody has said that it is clean');
  if (is.powered && !now.battery) unknown.push('battery not read');
  if (due === null && is.safeLoadKg !== null) unknown.push(NO_DATE);
  if (state.inUse && !now.inUse) unknown.push('taken long ago, not said to be back');

  if (no.length > 0) return { word: 'not-usable', against: [...no, ...unknown], unknown };
  if (now.inUse) return { word: 'in-use', against: ['somebody has it'], unknown };
  return { word: unknown.length > 0 ? 'unknown' : 'usable', against: unknown, unknown };
}
