/** Pressures on rising, said with the tier of the check that took them. Limits: the ward's rules, with their sources. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../corrections/facts.ts';
import type { Reading } from '../values.ts';
import { assessment, hours, upTo } from './assessment.testkit.ts';
import { judge } from './stages.testkit.ts';

describe('the pressures of a check, said with the tier', () => {
  const reading = (
    posture: 'lying' | 'standing',
    systolic: number,
    minute: number,
    heartRate = 70,
  ): Reading => ({
    kind: 'pressure',
    posture,
    systolic,
    diastolic: 70,
    heartRate,
    minute,
    at: new Date(hours(0) + (posture === 'lying' ? 0 : minute * 60_000)).toISOString(),
  });
  const set = (lying: number, one: number, three: number | null, rate = 70) => [
    reading('lying', lying, 5),
    reading('standing', one, 1, rate),
    ...(three === null ? [] : [reading('standing', three, 3)]),
  ];
  const check = (
    readings: Reading[],
    extra: { at?: number; role?: 'nurse' | 'aide'; symptoms?: 'dizzy'[]; gone?: boolean; id?: string } = {},
  ) =>
    assessment(
      upTo('stand'),
      { at: extra.at ?? 0, role: extra.role ?? 'nurse', id: extra.id ?? '' },
      {
        depth: 'full-with-pressure',
        readings,
        risingSymptoms: extra.symptoms ?? [],
        ...(extra.gone ? { protocol: { id: 'gone', version: 4 } } : {}),
      },
    );
  const of3 = (...facts: Fact[]) => judge(...facts).view.because.filter((b) => b.rule.startsWith('rising/'));

  it('a fall: which readings, and what follows', () => {
    const [said, ...rest] = of3(check(set(130, 108, 126), { id: 'c1' }));
    expect(rest).toEqual([]);
    expect(said).toMatchObject({ rule: 'rising/fell', facts: ['c1'] });
    expect(said?.words).toContain(
      'systolic fell 22: from 130/70 lying to 108/70 at 1 min standing (limit 20)',
    );
    expect(said?.words).toContain('sit for 2 min, then stand and measure once more');
    expect(said?.words).toContain('Tell the prescriber');
  });
  it('INCOMPLETE, with what is missing', () => {
    expect(of3(check(set(130, 125, null), { id: 'c1' }))).toEqual([
      {
        rule: 'rising/incomplete',
        facts: ['c1'],
        words: 'Pressure on rising INCOMPLETE: standing 3 min missing',
      },
    ]);
  });
  it('what is only shown: a heart-rate rise, a rise, a high lying pressure', () => {
    expect(of3(check(set(165, 188, 160, 104)))).toMatchObject([
      {
        rule: 'rising/shown',
        words: expect.stringMatching(/lying systolic is high \(165\).*heart rate rose 34.*systolic rose 23/),
      },
    ]);
    expect(of3(check(set(130, 128, 126)))).toEqual([]);
  });
  it('a drop stands until a later whole set by someone qualified shows none and clears standing', () => {
    const fell = check(set(130, 108, 126));
    const drop = (...facts: Fact[]) => judge(fell, ...facts).pressureDrop !== null;
    expect(drop()).toBe(true);
    expect(drop(check(set(130, 128, 126), { at: 4 }))).toBe(false);
    expect(drop(check(set(130, 128, 126), { at: 0.01 }))).toBe(true);
    expect(drop(check(set(130, 128, 126), { at: 4, role: 'aide' }))).toBe(true);
    expect(drop(check(set(130, 128, null), { at: 4 }))).toBe(true);
    expect(drop(check(set(130, 128, 126), { at: 4, symptoms: ['dizzy'] }))).toBe(true);
    expect(drop(check(set(105, 88, 95), { at: 4 }))).toBe(true);
    // The words stay with the check that fell.
    expect(of3(fell, check(set(130, 128, null), { at: 4 })).map((b) => b.rule)).toEqual([
      'rising/fell',
      'rising/incomplete',
    ]);
  });
  it('anyone may find a drop, and under a protocol that cannot be found it is one all the same', () => {
    expect(judge(check(set(130, 108, 126), { role: 'aide' })).pressureDrop).not.toBeNull();
    expect(judge(check(set(130, 108, 126), { gone: true })).pressureDrop).not.toBeNull();
    const fell = check(set(130, 108, 126));
    expect(judge(fell, check(set(130, 128, 126), { at: 4, gone: true })).pressureDrop).not.toBeNull();
  });
});
