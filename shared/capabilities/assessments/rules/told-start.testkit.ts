/** Invented stays for what may start: signs, sessions, and the answer told whole. */
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
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
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';

export const at = (h: number) => toIso(hours(h));
export type Said = readonly [kind: Reading['kind'], value: number, more?: object];
export const VALUE = {
  pressure: 'systolic',
  'heart-rate': 'perMinute',
  oxygen: 'saturation',
  breathing: 'perMinute',
  temperature: 'celsius',
  pain: 'outOfTen',
} as const satisfies Record<Reading['kind'], string>;
export const reading = ([kind, value, more = {}]: Said, h: number): Reading =>
  ({
    kind,
    ...(kind === 'pressure' ? { posture: 'lying', diastolic: 35 } : {}),
    [VALUE[kind]]: value,
    at: at(h),
    ...more,
  }) as Reading;
export const WELL: readonly Said[] = [
  ['pressure', 120],
  ['heart-rate', 80],
  ['oxygen', 97],
  ['breathing', 16],
  ['temperature', 37],
  ['pain', 0],
];
export const readings = (h: number, ...other: readonly Said[]) =>
  WELL.map((one) => reading(other.find(([kind]) => kind === one[0]) ?? one, h));

export const checked = (
  h: number,
  of: readonly Reading[],
  extra: object = {},
  role: Role = 'nurse',
): Told => ({
  ...check('walk', h, {}, { readings: of, ...extra }),
  role,
  id: `check-${h}-${role}`,
});
export const taken = (h: number, said: readonly Said[], role: Role = 'nurse', more: object = {}): Told => ({
  ...session(h, { readings: said.map((one) => reading(one, h)), ...more }),
  role,
  id: `session-${h}-${role}`,
});
export const named = (one: Told, id: string): Told => ({ ...one, id });
export type Field = Record<string, { readonly value: unknown }>;
export const withRules = (
  room: 'criticalCare' | 'earlyWarning' | 'start',
  of: Record<string, unknown>,
): RulesDocument => ({
  ...DEFAULT_RULES,
  [room]: {
    ...DEFAULT_RULES[room],
    ...Object.fromEntries(
      Object.entries(of).map(([name, value]) => [
        name,
        { ...(DEFAULT_RULES[room] as unknown as Field)[name], value },
      ]),
    ),
  },
});
export const CARE = withRules('criticalCare', { on: true });
export const SCORED = withRules('earlyWarning', { on: true });
export const BOTH: RulesDocument = { ...CARE, earlyWarning: SCORED.earlyWarning };

export const ask = (
  told: readonly Told[],
  t = 2,
  rules: RulesDocument = DEFAULT_RULES,
  protocols = ward.protocols,
) => {
  const { view, nextChange } = evaluateStay(
    stayOf(...told),
    { ...ward, rules, protocols },
    calendar,
    hours(t),
  );
  const { mayStart, earlyWarning } = view;
  return {
    word: mayStart?.word ?? 'no staged check',
    reasons: mayStart?.reasons ?? [],
    notTaken: mayStart?.notTaken ?? [],
    ...(earlyWarning ? { earlyWarning } : {}),
    until: nextChange,
  };
};
export const stay = (title: string, told: readonly Told[], t?: number, rules?: RulesDocument) =>
  [title, () => ask(told, t, rules)] as const;
