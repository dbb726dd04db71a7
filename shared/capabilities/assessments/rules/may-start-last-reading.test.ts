/** May we start: which of several readings counts. */
import { describe, expect, it } from 'vitest';
import { hours, session } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import {
  ask,
  breathing,
  checked,
  pressure,
  rate,
  said,
  start,
  taken,
  well,
} from './may-start-now.testkit.ts';
import { at } from './told-start.testkit.ts';

describe('the reading that counts', () => {
  it('is the last of its kind, of a check or of a session, with its time, limit, source and entry', () => {
    const told = [checked(), taken(2, [breathing(34, 2)])];
    expect(ask(3, told).reasons).toEqual([
      {
        word: 'not-now',
        words: 'breathing rate 34 is above 30',
        limit: 30,
        source: DEFAULT_RULES.start.breathingAbove.source,
        takenAt: hours(2),
        facts: ['walk-2'],
      },
      expect.objectContaining({ words: expect.stringContaining('A stop limit was passed') }),
    ]);
    expect(said(5, [...told, taken(4, [breathing(16, 4)])])).not.toContain(
      'not-now: breathing rate 34 is above 30',
    );
  });
  it('goes by when it was taken, not by when the entry was', () => {
    expect(
      said(5, [checked(3, [...well(3).slice(1), pressure(85, 3)]), checked(4, [pressure(120, 2)])]),
    ).toEqual(['not-now: systolic 85 mmHg is below 90']);
  });
  it('is none that is timed ahead, until then', () => {
    const told = [checked(), taken(2, [rate(140, 2.75)])];
    const before = start(2.5, told);
    expect(before.view.mayStart!.reasons.map((r) => r.words)).not.toContain('heart rate 140 is above 130');
    expect(before.nextChange).toBe(hours(2.75));
    expect(said(2.75, told)).toContain('not-now: heart rate 140 is above 130');
  });
  it('is no standing pressure: that belongs to rising', () => {
    const standing = (systolic: number) => pressure(systolic, 1.2, { posture: 'standing', heartRate: 140 });
    expect(ask(2, [checked(1, [...well(1), standing(85)])]).word).not.toBe('not-now');
    expect(ask(2, [checked(1, [...well(1).slice(1), standing(120)])]).notTaken).toEqual(['blood pressure']);
  });
  it('takes the heart rate that came with a pressure, and the later of two', () => {
    const noRate = well(1).filter((r) => r.kind !== 'heart-rate');
    expect(said(2, [checked(1, [...noRate, pressure(120, 1, { heartRate: 115 })])])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
    expect(ask(2, [checked(1, [...noRate, pressure(120, 1, { heartRate: 115 }), rate(80, 1.1)])]).word).toBe(
      'may-start',
    );
    expect(said(2, [checked(1, [...noRate, rate(80, 1), pressure(120, 1.1, { heartRate: 115 })])])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
  });
  it('of two as strict by who may not free is the newer, which outlasts the older', () => {
    const older = taken(1.5, [breathing(50, 1.5)], 'aide');
    const newer = taken(10, [breathing(34, 10)], 'aide');
    // Clear was met since, with no reading of its own: the older one is of more than 12 h ago.
    const told = [checked(), older, newer, checked(14, [])];
    expect(said(15, told)).toContain('not-now: breathing rate 34 is above 30');
    expect(said(15, [checked(), newer, checked(14, [])])).toContain('not-now: breathing rate 34 is above 30');
    // The stricter one is not forgotten for a newer one that only asks.
    expect(
      said(11, [checked(), taken(9, [rate(140, 9)], 'aide'), taken(10, [rate(115, 10)], 'aide')]),
    ).toContain('not-now: heart rate 140 is above 130');
  });
  it('of two of one instant is the stricter', () => {
    for (const two of [
      [pressure(120, 1.5), pressure(85, 1.5)],
      [pressure(85, 1.5), pressure(120, 1.5)],
    ]) {
      expect(ask(2, [checked(1, [...well(1), ...two])]).word).toBe('not-now');
    }
  });
  it('hears the pain before and after a session', () => {
    expect(said(3, [checked(), { ...session(2, { painBefore: 5 }), role: 'nurse' }])).toEqual([
      'ask-first: pain 5 of 10: offer relief, come back when it works',
    ]);
    const both = { ...session(2, { painBefore: 8, painAfter: 1, endedAt: at(2.5) }), role: 'nurse' as const };
    expect(ask(3, [checked(), both]).word).toBe('may-start');
    const worse = { ...session(2, { painBefore: 1, painAfter: 8, endedAt: at(2.5) }), role: 'aide' as const };
    expect(said(3, [checked(), worse])).toEqual([
      'ask-first: A stop limit was passed: pain 8 of 10 is 7 or more; not looked at since',
      'ask-first: pain 8 of 10: relief first',
    ]);
    expect(ask(3, [checked(), worse]).reasons[1]!.takenAt).toBe(hours(2.5));
  });
});
