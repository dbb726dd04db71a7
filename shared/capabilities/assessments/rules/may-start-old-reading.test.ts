/** May we start, by readings that are too old to say how somebody is now. */
import { describe, expect, it } from 'vitest';
import { check, hours } from '../../board/rules/history.testkit.ts';
import { ask, checked, pressure, rate, said, start, taken, well } from './may-start-now.testkit.ts';

describe('a reading that is too old (12 h: common practice, no source)', () => {
  it('is not used, and is named; the board is told when', () => {
    const told = [checked()];
    const fresh = start(13 - 1 / 60, told);
    expect(fresh.view.mayStart!.word).toBe('may-start');
    expect(fresh.nextChange).toBe(hours(13));
    const old = ask(13, told);
    expect(old.word).toBe('ask-first');
    expect(old.notTaken).toContain('blood pressure (older than 12 h)');
    expect(old.notTaken).toHaveLength(6);
    expect(old.reasons.at(-1)!.facts).toEqual(['check-1']);
  });
  it('beyond a limit stands until a newer one, and is asked for again', () => {
    const told = [checked(1, [...well(1).slice(1), pressure(85, 1)])];
    expect(said(14, told)[0]).toBe('not-now: systolic 85 mmHg is below 90');
    expect(ask(14, told).notTaken).toContain('blood pressure (older than 12 h)');
    expect(said(16, [...told, taken(15, [pressure(120, 15)])])).not.toContain(
      'not-now: systolic 85 mmHg is below 90',
    );
  });
  it('beyond a limit is not answered by the check that it is from', () => {
    const readings = [...well(1).filter((r) => r.kind !== 'heart-rate'), rate(115, 1)];
    expect(said(14, [checked(1, readings)])).toContain('ask-first: heart rate 115 is 111 or more');
  });
  it('and beyond a limit no longer stands when a check cleared the start after it', () => {
    const bad = [checked(), taken(2, [rate(125, 2)])];
    const later = check('walk', 3, {}, { readings: [] });
    const words = 'ask-first: heart rate 125 is 111 or more';
    expect(said(13.9, [...bad, later])).toContain(words);
    expect(said(14, [...bad, later])).not.toContain(words);
    expect(said(14, bad)).toContain(words);
    const failed = check('clear', 3, { clear: { outcome: 'not-met' } }, { readings: [] });
    expect(said(14, [...bad, failed])).toContain(words);
  });
});
