/** The speed of a walk: by age and sex, in bands, and as a risk. Each source stands beside its check. */
import { describe, expect, it } from 'vitest';
import { speedOf } from './judge-measure.ts';
import { judged, man, says, someone, speed, woman } from './measures.testkit.ts';

describe('walking speed by age and sex: Bohannon & Andrews, Physiotherapy 2011 (two decimals confirmed, the third from memory)', () => {
  const printed = [
    [20, 29, 1.358, 1.341],
    [30, 39, 1.433, 1.337],
    [40, 49, 1.434, 1.39],
    [50, 59, 1.433, 1.313],
    [60, 69, 1.339, 1.241],
    [70, 79, 1.262, 1.132],
    [80, 99, 0.968, 0.943],
  ] as const;
  const cells = printed.flatMap(([from, to, men, women]) =>
    [from, to].flatMap((age) => [
      ['male', age, men, `men of ${from} to ${to}`] as const,
      ['female', age, women, `women of ${from} to ${to}`] as const,
    ]),
  );
  it.each(cells)('%s of %i: mean %d m/s for %s', (sex, age, mean, people) => {
    const by = someone(sex, age);
    const shown = Math.round(mean * 100);
    const of = `the mean of healthy ${people} (${(shown / 100).toFixed(2)} m/s).`;
    expect(says(speed((shown - 1) / 100 + 0.005), by)).toContain(` Slower than ${of}`);
    expect(says(speed(shown / 100), by)).toContain(` Not slower than ${of}`);
  });
  it('says no norm under 20, over 99, and without age and sex', () => {
    expect(says(speed(1), man(19))).toContain('No norm: the table is for ages 20 to 99.');
    expect(says(speed(1), woman(100))).toContain('No norm: the table is for ages 20 to 99.');
    expect(says(speed(1))).toContain('No norm: age and sex not given.');
  });
  it('MEASURE-2 is never compared with a walk with a turn, from a word to go, or at a fast pace', () => {
    const turned = judged(speed(0.5, { turn: true }), man(70));
    expect(turned.says).toContain('No norm: walked with a turn.');
    expect(turned.warnings).toContain('With a turn the speed reads lower than straight ahead.');
    const started = judged(speed(0.5, { start: 'from-standing' }), man(70));
    expect(started.says).toContain('No norm: timed from standing.');
    expect(started.warnings).toContain('Timed from standing the speed reads lower than already walking.');
    const fast = judged(speed(0.5, { pace: 'fast' }), man(70));
    expect(fast.says).toBe('0.50 m/s. No norm: the table and the cut points are for the usual pace.');
    expect(fast.warnings).toEqual([]);
    for (const { says: text } of [turned, started, fast]) expect(text).not.toContain('mean');
  });
  it("carries the authors' warning, and none about how it was walked when it was walked as theirs", () => {
    expect(judged(speed(1), man(70)).warnings).toEqual([
      'The authors of the table: not valid over a short course from a word to go, or with a turn.',
      'The bands 0.4 to 0.8 m/s were set with people after a stroke (from memory).',
    ]);
    expect(judged(speed(1, { support: 'stick' })).warnings[0]).toBe(
      'Walked with a stick: compare it only with a walk with the same.',
    );
  });
});

describe('walking speed bands: Perry 1995 in Fritz & Lusardi 2009', () => {
  it.each([
    [0.39, '0.39 m/s: walking at home only (under 0.4 m/s).'],
    [0.4, '0.40 m/s: limited walking in the community (0.4 to 0.8 m/s).'],
    [0.8, '0.80 m/s: limited walking in the community (0.4 to 0.8 m/s).'],
    [0.81, '0.81 m/s: walking in the community (over 0.8 m/s).'],
  ])('%d m/s', (at, expected) => {
    expect(says(speed(at))).toContain(expected);
  });
  it('hold for a walk with a turn too: it reads lower, which is the careful side', () => {
    expect(says(speed(0.39, { turn: true }))).toContain('walking at home only');
  });
});

describe('walking speed and risk: Cesari et al. 2005 (1.0 m/s), PMC4912425 of 2016 (0.76 m/s)', () => {
  it('under 1.0 m/s is the higher-risk side, 1.0 is not', () => {
    expect(says(speed(0.99))).toContain('Under 1 m/s: reads as higher risk in older people.');
    expect(says(speed(1))).toContain('Not under 1 m/s.');
  });
  it('up to 0.76 m/s is the side of people who fall more', () => {
    const fallsMore = 'Not over 0.76 m/s: reads as more falls in older people.';
    expect(says(speed(0.76))).toContain(fallsMore);
    expect(says(speed(0.77))).not.toContain('more falls');
  });
  it('nothing is said of falls where the speed is not on that side', () => {
    expect(says(speed(1))).toBe(
      '1.00 m/s: walking in the community (over 0.8 m/s). Not under 1 m/s. No norm: age and sex not given.',
    );
  });
  it('names every source once', () => {
    expect(judged(speed(1)).source).toBe(
      'Perry 1995, as restated in Fritz & Lusardi, J Geriatr Phys Ther 2009;32:46-49; Cesari et al., J Am Geriatr Soc 2005;53:1675-80; PMC4912425 (2016); Bohannon & Andrews, Physiotherapy 2011;97:182-9',
    );
  });
});

describe('the speed of a walk', () => {
  const of = (metres: number, seconds: number) => speedOf(speed(1, { metres, seconds }));
  it('is cut to two decimals, never rounded up over a cut point', () => {
    expect(of(4, 5)).toBe(0.8);
    expect(of(10, 10.01)).toBe(0.99);
    expect(of(4, 10.03)).toBe(0.39);
    expect(of(10, 12.44)).toBe(0.8);
  });
  it('does not lose a hundredth to the arithmetic of the machine', () => {
    expect(of(2.9, 10)).toBe(0.29);
    expect(of(5.7, 10)).toBe(0.57);
  });
});
