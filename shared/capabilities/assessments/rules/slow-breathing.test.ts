/**
 * Slow breathing. Range to proceed: more than 5 and fewer than 40 breaths a minute (ward and intensive-care
 * cut-offs, Crit Care Res Pract 2020 ID 7840743 table 5), so that 5 itself is out.
 */
import { describe, expect, it } from 'vitest';
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
import { DEFAULT_RULES, rulesDocument, type RulesDocument } from '../../wards/rules/rules-document.ts';
import { faultsOfRules } from '../../wards/rules/rules-faults.ts';
import { criticalCareSigns, type Reading } from '../values.ts';
import { judgeCriticalCare } from './critical-care.ts';
import { judgeStart } from './may-start.ts';

const breathing = (perMinute: number, h = 1): Reading => ({
  kind: 'breathing',
  perMinute,
  at: toIso(hours(h)),
});
const SOURCE = /table 5/;

describe('slow breathing at the start of a check', () => {
  const ask = (perMinute: number, rules = DEFAULT_RULES) =>
    judgeStart({
      readings: [breathing(perMinute)],
      cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
      oxygenTarget: null,
      oxygenFlowBefore: null,
      rules: rules.start,
    });

  it.each([
    [4, 'not-now'],
    [5, 'not-now'],
    [6, 'may-start'],
    [30, 'may-start'],
    [31, 'not-now'],
  ] as const)('given %d breaths a minute, then the word is %s', (perMinute, word) => {
    expect(ask(perMinute).word).toBe(word);
  });
  it('given 5 breaths, then the reason has its limit, its source and when they were counted', () => {
    expect(ask(5).reasons).toEqual([
      {
        word: 'not-now',
        words: 'breathing rate 5 is 5 or less',
        limit: 5,
        source: expect.stringMatching(SOURCE),
        takenAt: hours(1),
        sign: 'breathing rate',
      },
    ]);
  });
  it('given a ward with 8 as its own limit, then 8 breaths are not now and 9 may start', () => {
    const own = structuredClone(DEFAULT_RULES);
    own.start.breathingBelow.value = 8;
    expect(ask(8, own).word).toBe('not-now');
    expect(ask(9, own).word).toBe('may-start');
  });
});

describe('slow breathing in "may we start"', () => {
  const well = (h: number): Reading[] => [
    { kind: 'pressure', posture: 'lying', systolic: 120, diastolic: 70, at: toIso(hours(h)) },
    { kind: 'heart-rate', perMinute: 80, at: toIso(hours(h)) },
    { kind: 'oxygen', saturation: 97, at: toIso(hours(h)) },
    breathing(16, h),
    { kind: 'temperature', celsius: 37, at: toIso(hours(h)) },
    { kind: 'pain', outOfTen: 0, at: toIso(hours(h)) },
  ];
  const checked = check('walk', 1, {}, { readings: well(1) });
  const counted = (h: number, perMinute: number): Told => ({
    ...session(h, { readings: [breathing(perMinute, h)] }),
    id: `counted-${h}`,
  });
  const start = (t: number, ...told: Told[]) =>
    evaluateStay(stayOf(checked, ...told), ward, calendar, hours(t)).view.mayStart!;

  it('given a person who may start, when an aide counts 5 breaths in a session, then nobody starts', () => {
    expect(start(2).word).toBe('may-start');
    const slow = start(3, counted(2, 5));
    expect(slow.word).toBe('not-now');
    expect(slow.reasons).toContainEqual({
      word: 'not-now',
      words: 'breathing rate 5 is 5 or less',
      limit: 5,
      source: expect.stringMatching(SOURCE),
      takenAt: hours(2),
      facts: ['counted-2'],
    });
  });
  it('given 5 breaths, when a nurse counts 14 after them, then they no longer stand against it', () => {
    const better: Told = { ...counted(3, 14), role: 'nurse' };
    expect(start(4, counted(2, 5), better).reasons.map((r) => r.words)).not.toContain(
      'breathing rate 5 is 5 or less',
    );
  });
});

describe('slow breathing in critical care', () => {
  const judge = (breaths: number) =>
    judgeCriticalCare(criticalCareSigns.parse({ breathing: breaths }), DEFAULT_RULES.criticalCare, 0);

  it('given 5 breaths or fewer, then it is not now; given 6, then nothing is said', () => {
    expect(judge(4).map((r) => r.word)).toEqual(['not-now']);
    expect(judge(5)).toEqual([
      {
        word: 'not-now',
        words: 'critical care: breathing rate 5 is 5 or less',
        limit: 5,
        source: expect.stringMatching(SOURCE),
      },
    ]);
    expect(judge(6)).toEqual([]);
  });
});

describe('the limit for slow breathing at the door', () => {
  const withValue = (group: 'start' | 'criticalCare', value: number): RulesDocument => {
    const limits = DEFAULT_RULES[group];
    return rulesDocument.parse({
      ...DEFAULT_RULES,
      [group]: { ...limits, breathingBelow: { ...limits.breathingBelow, value } },
    });
  };
  it.each(['start', 'criticalCare'] as const)('given %s, then 3 to 20 a minute can be meant', (group) => {
    for (const value of [3, 5, 20]) expect(faultsOfRules(withValue(group, value))).toEqual([]);
    for (const value of [2, 21]) {
      expect(faultsOfRules(withValue(group, value))).toEqual([
        {
          place: `/${group}/breathingBelow/value`,
          reason: `${value} cannot be meant: a number from 3 to 20 a minute`,
        },
      ]);
    }
  });
  it.each(['start', 'criticalCare'] as const)(
    'given %s with a slow limit not below the fast one, then it is refused',
    (group) => {
      const document = withValue(group, 12);
      document[group].breathingAbove.value = 12;
      expect(faultsOfRules(document)).toEqual([
        { place: `/${group}/breathingBelow/value`, reason: '12 must be below breathingAbove (12)' },
      ]);
    },
  );
});
