/** Signs of decline and of readiness over small stays: for tests of single ones. */
import type { WardState } from '../../wards/context.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  recordOf,
  session,
  stayOf,
  ward,
  type StageId,
  type Told,
} from './history.testkit.ts';

type Kind = 'stages-lost' | 'refusals' | 'below-baseline' | 'ready';
/** A stay at an hour after the arrival, and when it can change next. */
export const look = (h: number, told: readonly Told[], of: WardState = ward) =>
  evaluateStay(stayOf(...told), of, calendar, hours(h));
/** The sign of a kind at that hour, if it is told. */
export const sign = (kind: Kind, h: number, told: readonly Told[], of: WardState = ward) =>
  look(h, told, of).view.signs.find((s) => s.kind === kind);
/** Every kind of sign that is told at that hour. */
export const kindsAt = (h: number, told: readonly Told[], of: WardState = ward) =>
  look(h, told, of).view.signs.map((s) => s.kind);
/** The same of a stay whose arrival nobody entered. */
export const signWithoutArrival = (kind: Kind, h: number, told: readonly Told[]) =>
  evaluateStay(recordOf(told), ward, calendar, hours(h)).view.signs.find((s) => s.kind === kind);

/** The invented ward with rules of its own. */
export const rulesWith = (change: (rules: typeof DEFAULT_RULES) => void): WardState => {
  const rules = structuredClone(DEFAULT_RULES);
  change(rules);
  return { ...ward, rules };
};
export const fails = (stage: StageId, at: number, more: Partial<Told> = {}): Told => ({
  ...check(stage, at, { [stage]: { outcome: 'not-met' } }),
  ...more,
});
/** Easy, and done. */
export const did = (at: number, activity: string, extra: object = {}): Told => ({
  ...session(at, { activities: [activity], effort: 3, ...extra }),
  id: `s-${at}`,
});
export const usual = (moves: string, transfers = 'alone'): Told => ({
  type: 'usual-way-recorded',
  at: 0.5,
  id: 'usual',
  payload: { usual: { moves, transfers, stairs: 'no' } },
});
