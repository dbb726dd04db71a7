/** Design rules 1 and 2 for "may we start", over random stays: never freer by accident. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  confirmation,
  hold,
  hours,
  order,
  recordOf,
  session,
  trigger,
  unconfirmed,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import type { StartWord } from './may-start.ts';

const rules = structuredClone(DEFAULT_RULES);
rules.earlyWarning.on.value = true;
rules.criticalCare.on.value = true;
const strict = { ...ward, rules };

const when = fc.integer({ min: 0, max: 4 * 24 }).map((q) => q / 4);
const at = fc.integer({ min: 0, max: 4 * 40 }).map((q) => q / 4 + 1 / 60);
const reading = (h: number): fc.Arbitrary<Reading> => {
  const taken = { at: toIso(hours(h)) };
  return fc.oneof(
    fc.constantFrom(80, 90, 120, 185).map((systolic): Reading => ({
      kind: 'pressure',
      posture: 'lying',
      systolic,
      diastolic: 40,
      ...taken,
    })),
    fc
      .constantFrom(35, 80, 111, 135)
      .map((perMinute): Reading => ({ kind: 'heart-rate', perMinute, ...taken })),
    fc
      .tuple(fc.constantFrom(85, 89, 92, 97), fc.constantFrom(undefined, 0, 2, 4))
      .map(([saturation, flow]): Reading => ({
        kind: 'oxygen',
        saturation,
        ...(flow === undefined ? {} : { litresPerMinute: flow }),
        ...taken,
      })),
    fc.constantFrom(16, 31).map((perMinute): Reading => ({ kind: 'breathing', perMinute, ...taken })),
    fc.constantFrom(37, 38.5).map((celsius): Reading => ({ kind: 'temperature', celsius, ...taken })),
    fc.constantFrom(0, 4, 8).map((outOfTen): Reading => ({ kind: 'pain', outOfTen, ...taken })),
  );
};
const readings = (h: number) => fc.array(reading(h), { maxLength: 6 });
const every = (h: number): Reading[] => [
  { kind: 'pressure', posture: 'lying', systolic: 120, diastolic: 70, at: toIso(hours(h)) },
  { kind: 'heart-rate', perMinute: 80, at: toIso(hours(h)) },
  { kind: 'oxygen', saturation: 97, litresPerMinute: 2, at: toIso(hours(h)) },
  { kind: 'breathing', perMinute: 16, at: toIso(hours(h)) },
  { kind: 'temperature', celsius: 37, at: toIso(hours(h)) },
  { kind: 'pain', outOfTen: 0, at: toIso(hours(h)) },
];
const WAITS = { waitsForHelp: 'yes', followsInstructions: 'yes' };
const CARE = { oxygenFraction: 0.3, meanPressure: 75, sedation: 0, vasoactive: 'none', bars: [] };

const checks = when.chain((h) =>
  fc
    .tuple(fc.oneof(fc.constant(every(h)), readings(h)), fc.boolean(), fc.constantFrom('yes', 'no', 'varies'))
    .map(([taken, fails, waitsForHelp]) =>
      check(
        'clear',
        h,
        { clear: { outcome: fails ? 'not-met' : 'met' } },
        {
          readings: taken,
          cooperation: { waitsForHelp, followsInstructions: 'yes' },
        },
      ),
    ),
);
const sessions = when.chain((h) => readings(h).map((taken) => session(h, { readings: taken })));
const scores = fc
  .tuple(when, fc.integer({ min: 0, max: 9 }), fc.boolean())
  .map(([h, score, three]): Told => ({
    type: 'early-warning-recorded',
    at: h,
    payload: { score, anyThree: three, scale: 1 },
  }));
const care = fc
  .tuple(
    when,
    fc.constantFrom(
      {},
      { sedation: 3 },
      { meanPressure: 50 },
      { vasoactive: 'new-or-raised' },
      { bars: ['lying-prone'] },
      { meanPressureTarget: 80 },
    ),
  )
  .map(([h, says]): Told => ({ type: 'critical-care-signs-recorded', at: h, payload: { ...CARE, ...says } }));
const targets = fc
  .tuple(when, fc.constantFrom(86, 90, 94))
  .map(([h, low]) => order(h, { about: 'oxygen-target', low, high: 99 }));
const entry = fc.oneof({ weight: 3, arbitrary: checks }, sessions, scores, care, targets);

const byRoles = (roles: readonly Role[]) =>
  fc.tuple(entry, fc.constantFrom(...roles)).map(([one, role]): Told => ({ ...one, role }));
/** Somebody qualified, whose name nobody had checked. */
const claimed = byRoles(['nurse', 'therapist', 'charge-nurse']).map((one) => unconfirmed(one));
/** Some of the entries under such a name are confirmed later. */
const stays = fc
  .tuple(
    fc.array(
      fc.oneof(
        { weight: 4, arbitrary: byRoles(['nurse', 'nurse', 'therapist', 'aide', 'records']) },
        { weight: 1, arbitrary: claimed },
      ),
      { maxLength: 10 },
    ),
    fc.array(when, { maxLength: 2 }),
  )
  .map(([all, confirmed]) => {
    const told = [begun(), ...all].map((one, i): Told => ({ ...one, id: `e${String(i).padStart(3, '0')}` }));
    const waiting = told.filter((one) => one.source?.unconfirmed);
    const stoodBy = waiting.slice(0, confirmed.length).map((one, i): Told => ({
      ...confirmation(confirmed[i]!, one.id!),
      staff: one.staff!,
      id: `s${i}`,
    }));
    return [...told, ...stoodBy];
  });

