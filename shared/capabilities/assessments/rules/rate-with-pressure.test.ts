/** The heart rate that came with a pressure, at the start of a check. Limits as in may-start.test.ts. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, stayOf, ward } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { judgeStart, readingsAtStart } from './may-start.ts';

const clock = (minute: number) => `2026-03-03T09:0${minute}:00Z`;
const rate = (perMinute: number, minute: number): Reading => ({
  kind: 'heart-rate',
  perMinute,
  at: clock(minute),
});
const pressure = (minute: number, heartRate?: number, systolic = 120): Reading => ({
  kind: 'pressure',
  posture: 'lying',
  systolic,
  diastolic: 35,
  at: clock(minute),
  ...(heartRate === undefined ? {} : { heartRate }),
});
const judge = (readings: readonly Reading[], clearAt = 9) =>
  judgeStart({
    readings: readingsAtStart(readings, Date.parse(clock(clearAt))),
    cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
    oxygenTarget: null,
    oxygenFlowBefore: null,
    rules: DEFAULT_RULES.start,
  });
const said = (readings: readonly Reading[], clearAt?: number) =>
  judge(readings, clearAt).reasons.map((r) => [r.word, r.words, r.takenAt]);
const FAST = ['not-now', 'heart rate 150 is above 130'] as const;

describe('the heart rate that came with a pressure', () => {
  it('counts when it was taken after the one taken by itself', () => {
    expect(said([rate(80, 0), pressure(1, 150)])).toEqual([[...FAST, Date.parse(clock(1))]]);
  });
  it('gives way to one taken by itself after it', () => {
    expect(said([pressure(0, 150), rate(80, 1)])).toEqual([]);
    expect(said([pressure(0, 80), rate(150, 1)])).toEqual([[...FAST, Date.parse(clock(1))]]);
  });
  it('of one instant the faster of the two counts, whichever was written down first', () => {
    for (const both of [
      [rate(80, 0), pressure(0, 150)],
      [pressure(0, 150), rate(80, 0)],
      [rate(150, 0), pressure(0, 80)],
      [pressure(0, 80), rate(150, 0)],
    ]) {
      expect(said(both)).toEqual([[...FAST, Date.parse(clock(0))]]);
    }
  });
  it('is not lost when a later pressure came without one', () => {
    expect(said([pressure(0, 150), pressure(1)])).toEqual([[...FAST, Date.parse(clock(0))]]);
    expect(judge([pressure(0, 80), pressure(1)]).notTaken).not.toContain('heart rate');
  });
  it('taken once the person is on the way up says nothing of the start', () => {
    expect(said([rate(135, 0), pressure(5, 100)], 2)).toEqual([
      ['not-now', 'heart rate 135 is above 130', Date.parse(clock(0))],
    ]);
  });
  it('is the same by the time written, whatever the order of the readings', () => {
    expect(said([pressure(1, 150), rate(80, 0)])).toEqual([[...FAST, Date.parse(clock(1))]]);
  });
  it('of two pressures of one instant the lower counts', () => {
    for (const both of [
      [pressure(0, 80, 85), pressure(0, 80, 120)],
      [pressure(0, 80, 120), pressure(0, 80, 85)],
    ]) {
      expect(said(both).map(([, words]) => words)).toEqual(['systolic 85 mmHg is below 90']);
    }
  });
});

it('a check with such a heart rate does not clear the start', () => {
  const at = (h: number) => toIso(hours(h));
  const readings = [
    { kind: 'heart-rate', perMinute: 80, at: at(0.9) },
    { kind: 'pressure', posture: 'lying', systolic: 120, diastolic: 70, heartRate: 150, at: at(1) },
  ];
  const { tier } = evaluateStay(stayOf(check('walk', 1, {}, { readings })), ward, calendar, hours(2)).view;
  expect(tier.word).not.toBe('Walk');
  expect(tier.because.map((b) => b.words).join()).toContain('heart rate 150 is above 130');
});
