import { describe, expect, it } from 'vitest';
import { gamma, randomOf } from '../../../kernel/random.ts';
import { daySpread, drawRates, meanRates, posteriorOf } from './rates.ts';

const flat = { perSlot: [0.1, 0.1, 0.1, 0.1], days: 10 };
const seen = (counts: number[], days: number) => ({ counts, days: counts.map(() => days) });

describe('how often people ask', () => {
  it('is the flat start while nothing is recorded', () => {
    expect(meanRates([posteriorOf(flat, null)])[0]).toEqual([1, 1, 1, 1].map(() => expect.closeTo(0.1 / 15)));
  });

  it('goes to what was recorded as days go by, as Gamma and Poisson have it', () => {
    // Gelman et al., Bayesian Data Analysis, Poisson model: Gamma(a + sum y, b + n).
    const even = posteriorOf(flat, seen([30, 30, 30, 30], 90));
    expect(even.shape[0]! / even.days[0]!).toBeCloseTo((0.1 * 10 + 30) / (10 + 90), 12);
    const [first, , , last] = meanRates([posteriorOf(flat, seen([0, 0, 0, 900], 900))])[0]!;
    expect(first!).toBeLessThan(0.01 / 15);
    expect(last!).toBeGreaterThan(0.7 / 15);
  });

  it('keeps what a quarter hour lends its neighbours in all', () => {
    const { shape } = posteriorOf({ perSlot: [0, 0, 0, 0, 0], days: 1 }, seen([0, 0, 8, 0, 0], 10));
    expect(shape).toEqual([0, 2, 4, 2, 0]);
  });

  it('draws rates around their mean, closer the more is known', () => {
    const spreadOf = (days: number) => {
      const posterior = posteriorOf(
        flat,
        seen(
          [0.1, 0.1, 0.1, 0.1].map((r) => r * days),
          days,
        ),
      );
      const drawn = Array.from(
        { length: 4_000 },
        (_, i) => drawRates([posterior], randomOf(1, i))[0]![0]! * 15,
      );
      const mean = drawn.reduce((a, b) => a + b, 0) / drawn.length;
      expect(mean).toBeCloseTo(0.1, 2);
      return Math.sqrt(drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / drawn.length);
    };
    expect(spreadOf(0)).toBeGreaterThan(3 * spreadOf(1_000));
  });

  it('draws Gamma numbers with the mean and variance of their shape', () => {
    for (const shape of [0.3, 1, 7]) {
      const drawn = Array.from({ length: 20_000 }, (_, i) => gamma(randomOf(2, i), shape));
      const mean = drawn.reduce((a, b) => a + b, 0) / drawn.length;
      const variance = drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / drawn.length;
      // Mean and variance of a Gamma of scale 1 are both its shape; 5 standard errors of the mean.
      expect(Math.abs(mean - shape)).toBeLessThan(5 * Math.sqrt(shape / 20_000));
      expect(variance / shape).toBeGreaterThan(0.9);
      expect(variance / shape).toBeLessThan(1.1);
    }
  });

  it('says that days differ only when they differ by more than chance', () => {
    const expected = Array.from({ length: 28 }, () => 60);
    expect(
      daySpread(
        expected.map((n, i) => n + (i % 2 === 0 ? 5 : -5)),
        expected,
      ),
    ).toBe(Infinity);
    // Between 30 and 90: variance 900, of which 60 is chance; shape 60^2 / 840.
    expect(
      daySpread(
        expected.map((n, i) => n + (i % 2 === 0 ? 30 : -30)),
        expected,
      ),
    ).toBeCloseTo(3600 / 840, 6);
    expect(daySpread([10, 100], [50, 50])).toBe(Infinity);
  });
});
