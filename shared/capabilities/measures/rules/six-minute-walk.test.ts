/** The walk of six minutes. Its source stands beside the check. */
import { describe, expect, it } from 'vitest';
import { sixMinuteReference } from './tables/six-minute-walk.ts';
import { judged, man, says, sixMinutes, someone, woman } from './measures.testkit.ts';

describe('six-minute walk: Enright & Sherrill 1998, the four worked values (derived from the equation; lower limits from memory)', () => {
  it.each([
    ['male', 70, 175, 80, 523.55, 370.55],
    ['male', 65, 180, 85, 577.7, 424.7],
    ['female', 70, 162, 65, 455.37, 316.37],
    ['female', 75, 160, 60, 433.7, 294.7],
  ] as const)('%s, %i years, %i cm, %i kg: %d m, lower limit %d m', (sex, age, cm, kg, reference, lower) => {
    const found = sixMinuteReference(someone(sex, age), cm, kg)!;
    expect(found.reference).toBeCloseTo(reference, 8);
    expect(found.lower).toBeCloseTo(lower, 8);
  });
  const told = { heightCm: 175, weightKg: 80 };
  it('below the lower limit, below the reference, and neither', () => {
    const numbers = 'reference 524 m, lower limit 371 m for this age, sex, height and weight.';
    expect(says(sixMinutes(370, told), man(70))).toBe(`Below the lower limit of normal: ${numbers}`);
    expect(says(sixMinutes(371, told), man(70))).toBe(
      `Below the reference, not below the lower limit of normal: ${numbers}`,
    );
    expect(says(sixMinutes(523, told), man(70))).toContain('Below the reference, not below');
    expect(says(sixMinutes(524, told), man(70))).toBe(`Not below the reference: ${numbers}`);
  });
  it('MEASURE-2 has no prediction outside the ages it was fitted at, 40 to 80', () => {
    for (const age of [39, 81]) {
      expect(sixMinuteReference(man(age), 175, 80)).toBeNull();
      expect(says(sixMinutes(300, told), woman(age))).toBe('No norm: the equation is for ages 40 to 80.');
    }
    for (const age of [40, 80]) expect(sixMinuteReference(woman(age), 175, 80)).not.toBeNull();
  });
  it('names what is missing, and takes nothing for it', () => {
    expect(says(sixMinutes(300))).toBe('No norm: age and sex, height and weight not given.');
    expect(says(sixMinutes(300, { heightCm: 175 }), man(70))).toBe('No norm: weight not given.');
    expect(says(sixMinutes(300, { weightKg: 80 }), man(70))).toBe('No norm: height not given.');
    expect(says(sixMinutes(300), man(70))).toBe('No norm: height and weight not given.');
    expect(says(sixMinutes(300, told))).toBe('No norm: age and sex not given.');
  });
  it('has no norm where the equation leaves nothing to compare with', () => {
    // 7.57 x 140 - 5.02 x 80 - 309 = 349.2; at 111.4 kg the lower limit is 0.1 m, at 111.5 kg it is under nought.
    expect(says(sixMinutes(3, { heightCm: 140, weightKg: 111.4 }), man(80))).toContain('lower limit 1 m');
    expect(says(sixMinutes(3, { heightCm: 140, weightKg: 111.5 }), man(80))).toBe(
      'No norm: the equation does not fit this height and weight.',
    );
  });
  it('says that a shorter walk is not multiplied, names its source, and never says the weight', () => {
    const all = judged(sixMinutes(400, { ...told, support: 'frame' }), man(70));
    expect(all.words).toBe('Six-minute walk: 400 m');
    expect(all.warnings).toEqual([
      'Walked with a frame: compare it only with a walk with the same.',
      'Only for six full minutes: a shorter walk is not multiplied up.',
    ]);
    expect(all.source).toBe(
      'Enright & Sherrill, Am J Respir Crit Care Med 1998;158:1384-7 (the lower limit from memory)',
    );
    expect(JSON.stringify(all)).not.toContain('80');
    expect(judged(sixMinutes(400)).warnings).toHaveLength(1);
  });
});
