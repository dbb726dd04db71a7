/** When the pressures on rising leave standing not cleared, and a set that is a ward's own. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from './protocol.ts';
import { demanded, judge, lying, seated, standing, taken } from './pressure.testkit.ts';

describe('standing is not cleared', () => {
  // Design, row "what it does": standing systolic under 90 (common practice, no source).
  it('at a systolic of 89, and is at 90', () => {
    expect(judge([standing(1, [89, 60])]).standNotCleared).toEqual([
      'systolic 89 at 1 min standing (limit 90)',
    ]);
    expect(judge([standing(1, [90, 60])]).standNotCleared).toEqual([]);
  });
  it('and names the lowest of several', () => {
    const v = judge([standing(1, [88, 60]), standing(3, [84, 60]), standing(5, [86, 60])]);
    expect(v.standingLow).toMatchObject({ systolic: 84, minute: 3, limit: 90 });
  });
  it('when symptoms were not asked about in a pressure set: that is not "none"', () => {
    const whole = [lying([130, 80]), standing(1, [130, 80]), standing(3, [130, 80])];
    expect(judge(whole, demanded).standNotCleared).toEqual([]);
    expect(judge(whole, { ...demanded, symptoms: undefined }).standNotCleared).toEqual([
      'symptoms on rising were not asked',
    ]);
    expect(judge(whole, { symptoms: undefined }).standNotCleared).toEqual([]);
  });
  it('with symptoms, each in words', () => {
    expect(judge([], { symptoms: ['blurred-sight', 'nausea'] }).standNotCleared).toEqual([
      'symptoms on rising (blurred sight, nausea)',
    ]);
  });
});

describe("a ward's own set", () => {
  const set = { ...DEFAULT_PROTOCOL.pressureSet, lying: false, standingMinutes: [2] };
  it('that asks for no lying reading still needs one at rest: a fall is measured from something', () => {
    expect(judge([standing(2, [120, 70])], { ...demanded, set }).missing).toEqual(['lying or seated']);
    expect(judge([seated([120, 70], 5), standing(2, [120, 70])], { ...demanded, set })).toMatchObject({
      missing: [],
      fall: 'no',
    });
  });
  it('that asks for 15 s is not met by a reading of which nobody said the minute', () => {
    const early = { ...set, standingMinutes: [0.25] };
    const readings = [lying([120, 70]), taken('standing', [118, 70], 11)];
    expect(judge(readings, { ...demanded, set: early }).missing).toEqual(['standing 0.25 min']);
  });
  it('is asked for by its own minutes', () => {
    const readings = [lying([120, 70]), standing(1, [120, 70]), standing(3, [120, 70])];
    expect(judge(readings, { ...demanded, set }).missing).toEqual(['standing 2 min']);
  });
});
