import { describe, expect, it } from 'vitest';
import type { Reading } from '../../assessments/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { sessionEventKind, type Session } from '../values.ts';
import { beyondStopLimits, judgeStop, stopLimitsFor, type StopInput } from './stop-limits.ts';

const clock = (minute: number) => `2026-03-03T09:${String(minute).padStart(2, '0')}:00Z`;
const at = clock(10);
const pressure = (
  systolic: number,
  posture: 'lying' | 'seated' | 'standing' = 'seated',
  minute = 10,
  heartRate?: number,
): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 35,
  ...(heartRate === undefined ? {} : { heartRate }),
  at: clock(minute),
});
const rate = (perMinute: number): Reading => ({ kind: 'heart-rate', perMinute, at });
const oxygen = (saturation: number): Reading => ({ kind: 'oxygen', saturation, at });
const breathing = (perMinute: number): Reading => ({ kind: 'breathing', perMinute, at });
const pain = (outOfTen: number): Reading => ({ kind: 'pain', outOfTen, at });

const ask = (readings: readonly Reading[], extra: Partial<StopInput> = {}) =>
  judgeStop({
    readings,
    before: [],
    events: [],
    oxygenTarget: null,
    rules: DEFAULT_RULES,
    ...extra,
  });
const words = (readings: readonly Reading[], extra: Partial<StopInput> = {}) =>
  ask(readings, extra).reasons.map((r) => r.words);

describe('stop limits (ward cut-offs, Crit Care Res Pract 2020 ID 7840743 table 5; breathing: Hodgson et al., Crit Care 2014;18:658)', () => {
  it.each([
    ['heart rate 39', rate(39), 'stop'],
    ['heart rate 40', rate(40), 'go-on'],
    ['heart rate 130', rate(130), 'go-on'],
    ['heart rate 131', rate(131), 'stop'],
    ['heart rate 39 with a pressure', pressure(120, 'seated', 10, 39), 'stop'],
    ['heart rate 131 with a pressure', pressure(120, 'seated', 10, 131), 'stop'],
    ['heart rate 130 with a pressure', pressure(120, 'seated', 10, 130), 'go-on'],
    ['breathing rate 30', breathing(30), 'go-on'],
    ['breathing rate 31', breathing(31), 'stop'],
  ] as const)('%s', (_, reading, word) => {
    expect(ask([reading]).word).toBe(word);
  });
});

describe('stop limits (exercise stop indications as the users restate them: 210; 85; 90 with symptoms; a fall of more than 10)', () => {
  it.each([
    ['systolic 210', pressure(210), 'go-on'],
    ['systolic 211', pressure(211), 'stop'],
    ['saturation 84', oxygen(84), 'stop'],
    ['saturation 85', oxygen(85), 'go-on'],
  ] as const)('%s', (_, reading, word) => {
    expect(ask([reading]).word).toBe(word);
  });
  it('a saturation of 85 to 89 stops only with a symptom', () => {
    const low = ({ words: w }: { words: string }) => w.startsWith('with a symptom, oxygen saturation');
    for (const [saturation, stops] of [
      [84, false],
      [85, true],
      [89, true],
      [90, false],
    ] as const) {
      expect(ask([oxygen(saturation)], { symptoms: true }).reasons.some(low)).toBe(stops);
    }
    expect(ask([oxygen(89)]).word).toBe('go-on');
  });
  it('a fall of the systolic pressure with effort stops when it is more than 10', () => {
    const before = [pressure(130, 'seated', 0)];
    expect(ask([pressure(120)], { before }).word).toBe('go-on');
    expect(ask([pressure(119)], { before }).word).toBe('stop');
    expect(words([pressure(119)], { before })).toEqual([
      'systolic fell by 11 mmHg with effort (130 to 119), more than 10',
    ]);
    expect(ask([pressure(119, 'lying')], { before }).word).toBe('stop');
    expect(ask([pressure(150)], { before }).word).toBe('go-on');
  });
});

describe('a fall on standing up during a session (Freeman et al., Auton Neurosci 2011;161:46-48: 20 mmHg)', () => {
  it('stops from 20, not from 10: standing by itself lowers the pressure', () => {
    const before = [pressure(130, 'seated', 0)];
    expect(ask([pressure(111, 'standing')], { before }).word).toBe('go-on');
    expect(ask([pressure(110, 'standing')], { before }).word).toBe('stop');
    expect(words([pressure(110, 'standing')], { before })).toEqual([
      'systolic fell by 20 mmHg on rising (130 to 110), 20 or more',
    ]);
    expect(ask([pressure(111)], { before: [pressure(130, 'lying', 0)] }).word).toBe('go-on');
  });
});

