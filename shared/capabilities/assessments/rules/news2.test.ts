import { describe, expect, it } from 'vitest';
import { CONSCIOUSNESS, scoreNews2, type News2Parts, type News2Parameter } from './news2.ts';
import { HIGHEST_SCORE, HIGHEST_WITHOUT_THREE, NEWS2_CHART } from './news2-chart.ts';

/** Every parameter at 0, on air. */
const well: Required<News2Parts> = {
  breathing: 18,
  saturation: 96,
  scale: 1,
  onOxygen: false,
  systolic: 120,
  pulse: 80,
  consciousness: 'alert',
  temperature: 37.0,
};
const score = (parts: News2Parts) => {
  const result = scoreNews2({ ...well, ...parts });
  if (!result.complete) throw new Error(`missing ${result.missing.join(', ')}`);
  return result;
};
const pointsFor = (parameter: News2Parameter, parts: News2Parts) =>
  score(parts).lines.find((line) => line.parameter === parameter)!.points;

describe('NEWS2 (Royal College of Physicians 2017, chart 1)', () => {
  it.each([
    [4, 3],
    [8, 3],
    [9, 1],
    [11, 1],
    [12, 0],
    [20, 0],
    [21, 2],
    [24, 2],
    [25, 3],
    [70, 3],
  ])('breathing rate %d scores %d', (breathing, points) => {
    expect(pointsFor('breathing', { breathing })).toBe(points);
  });
  it.each([
    [40, 3],
    [91, 3],
    [92, 2],
    [93, 2],
    [94, 1],
    [95, 1],
    [96, 0],
    [100, 0],
  ])('saturation %d on scale 1 scores %d, on air and on oxygen', (saturation, points) => {
    expect(pointsFor('saturation', { saturation, onOxygen: false })).toBe(points);
    expect(pointsFor('saturation', { saturation, onOxygen: true })).toBe(points);
  });
  it.each([
    [83, 3, 3],
    [84, 2, 2],
    [85, 2, 2],
    [86, 1, 1],
    [87, 1, 1],
    [88, 0, 0],
    [92, 0, 0],
    [93, 0, 1],
    [94, 0, 1],
    [95, 0, 2],
    [96, 0, 2],
    [97, 0, 3],
    [100, 0, 3],
  ])('saturation %d on scale 2 scores %d on air and %d on oxygen', (saturation, onAir, onOxygen) => {
    expect(pointsFor('saturation', { saturation, scale: 2, onOxygen: false })).toBe(onAir);
    expect(pointsFor('saturation', { saturation, scale: 2, onOxygen: true })).toBe(onOxygen);
  });
  it('oxygen scores 2 and air 0', () => {
    expect(pointsFor('oxygen', { onOxygen: true })).toBe(2);
    expect(pointsFor('oxygen', { onOxygen: false })).toBe(0);
  });
  it.each([
    [40, 3],
    [90, 3],
    [91, 2],
    [100, 2],
    [101, 1],
    [110, 1],
    [111, 0],
    [219, 0],
    [220, 3],
    [300, 3],
  ])('systolic pressure %d scores %d', (systolic, points) => {
    expect(pointsFor('systolic', { systolic })).toBe(points);
  });
  it.each([
    [20, 3],
    [40, 3],
    [41, 1],
    [50, 1],
    [51, 0],
    [90, 0],
    [91, 1],
    [110, 1],
    [111, 2],
    [130, 2],
    [131, 3],
    [250, 3],
  ])('pulse %d scores %d', (pulse, points) => {
    expect(pointsFor('pulse', { pulse })).toBe(points);
  });
  it.each([
    ['alert', 0],
    ['new-confusion', 3],
    ['voice', 3],
    ['pain', 3],
    ['unresponsive', 3],
  ] as const)('consciousness "%s" scores %d', (consciousness, points) => {
    expect(pointsFor('consciousness', { consciousness })).toBe(points);
  });
  it.each([
    [30, 3],
    [35.0, 3],
    [35.1, 1],
    [36.0, 1],
    [36.1, 0],
    [38.0, 0],
    [38.1, 1],
    [39.0, 1],
    [39.1, 2],
    [43, 2],
  ])('temperature %d scores %d', (temperature, points) => {
    expect(pointsFor('temperature', { temperature })).toBe(points);
  });

  it.each([
    // Worked from the chart, parameter by parameter.
    ['all at 0', {}, 0, false],
    [
      '2 + 1 + 2 + 1 + 2 + 0 + 1',
      { breathing: 22, saturation: 94, onOxygen: true, systolic: 105, pulse: 112, temperature: 38.5 },
      9,
      false,
    ],
    ['breathing 25 alone', { breathing: 25 }, 3, true],
    ['scale 2, 97 on oxygen: 3 + 2', { scale: 2, saturation: 97, onOxygen: true }, 5, true],
    ['scale 2, 97 on air', { scale: 2, saturation: 97 }, 0, false],
    ['scale 2, 90 on oxygen: 0 + 2', { scale: 2, saturation: 90, onOxygen: true }, 2, false],
    ['scale 1, 90 on oxygen: 3 + 2', { scale: 1, saturation: 90, onOxygen: true }, 5, true],
    [
      'all at their worst',
      {
        breathing: 30,
        saturation: 80,
        onOxygen: true,
        systolic: 70,
        pulse: 140,
        consciousness: 'unresponsive',
        temperature: 34,
      },
      20,
      true,
    ],
    // Scale 2 reaches its 3 at either end: too little, and on oxygen too much.
    ...([83, 97, 100] as const).map(
      (saturation) =>
        [
          `all at their worst on scale 2, ${saturation} on oxygen: 3 + 3 + 2 + 3 + 3 + 3 + 3`,
          {
            breathing: 25,
            scale: 2,
            saturation,
            onOxygen: true,
            systolic: 90,
            pulse: 131,
            consciousness: 'new-confusion',
            temperature: 35.0,
          },
          20,
          true,
        ] as const,
    ),
    [
      'the same on scale 2 with 97 on air: 3 + 0 + 0 + 3 + 3 + 3 + 3',
      {
        breathing: 25,
        scale: 2,
        saturation: 97,
        systolic: 90,
        pulse: 131,
        consciousness: 'new-confusion',
        temperature: 35.0,
      },
      15,
      true,
    ],
  ] as const)('%s', (_, parts, total, anyThree) => {
    expect(score(parts)).toMatchObject({ score: total, anyThree });
  });

  it.each([
    [{}, 0, 'low', 'every 12 hours'],
    [{ saturation: 95 }, 1, 'low', '4 to 6 hours'],
    [{ onOxygen: true, pulse: 112 }, 4, 'low', '4 to 6 hours'],
    [{ breathing: 25 }, 3, 'low-medium', 'urgently'],
    [{ breathing: 25, saturation: 95 }, 4, 'low-medium', 'urgently'],
    [{ onOxygen: true, pulse: 112, saturation: 95 }, 5, 'medium', 'within 1 hour'],
    [{ breathing: 25, saturation: 95, onOxygen: true }, 6, 'medium', 'within 1 hour'],
    [{ breathing: 25, saturation: 93, onOxygen: true }, 7, 'high', 'within 30 minutes'],
  ] as const)('%j: %d is in the band', (parts, total, word, asks) => {
    const { score: got, band } = score(parts);
    expect(got).toBe(total);
    expect(band.word).toBe(word);
    expect(band.asks).toContain(asks);
    expect(band.source).toContain('Royal College of Physicians');
  });

  it('reaches its highest score with every parameter at its worst, and 12 with none at 3', () => {
    const most = (without: number) =>
      ['breathing', 'saturationScale1', 'systolic', 'pulse', 'temperature']
        .map((key) => NEWS2_CHART[key as keyof typeof NEWS2_CHART].rows.map((r) => r.points as number))
        .map((points) => Math.max(...points.filter((p) => p !== without)))
        .reduce((sum, p) => sum + p, 2 + (without === 3 ? 0 : 3));
    expect(most(Number.NaN)).toBe(HIGHEST_SCORE);
    expect(most(3)).toBe(HIGHEST_WITHOUT_THREE);
    expect([HIGHEST_SCORE, HIGHEST_WITHOUT_THREE]).toEqual([20, 12]);
  });
});

