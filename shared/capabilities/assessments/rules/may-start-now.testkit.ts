/** Invented stays for "may we start": one sign at a time, and the answer of the board in so many words. */
import type { Role } from '../../../kernel/author.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { reading, readings } from './told-start.testkit.ts';

export const pressure = (systolic: number, h: number, extra: object = {}): Reading =>
  reading(['pressure', systolic, extra], h);
export const rate = (perMinute: number, h: number): Reading => reading(['heart-rate', perMinute], h);
export const oxygen = (saturation: number, h: number, litresPerMinute?: number): Reading =>
  reading(['oxygen', saturation, litresPerMinute === undefined ? {} : { litresPerMinute }], h);
export const breathing = (perMinute: number, h: number): Reading => reading(['breathing', perMinute], h);
/** Every sign, and each as it should be. */
export const well = (h: number): Reading[] => readings(h);
/** A check that clears everything, with every sign taken, an hour after arrival. */
export const checked = (h = 1, of: Reading[] = well(h), extra: object = {}): Told => ({
  ...check('walk', h, {}, { readings: of, ...extra }),
  id: `check-${h}`,
});
export const taken = (h: number, of: Reading[], role: Role = 'nurse'): Told => ({
  ...session(h, { readings: of }),
  role,
  id: `walk-${h}`,
});

export const start = (t: number, told: readonly Told[]) =>
  evaluateStay(stayOf(...told), { ...ward, rules: DEFAULT_RULES }, calendar, hours(t));
export const ask = (t: number, told: readonly Told[]) => start(t, told).view.mayStart!;
export const said = (t: number, told: readonly Told[]) =>
  ask(t, told).reasons.map((r) => `${r.word}: ${r.words}`);