describe('stop limits (common practice, no source)', () => {
  it.each([
    [6, 'go-on'],
    [7, 'stop'],
  ] as const)('pain %d', (outOfTen, word) => {
    expect(ask([pain(outOfTen)]).word).toBe(word);
    expect(ask([], { pain: outOfTen }).word).toBe(word);
  });
  it.each([
    [7, 'go-on'],
    [8, 'stop'],
  ] as const)('effort %d', (effort, word) => {
    expect(ask([], { effort }).word).toBe(word);
  });
  it('anything that goes wrong stops, each in its own words, once', () => {
    const said = sessionEventKind.options.map((event) => {
      const verdict = ask([], { events: [event, event] });
      expect(verdict.word).toBe('stop');
      expect(verdict.reasons).toHaveLength(1);
      expect(verdict.reasons[0]!.source).toBe('common practice, no source');
      return verdict.reasons[0]!.words;
    });
    expect(new Set(said).size).toBe(sessionEventKind.options.length);
    expect(ask([], { symptoms: true }).word).toBe('stop');
    expect(ask([], { symptoms: false }).word).toBe('go-on');
  });
  it('what goes wrong with the person counts as a symptom beside a low saturation, what goes wrong with a thing does not', () => {
    const counts = sessionEventKind.options.filter((event) =>
      words([oxygen(88)], { events: [event] }).some((w) => w.startsWith('with a symptom')),
    );
    expect(counts).toEqual(['dizzy', 'near-fall', 'lowered-to-floor', 'low-oxygen', 'pain', 'distress']);
  });
});

describe("a person's own oxygen target", () => {
  const oxygenTarget = { low: 88, high: 92 };
  it('takes the place of both ward limits, with and without symptoms', () => {
    expect(ask([oxygen(88)], { oxygenTarget, symptoms: false }).word).toBe('go-on');
    expect(ask([oxygen(87)], { oxygenTarget }).word).toBe('stop');
    expect(words([oxygen(89)], { oxygenTarget, symptoms: true })).toEqual([
      'a symptom: rest and call the nurse',
    ]);
    expect(ask([oxygen(93)], { oxygenTarget: { low: 94, high: 98 } }).reasons).toEqual([
      {
        words: 'oxygen saturation 93 % is below the own target of 94',
        limit: 94,
        source: "the person's own target, by order",
        takenAt: Date.parse(at),
      },
    ]);
  });
  it('stands in the lines instead of them', () => {
    const lines = (target: StopInput['oxygenTarget']) =>
      stopLimitsFor({ oxygenTarget: target, rules: DEFAULT_RULES })
        .map((l) => l.words)
        .filter((w) => w.includes('saturation'));
    expect(lines(oxygenTarget)).toEqual(['Oxygen saturation below 88 %, the own target']);
    expect(lines(null)).toEqual([
      'Oxygen saturation below 85 %',
      'Oxygen saturation below 90 % with any symptom',
    ]);
  });
});

describe('what an aide reads before starting', () => {
  const lines = stopLimitsFor({ oxygenTarget: null, rules: DEFAULT_RULES });
  it('has the symptoms first, then every limit of the ward with its number and source', () => {
    expect(lines.map((l) => [l.words, l.limit])).toEqual([
      [
        'Chest pain, dizzy or faint, new confusion, pale or sweating, unsteady, or the person says stop',
        null,
      ],
      ['Pain 7 of 10 or more', 7],
      ['Effort 8 of 10 or more', 8],
      ['Heart rate below 40 a minute', 40],
      ['Heart rate above 130 a minute', 130],
      ['Oxygen saturation below 85 %', 85],
      ['Oxygen saturation below 90 % with any symptom', 90],
      ['Breathing rate 5 a minute or less', 5],
      ['Breathing rate above 30 a minute', 30],
      ['Systolic pressure below 90 mmHg', 90],
      ['Systolic pressure above 210 mmHg', 210],
      ['Systolic pressure more than 10 mmHg down with effort', 10],
      ['Systolic pressure 20 mmHg or more down after standing up', 20],
    ]);
    const sources = lines.map((l) => l.source);
    expect(sources.every((s) => s.length > 10)).toBe(true);
    expect(sources[3]).toBe(DEFAULT_RULES.stop.heartRateBelow.source);
    expect(sources[0]).toContain('common practice');
  });
  it("takes the numbers from the ward's own rules", () => {
    const own = structuredClone(DEFAULT_RULES);
    own.stop.heartRateAbove.value = 120;
    expect(stopLimitsFor({ oxygenTarget: null, rules: own }).map((l) => l.words)).toContain(
      'Heart rate above 120 a minute',
    );
    expect(ask([rate(121)], { rules: own }).word).toBe('stop');
  });
});