const start = (told: readonly Told[], t: number) =>
  evaluateStay(recordOf(told), strict, calendar, hours(t)).view.mayStart!;
const WORDS: readonly StartWord[] = ['may-start', 'ask-first', 'not-now'];
const strictness = (told: readonly Told[], t: number) => WORDS.indexOf(start(told, t).word);

describe('may we start', { timeout: patience }, () => {
  it('MAY-1 is never freer for one more entry by someone who may not free', () => {
    fc.assert(
      fc.property(stays, fc.oneof(byRoles(['aide', 'records', 'manager']), claimed), at, (told, extra, t) => {
        const more = [...told, { ...extra, id: 'added' }];
        expect(strictness(more, t)).toBeGreaterThanOrEqual(strictness(told, t));
      }),
      runs(150),
    );
  });
  it('MAY-2 is never freer for one more trigger or hold, whoever says it', () => {
    const added = fc.oneof(
      fc.tuple(fc.constantFrom('fall', 'sedation', 'new-symptom'), when).map(([kind, h]) => trigger(kind, h)),
      fc.tuple(fc.constantFrom('walking', 'out-of-bed'), when).map(([scope, h]) => hold(h, scope, 90)),
    );
    fc.assert(
      fc.property(stays, added, at, (told, extra, t) => {
        const more = [...told, { ...extra, id: 'added' }];
        expect(strictness(more, t)).toBeGreaterThanOrEqual(strictness(told, t));
      }),
      runs(100),
    );
  });
  it('MAY-3 never becomes may start because readings and scores get old', () => {
    // Help not waited for counts for a time of its own: a day, by the ward's window.
    const waiting = stays.map((told) =>
      told.map((one) =>
        one.type === 'assessment-recorded'
          ? { ...one, payload: { ...(one.payload as object), cooperation: WAITS } }
          : one,
      ),
    );
    fc.assert(
      fc.property(waiting, at, fc.integer({ min: 1, max: 4 * 30 }), (told, t, later) => {
        const last = Math.max(...told.map((one) => one.at ?? 0));
        const from = Math.max(t, last);
        const [before, after] = [start(told, from), start(told, from + later / 4)];
        expect(after.word === 'may-start' && before.word !== 'may-start').toBe(false);
      }),
      runs(100),
    );
  });
  it('MAY-4 names for each reason an entry that exists, or that something is missing; no words twice', () => {
    fc.assert(
      fc.property(stays, at, (told, t) => {
        const { reasons, word, notTaken } = start(told, t);
        const ids = new Set(told.map((one) => one.id));
        for (const reason of reasons) {
          expect(reason.facts.every((f) => ids.has(f))).toBe(true);
          const missing = /^(to take first|not known whether)/.test(reason.words);
          expect(missing || reason.facts.length > 0).toBe(true);
        }
        expect(new Set(reasons.map((r) => r.words)).size).toBe(reasons.length);
        expect(word === 'may-start').toBe(reasons.length === 0);
        expect(notTaken.length === 0 || word !== 'may-start').toBe(true);
      }),
      runs(100),
    );
  });
});
