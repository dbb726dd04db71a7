/** A fall of the pressure already on sitting up. */
import { describe, expect, it } from 'vitest';
import { again, demanded, judge, lying, seated, standing, type Pair } from './pressure.testkit.ts';

describe('a fall already on sitting up, by the limits from lying (common practice, no source)', () => {
  it.each([
    [[111, 71], []],
    [[110, 71], ['fall-on-sitting']],
    [[111, 70], ['fall-on-sitting']],
  ] as [Pair, string[]][])('lying 130/80, seated %j', (up, rules) => {
    const v = judge([lying([130, 80]), seated(up, 3)]);
    expect(v.fired.map((f) => f.rule)).toEqual(rules);
    expect(v.follows.caution).toBe(rules.length ? 'PRESSURE DROP' : null);
    expect(v.follows.stage).toBe(rules.length ? 'retry-once' : 'not-judged');
  });
  it('once more is asked for after the first standing up, whether that fell or not', () => {
    const sat = [lying([130, 80]), seated([108, 78], 3)];
    for (const systolic of [128, 108]) {
      const first = [...sat, standing(1, [systolic, 78]), standing(3, [systolic, 78])];
      expect(judge(first, demanded).follows.stage).toBe('retry-once');
      const second = [...first, ...again([systolic, 78], [systolic, 78])];
      expect(judge(second, demanded).follows.stage).toBe('cleared-with-caution');
    }
  });
  it('is said with both readings and has no minute standing', () => {
    const [fell] = judge([lying([130, 80]), seated([108, 78], 3)]).fired;
    expect(fell).toMatchObject({
      minute: null,
      words: 'systolic fell 22: from 130/80 lying to 108/78 seated (limit 20)',
    });
    expect(fell?.source).toContain('common practice');
  });
  it('is not asked of a seat before lying or after standing', () => {
    expect(judge([seated([108, 78], -5), lying([130, 80])]).fired).toEqual([]);
    expect(judge([lying([130, 80]), standing(1, [128, 80]), seated([108, 78], 30)]).fired).toEqual([]);
  });
});
