import { describe, expect, it } from 'vitest';
import { columnsFor, fitSize } from './fit.ts';

describe('the wall’s grid', () => {
  it.each([
    [24, 1920, 960, 6],
    [30, 1920, 960, 6],
    [12, 1920, 960, 4],
    [1, 1920, 960, 1],
  ])('%i beds on %i by %i stand in %i columns', (count, width, height, columns) =>
    expect(columnsFor(count, width, height)).toBe(columns),
  );
});

describe('fitting words', () => {
  it('leaves short words at the largest size and makes long ones smaller', () => {
    expect(fitSize('A1', 18, 4)).toBe(4);
    expect(fitSize('lateral transfer aid', 18, 4)).toBeLessThan(2);
  });
});
