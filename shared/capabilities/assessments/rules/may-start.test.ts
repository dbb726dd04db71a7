import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import {
  judgeStart,
  lastOxygenFlow,
  oxygenFlowAfter,
  readingsAtStart,
  type StartInput,
} from './may-start.ts';

const at = '2026-03-03T09:00:00Z';
const ask = (readings: Reading[], extra: Partial<StartInput> = {}) =>
  judgeStart({
    readings,
    cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
    oxygenTarget: null,
    oxygenFlowBefore: null,
    rules: DEFAULT_RULES.start,
    ...extra,
  });
const clock = (m: number) => `2026-03-03T09:0${m}:00Z`;
const systolic = (value: number): Reading => ({
  kind: 'pressure',
  posture: 'lying',
  systolic: value,
  diastolic: 35,
  at,
});
const rate = (perMinute: number): Reading => ({ kind: 'heart-rate', perMinute, at });
const oxygen = (saturation: number, litresPerMinute?: number): Reading => ({
  kind: 'oxygen',
  saturation,
  ...(litresPerMinute === undefined ? {} : { litresPerMinute }),
  at,
});
const breathing = (perMinute: number): Reading => ({ kind: 'breathing', perMinute, at });
const temperature = (celsius: number): Reading => ({ kind: 'temperature', celsius, at });
const pain = (outOfTen: number): Reading => ({ kind: 'pain', outOfTen, at });

