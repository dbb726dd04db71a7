/** May we start: what an entry by someone who may not free counts for, and of two answers the stricter. Design, rules 1 and 2. */
import { describe, expect, it } from 'vitest';
import { correct, hold, hours } from '../../board/rules/history.testkit.ts';
import { joinStarts } from './may-start-now.ts';
import { ask, checked, pressure, rate, said, start, taken, well } from './may-start-now.testkit.ts';

describe('a reading by someone who may not free', () => {
  it('counts where it is stricter', () => {
    expect(said(3, [checked(), taken(2, [rate(115, 2)], 'aide')])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
  });
  it('counts where it is stricter than one of the same instant', () => {
    for (const id of ['a', 'z']) {
      expect(said(3, [checked(), { ...taken(1, [rate(115, 1)], 'aide'), id }])).toEqual([
        'ask-first: heart rate 115 is 111 or more',
      ]);
    }
    expect(said(3, [checked(), taken(1, [rate(115, 0.9)], 'aide')])).toEqual([]);
  });
  it('does not take the place of one beyond a limit', () => {
    const bad = checked(1, [...well(1).filter((r) => r.kind !== 'heart-rate'), rate(115, 1)]);
    expect(said(3, [bad, taken(2, [rate(80, 2)], 'aide')])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
    expect(ask(3, [bad, taken(2, [rate(80, 2)], 'nurse')]).word).toBe('may-start');
    expect(said(4, [checked(), taken(2, [rate(115, 2)], 'aide'), taken(3, [rate(80, 3)], 'aide')])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
    expect(ask(4, [checked(), taken(2, [rate(115, 2)], 'aide'), taken(3, [rate(80, 3)])]).word).toBe(
      'may-start',
    );
  });
  it('is not enough by itself, and neither renews one that is too old', () => {
    const gap = checked(1, well(1).slice(1));
    expect(ask(3, [gap, taken(2, [pressure(120, 2)], 'aide')]).notTaken).toEqual([
      'blood pressure (again, by a nurse or therapist)',
    ]);
    const renewed = ask(14, [checked(), taken(5, [pressure(120, 5)], 'aide')]);
    expect(renewed.notTaken).toContain('blood pressure (again, by a nurse or therapist)');
    expect(start(14, [checked(), taken(5, [pressure(120, 5)], 'aide')]).nextChange).toBeLessThanOrEqual(
      hours(17),
    );
    expect(ask(17, [checked(), taken(5, [pressure(120, 5)], 'aide')]).notTaken).toContain(
      'blood pressure (older than 12 h)',
    );
  });
});
describe('a fact that may not free', () => {
  it('entered late, while something since is open, does not start anybody: both sides are said', () => {
    const bad = taken(2, [pressure(85, 2)]);
    const good = correct(6, 'walk-2', taken(2, [pressure(120, 2)]));
    const open = hold(4, 'walking', 90);
    expect(said(7, [checked(), bad, { ...good, recorded: 6.5 }])).not.toContain(
      'not-now: systolic 85 mmHg is below 90',
    );
    expect(said(7, [checked(), bad, open, { ...good, recorded: 6.5 }])).toContain(
      'not-now: systolic 85 mmHg is below 90',
    );
  });
  it('of two views the stricter stands, each reason once with the facts of both', () => {
    const reason = (word: 'not-now' | 'ask-first', words: string, fact: string) => ({
      word,
      words,
      limit: null,
      source: 'ours',
      takenAt: null,
      facts: [fact as never],
    });
    const a = { word: 'ask-first' as const, reasons: [reason('ask-first', 'x', 'e1')], notTaken: ['pain'] };
    const b = {
      word: 'not-now' as const,
      reasons: [reason('ask-first', 'x', 'e2'), reason('not-now', 'y', 'e3')],
      notTaken: ['pain', 'temperature'],
    };
    const joined = {
      word: 'not-now',
      reasons: [reason('not-now', 'y', 'e3'), { ...reason('ask-first', 'x', 'e1'), facts: ['e1', 'e2'] }],
      notTaken: ['pain', 'temperature'],
    };
    expect(joinStarts(a, b)).toEqual(joined);
    expect(joinStarts(b, a).word).toBe('not-now');
    const stop = { word: 'not-now' as const, reasons: [reason('not-now', 'x', 'e4')], notTaken: [] };
    expect(joinStarts(stop, a)).toMatchObject({ word: 'not-now', reasons: [{ word: 'not-now' }] });
    expect(joinStarts(a, stop)).toMatchObject({ word: 'not-now', reasons: [{ word: 'not-now' }] });
  });
});
