/**
 * Slow breathing in a session. Range to go on: more than 5 and fewer than 40 breaths a minute (ward and
 * intensive-care cut-offs, Crit Care Res Pract 2020 ID 7840743 table 5), so that 5 itself is out.
 */
import { describe, expect, it } from 'vitest';
import { germanBook } from '../../../i18n/phrases/german.ts';
import { toIso } from '../../../kernel/times.ts';
import type { Reading } from '../../assessments/values.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, session, stayOf, ward } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES, rulesDocument } from '../../wards/rules/rules-document.ts';
import { faultsOfRules } from '../../wards/rules/rules-faults.ts';
import { judgeStop, stopLimitsFor } from './stop-limits.ts';

const breathing = (perMinute: number, h = 2): Reading => ({
  kind: 'breathing',
  perMinute,
  at: toIso(hours(h)),
});
const ask = (perMinute: number, rules = DEFAULT_RULES) =>
  judgeStop({ readings: [breathing(perMinute)], before: [], events: [], oxygenTarget: null, rules });
const withValue = (value: number) =>
  rulesDocument.parse({
    ...DEFAULT_RULES,
    stop: { ...DEFAULT_RULES.stop, breathingBelow: { ...DEFAULT_RULES.stop.breathingBelow, value } },
  });

describe('slow breathing in a session', () => {
  it.each([
    [4, 'stop'],
    [5, 'stop'],
    [6, 'go-on'],
    [30, 'go-on'],
    [31, 'stop'],
  ] as const)('given %d breaths a minute, then the word is %s', (perMinute, word) => {
    expect(ask(perMinute).word).toBe(word);
  });
  it('given 5 breaths, then the reason has its limit, its source and when they were counted', () => {
    expect(ask(5).reasons).toEqual([
      {
        words: 'breathing rate 5 is 5 or less',
        limit: 5,
        source: expect.stringMatching(/table 5/),
        takenAt: hours(2),
      },
    ]);
  });
  it('given a ward with 8 as its own limit, then 8 breaths stop and 9 go on', () => {
    expect(ask(8, withValue(8)).word).toBe('stop');
    expect(ask(9, withValue(8)).word).toBe('go-on');
  });
  it('given the lines to read before starting, then the limit is among them, in German too', () => {
    const lines = stopLimitsFor({ oxygenTarget: null, rules: withValue(8) });
    const line = lines.find((l) => l.words === 'Breathing rate 8 a minute or less')!;
    expect(line).toMatchObject({ limit: 8, source: DEFAULT_RULES.stop.breathingBelow.source });
    expect(germanBook().say(line.words)).toBe('Atemfrequenz 8 pro Minute oder weniger');
  });
  it('given an aide counts 5 breaths in a session that was done, then a check is due', () => {
    const told = (perMinute: number) => ({ ...session(2, { readings: [breathing(perMinute)] }), id: 'slow' });
    const trust = (perMinute: number) =>
      evaluateStay(stayOf(check('walk', 1), told(perMinute)), ward, calendar, hours(2.5)).view.trust;
    expect(trust(6)).toMatchObject({ state: 'current', openTriggers: [] });
    expect(trust(5)).toMatchObject({
      state: 're-check',
      openTriggers: [{ event: 'slow', words: 'A stop limit was passed: breathing rate 5 is 5 or less' }],
    });
  });
});

describe('the limit for slow breathing in a session at the door', () => {
  const place = '/stop/breathingBelow/value';
  it('given a number, then 3 to 20 a minute can be meant', () => {
    for (const value of [3, 5, 20]) expect(faultsOfRules(withValue(value))).toEqual([]);
    for (const value of [2, 21]) {
      const reason = `${value} cannot be meant: a number from 3 to 20 a minute`;
      expect(faultsOfRules(withValue(value))).toEqual([{ place, reason }]);
    }
  });
  it('given a slow limit not below the fast one, then it is refused', () => {
    const document = withValue(12);
    document.stop.breathingAbove.value = 12;
    expect(faultsOfRules(document)).toEqual([{ place, reason: '12 must be below breathingAbove (12)' }]);
  });
});