describe('the judgement', () => {
  it('gives each reason with its limit, its source and when the reading was taken', () => {
    expect(ask([breathing(34)]).reasons).toEqual([
      {
        words: 'breathing rate 34 is above 30',
        limit: 30,
        source: DEFAULT_RULES.stop.breathingAbove.source,
        takenAt: Date.parse(at),
      },
    ]);
    expect(ask([], { effort: 9 }).reasons).toEqual([
      {
        words: 'effort 9 of 10 is 8 or more',
        limit: 8,
        source: DEFAULT_RULES.stop.effortFrom.source,
        takenAt: null,
      },
    ]);
  });
  it('lists what was not taken, and goes on only as far as that is known', () => {
    expect(ask([])).toEqual({
      word: 'go-on',
      reasons: [],
      notTaken: ['heart rate', 'oxygen saturation', 'breathing rate', 'blood pressure', 'effort', 'pain'],
    });
    expect(
      ask([pressure(120, 'seated', 10, 80), oxygen(97), breathing(18), pain(2)], { effort: 3 }).notTaken,
    ).toEqual([]);
    expect(ask([rate(80)], { pain: 0, effort: 0 }).notTaken).toEqual([
      'oxygen saturation',
      'breathing rate',
      'blood pressure',
    ]);
    expect(ask([pressure(120)]).notTaken).toContain('heart rate');
  });
  it('compares with the last pressure before the session; without one, with the first of it', () => {
    const before = [pressure(140, 'seated', 2), pressure(120, 'seated', 5)];
    expect(ask([pressure(115)], { before }).word).toBe('go-on');
    expect(ask([pressure(115)], { before: before.toReversed() }).word).toBe('go-on');
    expect(ask([pressure(120, 'seated', 14), pressure(140, 'seated', 11)]).word).toBe('stop');
    expect(ask([pressure(120, 'seated', 11), pressure(140, 'seated', 14)]).word).toBe('go-on');
    expect(ask([pressure(120)]).word).toBe('go-on');
  });
  it('has no stop limit for a temperature', () => {
    expect(ask([{ kind: 'temperature', celsius: 40, at }]).word).toBe('go-on');
  });
});

describe('a recorded session beyond a stop limit', () => {
  const recorded = (readings: Reading[] | undefined, extra: Partial<Session> = {}) =>
    beyondStopLimits(
      {
        outcome: 'done',
        occasion: 'planned',
        activities: ['walk'],
        startedAt: clock(5),
        events: [],
        firstTimeUp: false,
        ...(readings ? { readings } : {}),
        ...extra,
      },
      { oxygenTarget: null, rules: DEFAULT_RULES },
    ).map((r) => r.words);
  const early: Reading = { kind: 'heart-rate', perMinute: 140, at: clock(4) };

  it('is one with a reading since it began that is beyond one', () => {
    expect(recorded([rate(131)])).toEqual(['heart rate 131 is above 130']);
    expect(recorded([rate(130)])).toEqual([]);
    expect(recorded([{ ...early, at: clock(5) }])).toHaveLength(1);
  });
  it('compares the pressure with the one before it began', () => {
    expect(recorded([pressure(130, 'seated', 4), pressure(119)])).toHaveLength(1);
    expect(recorded([pressure(130, 'seated', 4), pressure(120)])).toEqual([]);
  });
  it('is one with effort, or pain after it, at its limit', () => {
    expect(recorded(undefined, { effort: 8, painAfter: 7 })).toEqual([
      'effort 8 of 10 is 8 or more',
      'pain 7 of 10 is 7 or more',
    ]);
    expect(recorded([], { effort: 7, painAfter: 6, painBefore: 10 })).toEqual([]);
  });
  it('is not one for a reading before it began, nor for one that was not done', () => {
    expect(recorded([early])).toEqual([]);
    const notDone: Partial<Session> = { outcome: 'not-done', notDone: { group: 'clinically-held' } };
    expect(recorded([rate(140)], { ...notDone, effort: 10, painAfter: 10 })).toEqual([]);
  });
  it('counts what went wrong with the person as a symptom', () => {
    expect(recorded([oxygen(88)], { events: ['pain'] })).toEqual([
      'with a symptom, oxygen saturation 88 % is below 90',
    ]);
    expect(recorded([oxygen(88)], { events: ['line-pulled'] })).toEqual([]);
  });
});