describe('a score from its parts', () => {
  it('says each parameter with its value and its points, in the order of the chart', () => {
    expect(
      score({ breathing: 22, onOxygen: true, consciousness: 'voice' }).lines.map((l) => [l.words, l.points]),
    ).toEqual([
      ['breathing rate 22 a minute', 2],
      ['oxygen saturation 96 %', 0],
      ['on oxygen', 2],
      ['systolic pressure 120 mmHg', 0],
      ['pulse 80 a minute', 0],
      ['answers to voice only', 3],
      ['temperature 37 °C', 0],
    ]);
  });
  it.each([
    ['breathing', 'breathing rate'],
    ['saturation', 'oxygen saturation'],
    ['scale', 'which oxygen scale'],
    ['onOxygen', 'on air or on oxygen'],
    ['systolic', 'systolic pressure'],
    ['pulse', 'pulse'],
    ['consciousness', 'consciousness'],
    ['temperature', 'temperature'],
  ] as const)('without %s has no total and names what is missing', (key, words) => {
    for (const nothing of [undefined, null]) {
      const result = scoreNews2({ ...well, [key]: nothing });
      expect(result).toMatchObject({ complete: false, missing: [words] });
      expect(result).not.toHaveProperty('score');
    }
  });
  it('takes a number that is none as missing', () => {
    expect(scoreNews2({ ...well, pulse: Number.NaN })).toMatchObject({ missing: ['pulse'] });
  });
  it('MAY-7 with nothing taken names every part, and gives no points', () => {
    expect(scoreNews2({})).toMatchObject({ complete: false, lines: [] });
    expect(scoreNews2({})).toHaveProperty('missing.length', 8);
  });
  it('gives no points for a saturation while the scale, or on scale 2 the oxygen, is not known', () => {
    const of = (parts: News2Parts) => scoreNews2(parts).lines.map((l) => l.parameter);
    expect(of({ saturation: 90 })).toEqual([]);
    expect(of({ saturation: 90, scale: 2 })).toEqual([]);
    expect(of({ saturation: 90, scale: 1 })).toEqual(['saturation']);
  });
  it.each([
    ['temperature', { temperature: 35.05 }, 3],
    ['temperature', { temperature: 36.05 }, 1],
    ['temperature', { temperature: 38.05 }, 1],
    ['temperature', { temperature: 39.04 }, 2],
    ['saturation', { saturation: 91.5 }, 3],
    ['saturation', { saturation: 95.5 }, 1],
    ['breathing', { breathing: 20.5 }, 2],
    ['pulse', { pulse: 50.5 }, 1],
  ] as const)(
    '%s between two printed rows takes the one that scores more: %j',
    (parameter, parts, points) => {
      expect(pointsFor(parameter, parts)).toBe(points);
    },
  );
  it('knows each answer on consciousness by its own words', () => {
    const words = CONSCIOUSNESS.map((c) => score({ consciousness: c }).lines[5]!.words);
    expect(new Set(words).size).toBe(5);
  });
});
