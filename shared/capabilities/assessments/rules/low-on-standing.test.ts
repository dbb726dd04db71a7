/**
 * A low pressure of a session in "may we start", whatever its posture: common practice, no source. At rest
 * below 90: ward cut-offs, Crit Care Res Pract 2020 ID 7840743 table 5; standing below 90: common practice.
 */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  retract,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { germanBook } from '../../../i18n/phrases/german.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';

type Posture = 'lying' | 'seated' | 'standing';
const pressure = (posture: Posture, systolic: number, h: number): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 40,
  at: toIso(hours(h)),
});
const well = (h: number): Reading[] => [
  pressure('lying', 120, h),
  { kind: 'heart-rate', perMinute: 80, at: toIso(hours(h)) },
  { kind: 'oxygen', saturation: 97, at: toIso(hours(h)) },
  { kind: 'breathing', perMinute: 16, at: toIso(hours(h)) },
  { kind: 'temperature', celsius: 37, at: toIso(hours(h)) },
  { kind: 'pain', outOfTen: 0, at: toIso(hours(h)) },
];
const checked = (h: number, extra: Reading[] = []): Told => ({
  ...check('walk', h, {}, { readings: [...well(h), ...extra] }),
  id: `check-${h}`,
});
const walk = (h: number, readings: Reading[], role: Role = 'nurse'): Told => ({
  ...session(h, { readings }),
  role,
  id: `walk-${h}`,
});
const stands = (h: number, systolic: number, role?: Role): Told =>
  walk(h, [pressure('standing', systolic, h)], role);

const start = (t: number, told: readonly Told[], rules = DEFAULT_RULES) =>
  evaluateStay(stayOf(...told), { ...ward, rules }, calendar, hours(t));
const notNow = (t: number, told: readonly Told[], rules = DEFAULT_RULES) =>
  start(t, told, rules)
    .view.mayStart!.reasons.filter((r) => r.word === 'not-now')
    .map((r) => r.words);
const LOW = 'low on standing: systolic 70 mmHg is below 90; take it again at rest';

describe('a low pressure of a session in "may we start"', () => {
  it.each(['lying', 'seated'] as const)('given 70/40 %s, then nobody starts', (posture) => {
    expect(notNow(3, [checked(1), walk(2, [pressure(posture, 70, 2)])])).toEqual([
      'systolic 70 mmHg is below 90',
    ]);
  });
  it.each(['nurse', 'aide'] as const)('given 70/40 standing by a %s, then nobody starts', (role) => {
    expect(start(3, [checked(1), stands(2, 70, role)]).view.mayStart).toMatchObject({
      word: 'not-now',
      reasons: [
        {
          word: 'not-now',
          words: LOW,
          limit: 90,
          source: DEFAULT_RULES.rising.standingSystolicBelow.source,
          takenAt: hours(2),
          facts: ['walk-2'],
        },
        { word: 'ask-first' },
      ],
    });
  });
  it('given 90 standing, then nothing is said; given 89, then nobody starts', () => {
    expect(start(3, [checked(1), stands(2, 90)]).view.mayStart!.word).toBe('may-start');
    expect(notNow(3, [checked(1), stands(2, 89)])).toHaveLength(1);
  });
  it("given a ward's own limit for standing, then that counts", () => {
    const own = structuredClone(DEFAULT_RULES);
    own.rising.standingSystolicBelow.value = 100;
    expect(notNow(3, [checked(1), stands(2, 99)], own)).toEqual([
      'low on standing: systolic 99 mmHg is below 100; take it again at rest',
    ]);
  });
  it('given several, then the last is said, and of two of one instant the lower', () => {
    const told = [
      checked(1),
      stands(2, 60),
      walk(
        3,
        [80, 70, 75].map((s) => pressure('standing', s, 3)),
      ),
    ];
    expect(notNow(4, told)).toEqual([LOW]);
    expect(notNow(4, told.toReversed())).toEqual([LOW]);
  });
  it('says it in German too', () => {
    expect(germanBook().say(LOW)).toBe(
      'niedrig im Stehen: systolisch 70 mmHg liegt unter 90; in Ruhe noch einmal messen',
    );
  });
});

describe('what answers a low pressure on standing', () => {
  const low = [checked(1), stands(2, 70)];
  it('given a later pressure by a nurse that is not low, in any posture, then it no longer stands against it', () => {
    for (const posture of ['lying', 'seated', 'standing'] as const) {
      expect(notNow(4, [...low, walk(3, [pressure(posture, 118, 3)])])).toEqual([]);
    }
    expect(notNow(4, [...low, checked(3)])).toEqual([]);
  });
  it('given a later low one at rest, then that is said in its place', () => {
    expect(notNow(4, [...low, walk(3, [pressure('lying', 85, 3)])])).toEqual([
      'systolic 85 mmHg is below 90',
    ]);
  });
  it("given an aide's pressure after it, or one of the same instant, then it stands", () => {
    expect(notNow(4, [...low, walk(3, [pressure('lying', 118, 3)], 'aide')])).toEqual([LOW]);
    const both = [pressure('standing', 70, 2), pressure('lying', 118, 2)];
    expect(notNow(4, [checked(1), walk(2, both)])).toEqual([LOW]);
  });
  it('given a check with a low one standing in it after it, then it stands', () => {
    const again = { ...checked(3, [pressure('standing', 82, 3.1)]) };
    const readings = (again.payload as { readings: Reading[] }).readings.filter(
      (r) => r.kind !== 'pressure' || r.posture === 'standing',
    );
    expect(notNow(4, [...low, { ...again, payload: { ...(again.payload as object), readings } }])).toContain(
      LOW,
    );
  });
  it('given it was withdrawn, then nothing is said of it', () => {
    expect(notNow(4, [...low, retract(3, 'walk-2')])).toEqual([]);
  });
  it('given it is too old and no check cleared the start since, then it stands; the board is told when', () => {
    expect(start(3, low).nextChange).toBeLessThanOrEqual(hours(14));
    expect(notNow(15, low)).toContain(LOW);
    const since = { ...check('walk', 3), id: 'since' };
    expect(notNow(13.9, [...low, since])).toEqual([LOW]);
    expect(notNow(14, [...low, since])).toEqual([]);
  });
  it('given it is timed ahead, then it counts from then on', () => {
    const told = [checked(1), walk(2, [pressure('standing', 70, 2.5)])];
    expect(notNow(2.4, told)).toEqual([]);
    expect(start(2.4, told).nextChange).toBe(hours(2.5));
    expect(notNow(2.5, told)).toEqual([LOW]);
  });
});
