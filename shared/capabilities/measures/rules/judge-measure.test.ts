import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/default-rules.ts';
import type { Measure, ReadBy } from '../values.ts';
import { judgeMeasure, MEASURES_STANDING_LINE, speedOf } from './judge-measure.ts';
import { sixMinuteReference } from './tables/six-minute-walk.ts';

const limits = DEFAULT_RULES.walking;
const judged = (measure: Measure, by?: ReadBy) => judgeMeasure(measure, by, limits);
const says = (measure: Measure, by?: ReadBy) => judged(measure, by).says;
const man = (age: number): ReadBy => ({ age, sex: 'male' });
const woman = (age: number): ReadBy => ({ age, sex: 'female' });
const someone = (sex: 'male' | 'female', age: number): ReadBy => ({ age, sex });

const stands = (count: number, usedArms = false): Measure => ({
  kind: 'chair-stands',
  stands: count,
  usedArms,
});
const speed = (metresPerSecond: number, over: object = {}): Measure & { kind: 'gait-speed' } => ({
  kind: 'gait-speed',
  metres: 10,
  seconds: 10 / metresPerSecond,
  pace: 'usual',
  start: 'walking',
  turn: false,
  support: 'none',
  ...over,
});
const sixMinutes = (metres: number, over: object = {}): Measure => ({
  kind: 'six-minute-walk',
  metres,
  support: 'none',
  ...over,
});
const rises = (seconds: number | null, usedArms = false): Measure => ({
  kind: 'five-rises',
  seconds,
  usedArms,
});
const upAndGo = (
  seconds: number | null,
  support: 'none' | 'frame' | 'crutches' | 'two-sticks' = 'none',
): Measure => ({ kind: 'up-and-go', seconds, support });

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

describe('up and go: CDC STEADI Timed Up and Go (2017), 12 s or more', () => {
  it('at 12 s is at risk of falling, just under it is not over the cut point', () => {
    expect(says(upAndGo(12))).toBe('At risk of falling: 12 s or more.');
    expect(says(upAndGo(11.9))).toBe('Under the cut point for risk of falling (12 s).');
    expect(judged(upAndGo(11.9)).source).toBe(
      'US Centers for Disease Control and Prevention, timed up and go (2017)',
    );
  });
  it('not managed reads as at risk, never as nought seconds', () => {
    expect(says(upAndGo(null))).toBe('Not managed: reads as at risk of falling (12 s or more).');
    expect(judged(upAndGo(null)).words).toBe('Up and go over 3 m: not managed');
  });
  it('with a support says that only a walk with the same compares', () => {
    expect(judged(upAndGo(10)).warnings).toEqual([]);
    expect(judged(upAndGo(10, 'frame')).warnings).toEqual([
      'Walked with a frame: compare it only with a walk with the same.',
    ]);
    expect(judged(upAndGo(10, 'crutches')).warnings[0]).toContain('Walked with crutches:');
    expect(judged(upAndGo(10, 'two-sticks')).warnings[0]).toContain('Walked with two sticks:');
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

describe('a ward that set its own cut points', () => {
  const own = (key: keyof typeof limits, value: number) => ({
    ...limits,
    [key]: { ...limits[key], value, source: 'our ward' },
  });
  it('reads by them, and names its own source', () => {
    expect(judgeMeasure(upAndGo(12), undefined, own('upAndGoFrom', 14))).toMatchObject({
      says: 'Under the cut point for risk of falling (14 s).',
      source: 'our ward',
    });
    expect(judgeMeasure(rises(13), undefined, own('fiveRisesAbove', 12)).says).toBe('Slow: over 12 s.');
    expect(judgeMeasure(speed(0.45), undefined, own('householdBelow', 0.5)).says).toContain('at home only');
  });
});

it('a reading says beside it that it is no diagnosis and frees nothing', () => {
  expect(MEASURES_STANDING_LINE).toContain('Not a diagnosis');
  expect(MEASURES_STANDING_LINE).toContain('frees nothing and changes no plan');
  expect(MEASURES_STANDING_LINE).toContain('clinician at the bedside come first');
});
