/** Rising from a chair: how often in 30 s, and how quickly five times. Each source stands beside its check. */
import { describe, expect, it } from 'vitest';
import { judged, man, rises, says, someone, stands, woman } from './measures.testkit.ts';

describe('chair stands: CDC STEADI 30-Second Chair Stand (2017), from Rikli & Jones 1999, read in two agreeing restatements', () => {
  const printed = [
    [60, 64, 14, 12],
    [65, 69, 12, 11],
    [70, 74, 12, 10],
    [75, 79, 11, 10],
    [80, 84, 10, 9],
    [85, 89, 8, 8],
    [90, 94, 7, 4],
  ] as const;
  const cells = printed.flatMap(([from, to, men, women]) =>
    [from, to].flatMap((age) => [
      ['male', age, men, `men of ${from} to ${to}`] as const,
      ['female', age, women, `women of ${from} to ${to}`] as const,
    ]),
  );
  it.each(cells)('%s of %i: fewer than %i is below average for %s', (sex, age, cut, people) => {
    const by = someone(sex, age);
    expect(says(stands(cut - 1), by)).toBe(`Below average for ${people} (fewer than ${cut}).`);
    expect(says(stands(cut), by)).toBe(`Not below average for ${people} (${cut} or more).`);
  });
  it('woman of 72 with 9 stands is below average (the worked case: cut 10)', () => {
    expect(says(stands(9), woman(72))).toContain('Below average for women of 70 to 74 (fewer than 10)');
  });
  it('with arms the count is nought, and the words keep what was counted', () => {
    expect(says(stands(20, true), woman(92))).toBe(
      'Arms were used, so it counts as 0 by the published rule. Below average for women of 90 to 94 (fewer than 4).',
    );
    expect(judged(stands(20, true)).words).toBe('Chair stands in 30 s: 20, with arms');
    expect(says(stands(20, true))).toBe(
      'Arms were used, so it counts as 0 by the published rule. No norm: age and sex not given.',
    );
  });
  it('MEASURE-2 says no norm below 60, above 94, and without age and sex', () => {
    for (const by of [man(59), woman(59), man(95), woman(95), man(18), woman(120)]) {
      expect(says(stands(3), by)).toBe('No norm: the table is for ages 60 to 94.');
    }
    expect(says(stands(3))).toBe('No norm: age and sex not given.');
  });
  it('names its source and how it is done', () => {
    expect(judged(stands(3))).toMatchObject({
      source:
        'US Centers for Disease Control and Prevention, 30-second chair stand (2017), from Rikli & Jones 1999',
      warnings: [
        'From a chair about 43 cm high without arms; more than half-way up at 30 s counts as a stand.',
      ],
    });
  });
});

describe('five rises: over 15 s (Cruz-Jentoft et al. 2019, from memory)', () => {
  it('over 15 s is slow, 15 s is not', () => {
    expect(says(rises(15.1))).toBe('Slow: over 15 s.');
    expect(says(rises(15))).toBe('Not slow: not over 15 s.');
  });
  it('not managed reads as slow, with or without arms', () => {
    expect(says(rises(null))).toBe('Not managed: reads as slow (over 15 s).');
    expect(says(rises(null, true))).toBe('Not managed: reads as slow (over 15 s).');
  });
  it('with arms, slow stays slow and quick has no norm', () => {
    expect(says(rises(15.1, true))).toBe('Slow even with arms: over 15 s.');
    expect(says(rises(15, true))).toBe('No norm: arms were used.');
  });
  it('says that the cut point is from memory', () => {
    expect(judged(rises(10))).toEqual({
      words: 'Five rises from a chair: 10 s',
      says: 'Not slow: not over 15 s.',
      source: 'Cruz-Jentoft et al., Age Ageing 2019;48:16-31 (from memory)',
      warnings: ['The cut point is for rising without arms, from a chair without arms.'],
    });
  });
});
