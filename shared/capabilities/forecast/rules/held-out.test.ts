import { describe, expect, it } from 'vitest';
import { heldOut } from './held-out.testkit.ts';
import { brier, calibrationError, reliability, skill } from './scoring.testkit.ts';
import { someWard } from './synthetic.testkit.ts';

describe('the forecast on later weeks of wards whose truth it does not assume', () => {
  // Fixed seeds; the same over more wards and days, with every miss named: npm run bench forecast, docs/forecast.md.
  const wards = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => heldOut(someWard(seed), { days: 14, runs: 400 }));
  const all = (of: 'told' | 'flat' | 'everyDay') => wards.flatMap((ward) => ward[of]);

  it('tells more than the flat start does, and more than one chance for every hour', () => {
    expect(all('told').length).toBeGreaterThan(5_000);
    expect(skill(all('told'), all('flat'))).toBeGreaterThan(0.02);
    expect(skill(all('told'), all('everyDay'))).toBeGreaterThan(0.1);
  });

  it('means what it says: told and happened are less than 0.05 apart on the mean', () => {
    expect(calibrationError(all('told'))).toBeLessThan(0.05);
    // Not by telling everybody the same: chances below a fifth and above four fifths are both common.
    const bins = reliability(all('told'));
    expect(bins[0]!.n + bins[1]!.n).toBeGreaterThan(500);
    expect(bins[8]!.n + bins[9]!.n).toBeGreaterThan(500);
  });
});

describe('how chances are scored', () => {
  const told = (chance: number, happened: boolean) => ({ chance, happened });

  it('gives the values that can be worked out by hand', () => {
    // Brier 1950: (0.1^2 + 0.3^2 + 0.6^2) / 3.
    expect(brier([told(0.9, true), told(0.3, false), told(0.4, true)])).toBeCloseTo(0.46 / 3, 12);
    expect(skill([told(1, true), told(0, false)], [told(0.5, true), told(0.5, false)])).toBe(1);
    expect(skill([told(0.5, true)], [told(0.5, true)])).toBe(0);
  });

  it('finds chances that are told too high', () => {
    const high = Array.from({ length: 100 }, (_, i) => told(0.75, i < 50));
    expect(calibrationError(high)).toBeCloseTo(0.25, 12);
    expect(reliability(high)[7]).toMatchObject({ n: 100, told: 0.75, happened: 0.5 });
  });
});
