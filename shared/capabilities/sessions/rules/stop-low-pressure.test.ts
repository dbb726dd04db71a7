/**
 * A low systolic pressure during a session, and a fall from the reading before. The lower limit: common
 * practice, no source; a fall of more than 10 with effort: exercise stop indications as the users restate them.
 */
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../assessments/values.ts';
import { DEFAULT_RULES, rulesDocument } from '../../wards/rules/rules-document.ts';
import { faultsOfRules } from '../../wards/rules/rules-faults.ts';
import { beyondStopLimits, judgeStop, stopLimitsFor, type StopInput } from './stop-limits.ts';

const clock = (minute: number) => `2026-03-03T09:${String(minute).padStart(2, '0')}:00Z`;
type Posture = 'lying' | 'seated' | 'standing';
const pressure = (posture: Posture, systolic: number, minute = 10): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 35,
  at: clock(minute),
});
const ask = (readings: readonly Reading[], extra: Partial<StopInput> = {}) =>
  judgeStop({ readings, before: [], events: [], oxygenTarget: null, rules: DEFAULT_RULES, ...extra });
const words = (readings: readonly Reading[], before: readonly Reading[] = []) =>
  ask(readings, { before }).reasons.map((r) => r.words);

describe('a low systolic pressure during a session', () => {
  it.each(['lying', 'seated', 'standing'] as const)(
    'given one below 90 %s, then the session stops, though it is the first one taken',
    (posture) => {
      expect(ask([pressure(posture, 89)]).word).toBe('stop');
      expect(ask([pressure(posture, 90)]).word).toBe('go-on');
    },
  );
  it('given 70/40 seated, then the reason has its limit, its source and when it was taken', () => {
    expect(ask([pressure('seated', 70)]).reasons).toEqual([
      {
        words: 'systolic 70 mmHg is below 90',
        limit: 90,
        source: 'common practice, no source',
        takenAt: Date.parse(clock(10)),
      },
    ]);
  });
  it('given 105 lying before and 88 standing, then it stops though the fall alone would not', () => {
    expect(words([pressure('standing', 88)], [pressure('lying', 105, 2)])).toEqual([
      'systolic 88 mmHg is below 90',
    ]);
  });
  it('given a ward with a limit of its own, then that counts and is read before starting', () => {
    const own = structuredClone(DEFAULT_RULES);
    own.stop.systolicBelow.value = 100;
    expect(ask([pressure('seated', 99)], { rules: own }).word).toBe('stop');
    expect(ask([pressure('seated', 100)], { rules: own }).word).toBe('go-on');
    expect(stopLimitsFor({ oxygenTarget: null, rules: own })).toContainEqual({
      words: 'Systolic pressure below 100 mmHg',
      limit: 100,
      source: 'common practice, no source',
    });
  });
  it('given a low one from before the session, then the session did not pass it', () => {
    const recorded = (minute: number) =>
      beyondStopLimits(
        {
          outcome: 'done',
          occasion: 'planned',
          activities: ['walk'],
          startedAt: clock(5),
          events: [],
          firstTimeUp: false,
          readings: [pressure('seated', 80, minute)],
        },
        { oxygenTarget: null, rules: DEFAULT_RULES },
      ).map((r) => r.words);
    expect(recorded(4)).toEqual([]);
    expect(recorded(5)).toEqual(['systolic 80 mmHg is below 90']);
  });
});

describe('a fall from the reading before in the same posture', () => {
  it('given 130 lying before, 128 standing and then 113 standing, then it stops: 15 down since', () => {
    const before = [pressure('lying', 130, 2)];
    expect(words([pressure('standing', 128, 10), pressure('standing', 113, 14)], before)).toEqual([
      'systolic fell by 15 mmHg with effort (128 to 113), more than 10',
    ]);
    expect(words([pressure('standing', 128, 10), pressure('standing', 118, 14)], before)).toEqual([]);
  });
  it('given a pressure that rose with effort, then a fall from there counts though the base is not passed', () => {
    const before = [pressure('seated', 120, 2)];
    expect(words([pressure('seated', 150, 10), pressure('seated', 119, 14)], before)).toEqual([
      'systolic fell by 31 mmHg with effort (150 to 119), more than 10',
    ]);
  });
  it('given readings in another posture in between, then the last one of the same posture counts', () => {
    const before = [pressure('standing', 140, 2), pressure('lying', 125, 3)];
    const readings = [pressure('seated', 124, 10), pressure('standing', 122, 12)];
    expect(words(readings, before)).toEqual([
      'systolic fell by 18 mmHg with effort (140 to 122), more than 10',
    ]);
  });
  it('given a fall from the base that both comparisons see, then it is said once, the greater one', () => {
    const before = [pressure('seated', 130, 2)];
    expect(words([pressure('seated', 118, 10)], before)).toEqual([
      'systolic fell by 12 mmHg with effort (130 to 118), more than 10',
    ]);
    expect(words([pressure('seated', 135, 10), pressure('seated', 115, 14)], before)).toEqual([
      'systolic fell by 20 mmHg with effort (135 to 115), more than 10',
    ]);
  });
  it('given small steps down, then the comparison with the base still stops', () => {
    const before = [pressure('seated', 130, 2)];
    const down = [pressure('seated', 124, 10), pressure('seated', 118, 12)];
    expect(words(down, before)).toEqual(['systolic fell by 12 mmHg with effort (130 to 118), more than 10']);
  });
  it('given two of one instant, then neither is before the other', () => {
    const before = [pressure('lying', 130, 2)];
    const two = [pressure('standing', 128, 10), pressure('standing', 113, 10)];
    expect(ask(two, { before }).word).toBe('go-on');
    expect(ask(two.toReversed(), { before }).word).toBe('go-on');
  });
  it('given two of one instant before, then the fall is measured from the higher', () => {
    const two = [pressure('standing', 112, 8), pressure('standing', 128, 8)];
    const before = [pressure('lying', 130, 2)];
    for (const earlier of [two, two.toReversed()]) {
      expect(words([...earlier, pressure('standing', 113, 14)], before)).toEqual([
        'systolic fell by 15 mmHg with effort (128 to 113), more than 10',
      ]);
    }
  });
});

describe('the lower stop limit at the door', () => {
  const withValue = (value: number, above = DEFAULT_RULES.stop.systolicAbove.value) => {
    const { stop } = DEFAULT_RULES;
    return rulesDocument.parse({
      ...DEFAULT_RULES,
      stop: {
        ...stop,
        systolicBelow: { ...stop.systolicBelow, value },
        systolicAbove: { ...stop.systolicAbove, value: above },
      },
    });
  };
  it('given 40 to 260 mmHg, then it can be meant', () => {
    expect(faultsOfRules(withValue(40))).toEqual([]);
    expect(faultsOfRules(withValue(259, 260))).toEqual([]);
    expect(faultsOfRules(withValue(12))).toEqual([
      { place: '/stop/systolicBelow/value', reason: '12 cannot be meant: a number from 40 to 260 mmHg' },
    ]);
  });
  it('given one that is not below the upper one, then it is refused', () => {
    expect(faultsOfRules(withValue(210))).toEqual([
      { place: '/stop/systolicBelow/value', reason: '210 must be below systolicAbove (210)' },
    ]);
  });
});
