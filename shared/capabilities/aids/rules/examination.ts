/**
 * When a piece is to be examined next: by the date told, by the last examination and the ward's interval for
 * its kind, or by the earlier of both. The interval and its source stand in the ward's rules (`aids`).
 */
import { sayDayTime } from '../../wards/rules/calendar.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { ItemDescription } from '../values.ts';

/** A date so many months later; where that month is too short, its last day: 31 August and six months is 28 February. */
export function monthsAfter(date: string, months: number): string {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  const first = new Date(Date.UTC(year, month - 1 + months, 1));
  const last = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  first.setUTCDate(Math.min(day, last));
  return first.toISOString().slice(0, 10);
}

/** Date of the next examination, like 2026-10-25; null when neither a date nor a last examination is known. */
export function examinationDue(
  is: Pick<ItemDescription, 'kind' | 'inspectionDue' | 'lastExamined'>,
  rules: RulesDocument['aids'],
): string | null {
  const last = is.lastExamined ?? null;
  const due = last === null ? null : monthsAfter(last, rules.examinationMonths[is.kind].value);
  if (due === null || is.inspectionDue === null) return due ?? is.inspectionDue;
  return due < is.inspectionDue ? due : is.inspectionDue;
}

/** '2026-10-24' as the boards write a date that may lie in another year: '24 Oct 2026'. */
export function sayDate(date: string): string {
  const [day, month] = sayDayTime('UTC', Date.parse(date)).split(' ');
  return `${day} ${month} ${date.slice(0, 4)}`;
}
