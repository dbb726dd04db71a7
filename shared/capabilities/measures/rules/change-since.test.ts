import { describe, expect, it } from 'vitest';
import type { Measure } from '../values.ts';
import { changeSince } from './change-since.ts';
import { limits, rises, sixMinutes, speed, stands, upAndGo } from './measures.testkit.ts';

const change = (now: Measure, ...earlier: Measure[]) => changeSince(now, earlier, limits);
const says = (now: Measure, ...earlier: Measure[]) => change(now, ...earlier)?.says ?? null;

describe('the change of walking speed: 0.05 small, 0.10 substantial (Perera 2006, from memory)', () => {
  it.each([
    [0.6, 0.6, 'As fast as the time before: less than a change that counts (0.05 or more).'],
    [0.64, 0.6, '0.04 m/s faster than the time before: less than a change that counts (0.05 or more).'],
    [0.65, 0.6, '0.05 m/s faster than the time before: a small change that counts (0.05 or more).'],
    [0.55, 0.6, '0.05 m/s slower than the time before: a small change that counts (0.05 or more).'],
    [0.69, 0.6, '0.09 m/s faster than the time before: a small change that counts (0.05 or more).'],
    [0.7, 0.6, '0.10 m/s faster than the time before: a substantial change (0.1 or more).'],
    [0.5, 0.6, '0.10 m/s slower than the time before: a substantial change (0.1 or more).'],
  ])('%d m/s after %d m/s', (now, before, expected) => {
    expect(says(speed(now), speed(before))).toBe(expected);
  });
  it('names the source of the size of change', () => {
    expect(change(speed(0.7), speed(0.6))?.source).toBe('Perera et al. 2006 (from memory)');
    expect(change(speed(0.6), speed(0.6))?.source).toBe('Perera et al. 2006 (from memory)');
  });
  it('at a fast pace is told without a published size', () => {
    const fast = { pace: 'fast' };
    expect(change(speed(0.8, fast), speed(0.6, fast))).toEqual({
      says: '0.20 m/s faster than the time before.',
      source: null,
    });
  });
});

describe('the change since the time before', () => {
  it('is none for the first of its kind', () => {
    expect(change(speed(0.6))).toBeNull();
    expect(change(speed(0.6), stands(4), upAndGo(20))).toBeNull();
  });
  it('of a walk done in another way is not told', () => {
    const otherwise = { says: 'Not compared with the one before: done in another way.', source: null };
    for (const other of [
      { metres: 4, seconds: 4 },
      { pace: 'fast' },
      { start: 'from-standing' },
      { turn: true },
      { support: 'frame' },
    ]) {
      expect(change(speed(0.6), speed(0.6, other))).toEqual(otherwise);
    }
    expect(change(stands(5), stands(5, true))).toEqual(otherwise);
    expect(change(rises(12), rises(12, true))).toEqual(otherwise);
    expect(change(sixMinutes(200), sixMinutes(200, { support: 'frame' }))).toEqual(otherwise);
    expect(change(upAndGo(20), upAndGo(20, 'frame'))).toEqual(otherwise);
  });
  it('is from the newest one done in the same way, over others in between', () => {
    expect(says(speed(0.7), stands(3), speed(0.9, { turn: true }), speed(0.6), speed(0.3))).toContain(
      '0.10 m/s faster',
    );
  });
  it('is told in the unit of the measure', () => {
    expect(says(sixMinutes(235), sixMinutes(200))).toBe('35 m more than the time before.');
    expect(says(sixMinutes(199.5), sixMinutes(200))).toBe('0.5 m less than the time before.');
    expect(says(stands(8), stands(6))).toBe('2 more than the time before.');
    expect(says(stands(5), stands(6))).toBe('1 fewer than the time before.');
    expect(says(rises(14.1), rises(16))).toBe('1.9 s quicker than the time before.');
    expect(says(upAndGo(20.25), upAndGo(18))).toBe('2.3 s slower than the time before.');
    expect(says(upAndGo(18), upAndGo(18))).toBe('The same as the time before.');
    expect(change(upAndGo(18), upAndGo(18))?.source).toBeNull();
  });
  it('tells not managed as such, never as nought seconds', () => {
    expect(says(upAndGo(18), upAndGo(null))).toBe('Not managed the time before.');
    expect(says(upAndGo(null), upAndGo(18))).toBe('Managed the time before, not this time.');
    expect(says(rises(null), rises(null))).toBe('Not managed the time before either.');
  });
});
