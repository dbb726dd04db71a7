/** The words of each stop limit and of what went wrong (common practice, no source, but for the limits that name theirs). */
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../assessments/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Session } from '../values.ts';
import { beyondStopLimits, judgeStop, stopLimitsFor, type StopInput } from './stop-limits.ts';

const clock = (minute: number) => `2026-03-03T09:${String(minute).padStart(2, '0')}:00Z`;
const at = clock(10);
const pressure = (systolic: number, minute = 10, heartRate?: number): Reading => ({
  kind: 'pressure',
  posture: 'seated',
  systolic,
  diastolic: 35,
  ...(heartRate === undefined ? {} : { heartRate }),
  at: clock(minute),
});
const pain = (outOfTen: number): Reading => ({ kind: 'pain', outOfTen, at });
const ask = (readings: readonly Reading[], extra: Partial<StopInput> = {}) =>
  judgeStop({ readings, before: [], events: [], oxygenTarget: null, rules: DEFAULT_RULES, ...extra });
const words = (readings: readonly Reading[], extra: Partial<StopInput> = {}) =>
  ask(readings, extra).reasons.map((r) => r.words);

describe('what went wrong', () => {
  it.each([
    ['dizzy', 'dizzy: sit or lie down now'],
    ['near-fall', 'a near-fall: sit down now'],
    ['lowered-to-floor', 'lowered to the floor: do not lift by hand, a nurse looks first'],
    ['line-pulled', 'a line was pulled: see to it first'],
    ['low-oxygen', 'low oxygen: rest and call the nurse'],
    ['pain', 'new or worse pain: rest and call the nurse'],
    ['distress', 'distress: rest and call the nurse'],
    ['equipment-fault', 'the equipment failed: make safe without it'],
  ] as const)('%s says: %s', (event, said) => {
    expect(words([], { events: [event] })).toEqual([said]);
  });
});

describe('a reading beyond a limit', () => {
  it.each<[string, Reading]>([
    ['heart rate 39 is below 40', { kind: 'heart-rate', perMinute: 39, at }],
    ['heart rate 131 is above 130', { kind: 'heart-rate', perMinute: 131, at }],
    ['heart rate 131 is above 130', pressure(120, 10, 131)],
  ])('says: %s', (said, reading) => {
    expect(words([reading])).toEqual([said]);
  });
  it('of pressure names the limit of the ward', () => {
    const limit = DEFAULT_RULES.stop.systolicAbove.value;
    expect(words([pressure(limit + 1)])).toEqual([`systolic ${limit + 1} mmHg is above ${limit}`]);
    expect(words([pressure(limit)])).toEqual([]);
  });
  it('of pain says its number, its limit, its source and its time, and counts as taken', () => {
    const { value, source } = DEFAULT_RULES.stop.painFrom;
    const verdict = ask([pain(value)]);
    expect(verdict.reasons).toEqual([
      { words: `pain ${value} of 10 is ${value} or more`, limit: value, source, takenAt: Date.parse(at) },
    ]);
    expect(verdict.notTaken).not.toContain('pain');
    expect(ask([]).notTaken).toContain('pain');
    expect(ask([pain(value - 1)]).word).toBe('go-on');
  });
});

describe('a number out of ten that somebody said', () => {
  it('says whether it is effort or pain, with its limit', () => {
    const { effortFrom, painFrom } = DEFAULT_RULES.stop;
    expect(words([], { effort: effortFrom.value, pain: painFrom.value })).toEqual([
      `effort ${effortFrom.value} of 10 is ${effortFrom.value} or more`,
      `pain ${painFrom.value} of 10 is ${painFrom.value} or more`,
    ]);
  });
});

describe('what is read before a session', () => {
  it('names every limit once, with the number of the ward for that limit and no other', () => {
    const own = structuredClone(DEFAULT_RULES);
    const { stop, rising } = own;
    stop.painFrom.value = 1;
    stop.effortFrom.value = 2;
    stop.heartRateBelow.value = 31;
    stop.heartRateAbove.value = 141;
    stop.saturationBelow.value = 81;
    stop.saturationWithSymptomsBelow.value = 91;
    stop.breathingBelow.value = 6;
    stop.breathingAbove.value = 26;
    stop.systolicBelow.value = 76;
    stop.systolicAbove.value = 196;
    stop.systolicFallWithEffort.value = 11;
    rising.systolicFall.value = 21;
    const lines = stopLimitsFor({ oxygenTarget: null, rules: own });
    expect(lines.map((l) => [l.limit, l.words])).toEqual([
      [
        null,
        'Chest pain, dizzy or faint, new confusion, pale or sweating, unsteady, or the person says stop',
      ],
      [1, 'Pain 1 of 10 or more'],
      [2, 'Effort 2 of 10 or more'],
      [31, 'Heart rate below 31 a minute'],
      [141, 'Heart rate above 141 a minute'],
      [81, 'Oxygen saturation below 81 %'],
      [91, 'Oxygen saturation below 91 % with any symptom'],
      [6, 'Breathing rate 6 a minute or less'],
      [26, 'Breathing rate above 26 a minute'],
      [76, 'Systolic pressure below 76 mmHg'],
      [196, 'Systolic pressure above 196 mmHg'],
      [11, 'Systolic pressure more than 11 mmHg down with effort'],
      [21, 'Systolic pressure 21 mmHg or more down after standing up'],
    ]);
  });
});

describe('the line of a person’s own oxygen target', () => {
  it('has its number and says that an order set it', () => {
    const lines = stopLimitsFor({ oxygenTarget: { low: 88, high: 92 }, rules: DEFAULT_RULES });
    expect(lines).toContainEqual({
      words: 'Oxygen saturation below 88 %, the own target',
      limit: 88,
      source: "the person's own target, by order",
    });
  });
});

describe('a recorded session', () => {
  const recorded = (readings: Reading[], extra: Partial<Session> = {}) =>
    beyondStopLimits(
      {
        outcome: 'done',
        occasion: 'planned',
        activities: ['walk'],
        startedAt: clock(5),
        events: [],
        firstTimeUp: false,
        readings,
        ...extra,
      },
      { oxygenTarget: null, rules: DEFAULT_RULES },
    ).map((r) => r.words);
  it('takes a reading of the instant it began as one of it', () => {
    expect(recorded([pressure(130, 4), pressure(119, 5)])).toEqual([
      'systolic fell by 11 mmHg with effort (130 to 119), more than 10',
    ]);
  });
  it.each([
    ['at the instant it began', 5],
    ['later in it', 10],
  ])('compares a pressure standing, taken %s, with the one seated before it', (_when, minute) => {
    const standing: Reading = {
      kind: 'pressure',
      posture: 'standing',
      systolic: 110,
      diastolic: 35,
      at: clock(minute),
    };
    expect(recorded([pressure(130, 4), standing])).toEqual([
      'systolic fell by 20 mmHg on rising (130 to 110), 20 or more',
    ]);
  });
  it('has a symptom where any of what went wrong is one, and none where nothing did', () => {
    const low: Reading = { kind: 'oxygen', saturation: 88, at };
    expect(recorded([low], { events: ['line-pulled', 'dizzy'] })).toEqual([
      'with a symptom, oxygen saturation 88 % is below 90',
    ]);
    expect(recorded([low])).toEqual([]);
  });
});
