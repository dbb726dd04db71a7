import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { DEFAULT_PROTOCOL } from './protocol.ts';
import { judgeRising } from './pressure.ts';

type Triple = [systolic: number, diastolic: number, heartRate?: number];
const clock = (minutes: number) => new Date(Date.UTC(2026, 2, 3, 9, 0) + minutes * 60_000).toISOString();

const pressure = (
  posture: 'lying' | 'seated' | 'standing',
  [systolic, diastolic, heartRate]: Triple,
  minute?: number,
): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic,
  ...(heartRate === undefined ? {} : { heartRate }),
  ...(minute === undefined ? {} : { minute }),
  at: clock(posture === 'standing' ? 10 + (minute ?? 0) : 0),
});

const set = (lying: Triple, one: Triple | null, three: Triple | null, symptoms: string[] = []) =>
  judgeRising({
    readings: [
      pressure('lying', lying),
      ...(one ? [pressure('standing', one, 1)] : []),
      ...(three ? [pressure('standing', three, 3)] : []),
    ],
    symptoms,
    demanded: true,
    set: DEFAULT_PROTOCOL.pressureSet,
    rules: DEFAULT_RULES.rising,
  });

/**
 * Limits: Freeman et al., Auton Neurosci 2011;161:46-48 (20/10 within 3 min; 30 when lying is high);
 * Shaw et al., J Hypertens 2017;35:1019-25 (seated 15/7); Jordan et al., Clin Auton Res 2022 (rise of
 * 20 to 140 or more); minutes 1 and 3: CDC STEADI 2017. The nine cases are arithmetic on these limits.
 */
describe('pressure on rising, nine worked cases', () => {
  it('130/80, 110/78, 124/80: falls at 1 min, systolic 20 exactly, and says so', () => {
    const v = set([130, 80, 70], [110, 78, 84], [124, 80, 80]);
    expect(v.fall).toBe('yes');
    expect(v.fired.map((f) => [f.rule, f.minute])).toEqual([['systolic-fall', 1]]);
    expect(v.worst).toMatchObject({ systolicFall: 20, systolicMinute: 1, diastolicFall: 2 });
    expect(v.standNotCleared).toEqual([]);
  });
  it('130/80, 111/71, 112/72: 19/9 is no fall', () => {
    const v = set([130, 80, 70], [111, 71, 80], [112, 72, 80]);
    expect(v).toMatchObject({ fall: 'no', complete: true, fired: [] });
    expect(v.worst).toMatchObject({ systolicFall: 19, diastolicFall: 9 });
  });
  it('130/80, 122/70, 124/72: diastolic only, 10 exactly', () => {
    const v = set([130, 80, 70], [122, 70, 78], [124, 72, 76]);
    expect(v.fired.map((f) => f.rule)).toEqual(['diastolic-fall']);
    expect(v.worst).toMatchObject({ systolicFall: 8, diastolicFall: 10 });
  });
  it('168/92, 144/88, 146/88: a fall by 20, none by 30, both shown when lying is high', () => {
    const v = set([168, 92, 66], [144, 88, 72], [146, 88, 72]);
    expect(v.fall).toBe('yes');
    expect(v.fired.map((f) => [f.rule, f.minute])).toEqual([
      ['systolic-fall', 1],
      ['systolic-fall', 3],
    ]);
    expect(v.lyingHigh).toMatchObject({ lyingSystolic: 168, limit: 30, reached: false });
  });
  it('118/76 70, 116/78 102, 114/76 104: no fall; the heart-rate rise of 36 is shown and not named', () => {
    const v = set([118, 76, 68], [116, 78, 102], [114, 76, 104]);
    expect(v.fall).toBe('no');
    expect(v.heartRateRise).toMatchObject({ by: 36, minute: 3 });
    expect(JSON.stringify(v)).not.toMatch(/tachycardia|syndrome/i);
  });
  it('118/76, 114/74 dizzy, stopped: no rule fires, Stand is not cleared', () => {
    const v = set([118, 76, 68], [114, 74], null, ['dizzy']);
    expect(v.fired).toEqual([]);
    expect(v.symptoms).toEqual(['dizzy']);
    expect(v.standNotCleared.join('; ')).toContain('dizzy');
  });
  it('120/70, 142/84, 144/86: no fall; a rise of 24 to a high standing pressure', () => {
    const v = set([120, 70, 70], [142, 84], [144, 86]);
    expect(v.fall).toBe('no');
    expect(v.pressureRise).toMatchObject({ by: 24, standingSystolic: 144 });
    expect(v.pressureRise?.words).toContain('high');
  });
  it('120/70, missing, 98/60: falls at 3 min; the gap at 1 min is shown', () => {
    const v = set([120, 70], null, [98, 60]);
    expect(v.fall).toBe('yes');
    expect(v.fired.map((f) => [f.rule, f.minute])).toEqual([
      ['systolic-fall', 3],
      ['diastolic-fall', 3],
    ]);
    expect(v.missing).toEqual(['standing 1 min']);
  });
  it('120/70, 108/66, missing: incomplete, not "no", and Stand is not cleared', () => {
    const v = set([120, 70], [108, 66], null);
    expect(v.fall).toBe('incomplete');
    expect(v.missing).toEqual(['standing 3 min']);
    expect(v.standNotCleared).toHaveLength(1);
  });
});

