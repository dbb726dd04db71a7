/** Due dates under rules of one's own; and the times that tests of them share. */
import { HOUR } from '../../../kernel/times.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { check, hours, ward } from './history.testkit.ts';

type Validity = RulesDocument['validity'];
/** The default rules with some values of validity changed, and the roster. */
export function rulesWith(
  values: { readonly [K in keyof Validity]?: unknown } = {},
  shiftsFrom?: readonly string[],
): RulesDocument {
  const validity: Record<string, object> = { ...DEFAULT_RULES.validity };
  for (const [key, value] of Object.entries(values)) validity[key] = { ...validity[key]!, value };
  const roster = shiftsFrom
    ? { shiftsFrom: { ...DEFAULT_RULES.roster.shiftsFrom, value: [...shiftsFrom] } }
    : DEFAULT_RULES.roster;
  return { ...DEFAULT_RULES, validity: validity as unknown as Validity, roster };
}
export function withTrigger(kind: keyof Validity['triggers'], value: number | null): RulesDocument {
  const triggers = {
    ...DEFAULT_RULES.validity.triggers,
    [kind]: { ...DEFAULT_RULES.validity.triggers.fall!, value },
  };
  return { ...DEFAULT_RULES, validity: { ...DEFAULT_RULES.validity, triggers } };
}
export const seen = (record: StayRecord, at: number, rules: RulesDocument = DEFAULT_RULES) => {
  const here = { ...ward, rules };
  return evaluateStay(record, here, wardCalendar(here), at).view;
};
export const due = (record: StayRecord, h: number, rules?: RulesDocument) =>
  seen(record, hours(h), rules).due;
export const rulesSaid = (record: StayRecord, h: number, rules?: RulesDocument) =>
  due(record, h, rules).because.map((b) => b.rule);

/** Each instant (hours after START) from one to another at which the view says that it may change. */
export function changes(record: StayRecord, from: number, to: number, rules = DEFAULT_RULES): number[] {
  const here = { ...ward, rules };
  const calendar = wardCalendar(here);
  const out: number[] = [];
  for (let t = hours(from); ;) {
    const { nextChange } = evaluateStay(record, here, calendar, t);
    if (nextChange === null || nextChange > hours(to)) return out;
    out.push((nextChange - hours(0)) / HOUR);
    t = nextChange;
  }
}

/** The check that most of these stays begin with. */
export const first = { ...check('edge', 1), id: 'first' };
/** One millisecond before. */
export const before = (h: number) => h - 1 / HOUR;
