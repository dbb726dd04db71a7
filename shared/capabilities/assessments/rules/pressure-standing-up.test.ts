/** Which readings belong to one standing up, and from which rest a fall is measured. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Reading } from '../values.ts';
import {
  again,
  at,
  CLOCK,
  demanded,
  FELL,
  judge,
  lying,
  seated,
  standing,
  taken,
} from './pressure.testkit.ts';

describe('one standing up and the next', () => {
  it('gives every reading with its posture, minute, values and the standing up that it belongs to', () => {
    const v = judge([...FELL, seated([126, 80], 16), ...again([126, 80], [128, 80])]);
    expect(v.readings.map((r) => [r.posture, r.minute, r.systolic, r.series])).toEqual([
      ['lying', null, 130, 0],
      ['standing', 1, 108, 1],
      ['standing', 3, 112, 1],
      ['seated', null, 126, 0],
      ['standing', 1, 126, 2],
      ['standing', 3, 128, 2],
    ]);
    expect(v.readings[1]).toMatchObject({ diastolic: 78, heartRate: null, at: CLOCK + 11 * 60_000 });
  });
  it('takes readings in order of time, whatever their place in the record, and no other signs', () => {
    const all = [...FELL, seated([126, 80], 16), ...again([126, 80], [128, 80])];
    const rate: Reading = { kind: 'heart-rate', perMinute: 80, at: at(5) };
    expect(judge([rate, ...all.toReversed()]).readings).toEqual(judge(all).readings);
  });
  it('readings written down in another order are still one standing up', () => {
    const v = judge([lying([130, 80]), standing(3, [128, 80], 5), standing(1, [126, 80], 10)], demanded);
    expect(v).toMatchObject({ complete: true, fall: 'no' });
    expect(new Set(v.readings.map((r) => r.series))).toEqual(new Set([0, 1]));
  });
  it('two readings of which nobody said the minute are one standing up', () => {
    const v = judge([
      taken('lying', [130, 80], 0),
      taken('standing', [108, 78], 11),
      taken('standing', [126, 80], 13),
    ]);
    expect(v.readings.map((r) => r.series)).toEqual([0, 1, 1]);
    expect(v.follows.stage).toBe('retry-once');
    expect(v.passing).toContain('gone at standing');
  });
  it('the first minute of one and the third of the next are no whole set', () => {
    const mixed = [
      lying([130, 80]),
      standing(1, [126, 80]),
      seated([128, 80], 13),
      standing(3, [126, 80], 15),
    ];
    expect(judge(mixed, demanded)).toMatchObject({ fall: 'incomplete', missing: ['standing 1 min'] });
  });
  it('a first standing up that was whole stays whole when the second is cut short', () => {
    expect(judge([...FELL, ...again([126, 80], null)], demanded)).toMatchObject({
      complete: true,
      missing: [],
    });
  });
  it('a fall is measured from the higher rest, before the first standing or before this one', () => {
    const [rest] = FELL as [Reading];
    const lowRest = [rest, standing(1, [125, 80]), lying([112, 78], 16), standing(1, [109, 76], 20)];
    expect(judge(lowRest).fired.map((f) => [f.rule, f.by])).toEqual([['systolic-fall', 21]]);
    const highRest = [rest, standing(1, [125, 80]), lying([140, 78], 16), standing(1, [119, 76], 20)];
    expect(judge(highRest).fired.map((f) => [f.rule, f.by])).toEqual([['systolic-fall', 21]]);
  });
  it('a rest written down only afterwards is better than none', () => {
    expect(judge([standing(1, [108, 78]), lying([130, 80], 30)]).fall).toBe('yes');
    expect(judge([standing(1, [108, 78]), seated([130, 80], 30)]).fall).toBe('yes');
    expect(judge([lying([116, 80]), standing(1, [108, 78]), seated([130, 80], 30)]).fall).toBe('no');
  });
});