const judge = (readings: Reading[], demanded = false) =>
  judgeRising({
    readings,
    symptoms: [],
    demanded,
    set: DEFAULT_PROTOCOL.pressureSet,
    rules: DEFAULT_RULES.rising,
  });

describe('pressure on rising, at the edges', () => {
  // Shaw et al. 2017
  it.each([
    [[130, 80], [115, 80], ['seated-systolic-fall']],
    [[130, 80], [116, 74], []],
    [[130, 80], [128, 73], ['seated-diastolic-fall']],
  ] as [Triple, Triple, string[]][])('seated %j to standing %j fires %j', (seated, up, rules) => {
    expect(judge([pressure('seated', seated), pressure('standing', up, 1)]).fired.map((f) => f.rule)).toEqual(
      rules,
    );
  });

  // Freeman 2011: 40/20 within 15 s
  it.each([
    [[130, 80], [95, 70], []],
    [[130, 80], [89, 70], ['initial-fall']],
    [[130, 80], [120, 59], ['initial-fall']],
  ] as [Triple, Triple, string[]][])('lying %j, at 15 s %j fires %j', (lying, up, rules) => {
    expect(
      judge([pressure('lying', lying), pressure('standing', up, 0.25)]).fired.map((f) => f.rule),
    ).toEqual(rules);
  });

  it('a fall after more than three minutes is said to be later', () => {
    expect(
      judge([pressure('lying', [130, 80]), pressure('standing', [105, 78], 5)]).fired.map((f) => f.rule),
    ).toEqual(['later-fall']);
  });
  it('a standing systolic of 89 keeps Stand from being cleared, 90 does not', () => {
    expect(judge([pressure('standing', [89, 60], 1)]).standNotCleared).toHaveLength(1);
    expect(judge([pressure('standing', [90, 60], 1)]).standNotCleared).toEqual([]);
  });
  it('with no readings nothing is claimed', () => {
    expect(judge([])).toMatchObject({ fall: 'not-taken', complete: false, worst: null });
    expect(judge([], true).fall).toBe('incomplete');
  });
  it('symptoms that were not asked about in a pressure set are not "none"', () => {
    const readings = [
      pressure('lying', [130, 80]),
      pressure('standing', [130, 80], 1),
      pressure('standing', [130, 80], 3),
    ];
    const ask = (symptoms: readonly string[] | undefined) =>
      judgeRising({
        readings,
        symptoms,
        demanded: true,
        set: DEFAULT_PROTOCOL.pressureSet,
        rules: DEFAULT_RULES.rising,
      }).standNotCleared;
    expect(ask([])).toEqual([]);
    expect(ask(undefined)).toHaveLength(1);
  });
  it('a retry after a fall keeps the worst', () => {
    const v = judge([
      pressure('lying', [130, 80]),
      pressure('standing', [108, 78], 1),
      pressure('standing', [126, 80], 1),
      pressure('standing', [126, 80], 3),
    ]);
    expect(v.fall).toBe('yes');
    expect(v.worst?.systolicFall).toBe(22);
  });
});