describe('may we start', () => {
  // Ward ranges (systolic 90-180, heart rate 40-130, temperature 38.5): Crit Care Res Pract 2020 ID 7840743 table 5.
  // Saturation 90 and breathing 30: Hodgson et al., Crit Care 2014;18:658, the stricter of the two published sets.
  // Heart rate 111-130, pain 4 and 7: common practice, no source.
  it.each([
    ['systolic 89', systolic(89), 'not-now'],
    ['systolic 90', systolic(90), 'may-start'],
    ['systolic 180', systolic(180), 'may-start'],
    ['systolic 181', systolic(181), 'ask-first'],
    ['heart rate 39', rate(39), 'not-now'],
    ['heart rate 40', rate(40), 'may-start'],
    ['heart rate 110', rate(110), 'may-start'],
    ['heart rate 111', rate(111), 'ask-first'],
    ['heart rate 130', rate(130), 'ask-first'],
    ['heart rate 131', rate(131), 'not-now'],
    ['saturation 89', oxygen(89), 'not-now'],
    ['saturation 90', oxygen(90), 'may-start'],
    ['breathing 30', breathing(30), 'may-start'],
    ['breathing 31', breathing(31), 'not-now'],
    ['temperature 38.4', temperature(38.4), 'may-start'],
    ['temperature 38.5', temperature(38.5), 'ask-first'],
    ['pain 3', pain(3), 'may-start'],
    ['pain 4', pain(4), 'ask-first'],
    ['pain 7', pain(7), 'ask-first'],
  ] as const)('%s', (_, reading, word) => {
    expect(ask([reading]).word).toBe(word);
  });

  it("measures saturation against the person's own target when one is ordered", () => {
    expect(ask([oxygen(89)], { oxygenTarget: { low: 88, high: 92 } }).word).toBe('may-start');
    expect(ask([oxygen(93)], { oxygenTarget: { low: 94, high: 98 } }).word).toBe('not-now');
  });
  it('asks first when more oxygen is given than at the last check', () => {
    expect(ask([oxygen(95, 3)], { oxygenFlowBefore: 2 }).word).toBe('ask-first');
    expect(ask([oxygen(95, 3)], { oxygenFlowBefore: 3 }).word).toBe('may-start');
    expect(ask([oxygen(95, 3)]).word).toBe('may-start');
  });
  it('asks first when oxygen is given now and the reading before said nothing of it; not on room air', () => {
    expect(ask([oxygen(95, 3)], { oxygenFlowBefore: 'not-recorded' }).reasons).toEqual([
      {
        word: 'ask-first',
        words: 'on 3 litres of oxygen a minute; the flow before is not known',
        limit: null,
        source: 'common practice, no source',
        takenAt: Date.parse(at),
        sign: 'oxygen saturation',
      },
    ]);
    expect(ask([oxygen(95, 0)], { oxygenFlowBefore: 'not-recorded' }).word).toBe('may-start');
    expect(ask([oxygen(95)], { oxygenFlowBefore: 'not-recorded' }).word).toBe('may-start');
  });
  it('takes a check with a saturation and no flow as one that says nothing of it, and keeps a flow known before', () => {
    expect(oxygenFlowAfter([oxygen(95)], null)).toBe('not-recorded');
    expect(oxygenFlowAfter([rate(80), oxygen(95)], null)).toBe('not-recorded');
    expect(oxygenFlowAfter([], null)).toBeNull();
    expect(oxygenFlowAfter([oxygen(95)], 2)).toBe(2);
    expect(oxygenFlowAfter([oxygen(95, 0)], 'not-recorded')).toBe(0);
    expect(oxygenFlowAfter([rate(80)], null)).toBeNull();
    expect(oxygenFlowAfter([rate(80)], 'not-recorded')).toBe('not-recorded');
  });
  it('gives each reason with its limit, its source and when the reading was taken', () => {
    const [reason] = ask([breathing(34)]).reasons;
    expect(reason).toMatchObject({ word: 'not-now', limit: 30, takenAt: Date.parse(at) });
    expect(reason?.source).toContain('Hodgson');
  });
  it('lists what was not taken', () => {
    const verdict = ask([systolic(120)], { cooperation: undefined });
    expect(verdict.notTaken).toContain('oxygen saturation');
    expect(verdict.notTaken).toContain('waits for help, follows instructions');
    expect(verdict.notTaken).not.toContain('blood pressure');
  });
  it('says of whoever does not wait or follow that this is the sign it is about', () => {
    const { reasons } = ask([], { cooperation: { waitsForHelp: 'no', followsInstructions: 'no' } });
    expect(reasons.map((r) => [r.words, r.sign])).toEqual([
      ['does not wait for help: never alone', 'waits for help, follows instructions'],
      [
        'does not follow instructions: ask who should be there and how to ask',
        'waits for help, follows instructions',
      ],
    ]);
  });
  it('takes the oxygen flow that was taken last, in whatever order the readings were written down', () => {
    const flow = (minute: number, litresPerMinute: number): Reading => ({
      kind: 'oxygen',
      saturation: 97,
      litresPerMinute,
      at: clock(minute),
    });
    expect(lastOxygenFlow([flow(1, 1), flow(2, 4)])).toBe(4);
    expect(lastOxygenFlow([flow(2, 4), flow(1, 1)])).toBe(4);
    expect(lastOxygenFlow([rate(80)])).toBeNull();
  });
  it.each<[string, readonly [number, number][], number]>([
    [
      'the last taken, though a stricter one from before was written down after it',
      [
        [120, 2],
        [85, 1],
      ],
      120,
    ],
    [
      'of two taken at once the stricter, though written down first',
      [
        [85, 1],
        [120, 1],
      ],
      85,
    ],
    [
      'of two taken at once and as strict the one written down last',
      [
        [85, 1],
        [84, 1],
      ],
      84,
    ],
  ])('of two pressures it looks at %s', (_, taken, counts) => {
    const readings = taken.map(([value, minute]): Reading => ({ ...systolic(value), at: clock(minute) }));
    expect(ask(readings).lookedAt.map((l) => l.words)).toEqual([expect.stringContaining(`${counts}`)]);
  });
  it('looks at the last reading before the start, not at one taken later or on standing', () => {
    const readings: Reading[] = [
      { kind: 'pressure', posture: 'standing', systolic: 85, diastolic: 60, at: clock(5) },
      { kind: 'heart-rate', perMinute: 140, at: clock(6) },
      { kind: 'heart-rate', perMinute: 135, at: clock(0) },
      { kind: 'heart-rate', perMinute: 90, at: clock(1) },
      { kind: 'breathing', perMinute: 18, at: clock(7) },
    ];
    expect(readingsAtStart(readings, Date.parse(clock(2)))).toEqual([readings[3], readings[4]]);
  });
});
