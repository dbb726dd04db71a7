import { describe, expect, it } from 'vitest';
import { capitalMm, keepsPromise, panelWidthMm, pixelsPerMm, planWall, wouldFit } from './legible.ts';

const PANEL = { inches: 55, metres: 5 };

describe('how high a capital must be', () => {
  // h = 2 d tan(a / 2); NUREG-0700 rev. 2, 1.3.1-4, states 6.283 d a / 21600. The millimetres are derived from it.
  it.each([
    [1, 16, 4.7],
    [1, 20, 5.8],
    [3, 16, 14.0],
    [5, 16, 23.3],
    [5, 20, 29.1],
    [8, 20, 46.5],
    [10, 22, 64.0],
  ])('WALL-4 at %i m under %i minutes of arc is %f mm', (metres, arcmin, mm) => {
    expect(capitalMm(metres, arcmin)).toBeCloseTo(mm, 1);
    expect(capitalMm(metres, arcmin)).toBeCloseTo((6.283 * metres * 1_000 * arcmin) / 21_600, 1);
  });

  // A 55-inch panel of 16 to 9 is 685 mm high (derived): 29.1 mm are 45.9 of 1080 pixels.
  it('WALL-4 on a 55-inch panel of 1080 lines, 20 minutes at 5 m are 45.9 pixels; twice that on 2160', () => {
    expect((panelWidthMm(55) * 9) / 16).toBeCloseTo(685, 0);
    expect(capitalMm(5, 20) * pixelsPerMm(55, 1920, 1080)).toBeCloseTo(45.9, 1);
    expect(capitalMm(5, 20) * pixelsPerMm(55, 3840, 2160)).toBeCloseTo(91.7, 1);
  });
});

describe('the grid of a wall', () => {
  const sizes = [
    [1920, 1080],
    [3840, 2160],
  ] as const;
  const counts = Array.from({ length: 36 }, (_, i) => i + 1);

  it.each(sizes)(
    'WALL-4 keeps the promise for 1 to 36 beds on 55 inches at 5 m, %i by %i',
    (width, height) => {
      const short = counts.filter((beds) => !keepsPromise(planWall(beds, width, height, PANEL)));
      expect(short).toEqual([]);
    },
  );

  it.each(counts.filter((n) => n % 5 === 1 || n >= 30))(
    'puts %i beds on the screen without scrolling, each in a place of its own',
    (beds) => {
      const { columns, rows, width, height, head, foot } = planWall(beds, 1920, 1080, PANEL);
      expect(columns * rows).toBeGreaterThanOrEqual(beds);
      expect(columns * width).toBeLessThanOrEqual(1920);
      expect(rows * height + head + foot).toBeLessThanOrEqual(1080);
    },
  );

  it('writes whole words of the plan before it writes larger than promised', () => {
    expect(planWall(30, 1920, 1080, PANEL)).toMatchObject({ columns: 6, rows: 5, lines: 1 });
    expect(planWall(8, 1920, 1080, PANEL).lines).toBeGreaterThanOrEqual(2);
  });

  it('sets rows further apart only where whole words have their room, and no further than the tile is high', () => {
    const leading = (beds: number) => planWall(beds, 1920, 1080, PANEL).leading;
    expect([24, 30, 36].map(leading)).toEqual([1, 1, 1]);
    expect([2, 4].map(leading)).toEqual([expect.closeTo(1.3), expect.closeTo(1.3)]);
    const { height, far, near, lines, leading: apart } = planWall(2, 1920, 1080, PANEL);
    expect(lines).toBeGreaterThanOrEqual(2);
    const rows = Math.max(1.25 * far, 2.56 * near) + 1.25 * far + (2 + lines) * 1.28 * near;
    expect(rows * apart).toBeLessThanOrEqual(height);
  });

  it.each([
    [36, 43, 5],
    [24, 32, 5],
    [48, 55, 5],
    [36, 55, 8],
  ])('WALL-5 says what would fit %i beds on %i inches at %i m, and it fits', (beds, inches, metres) => {
    const panel = { inches, metres };
    const plan = planWall(beds, 1920, 1080, panel);
    expect(keepsPromise(plan)).toBe(false);
    const fits = wouldFit(plan, panel);
    expect(keepsPromise(planWall(beds, 1920, 1080, { inches: fits.inches, metres }))).toBe(true);
    // Nearer, the far words fit; what is promised at 3 m depends on the panel alone.
    expect(fits.metres).toBeLessThan(metres);
  });
});
