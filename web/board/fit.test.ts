import { describe, expect, it } from 'vitest';
import { fitWords } from './fit.ts';
import { CAP } from './legible.ts';

/** Here nothing can measure: widths are the rough shares. The real font is measured in the browser test. */
describe('fitting words into a place', () => {
  it('leaves short words at full width and the height asked for', () => {
    expect(fitWords('A1', 300, 40)).toEqual({ size: 40 / CAP, stretch: 100 });
  });
  it('makes words narrower before it makes them smaller', () => {
    const { size, stretch } = fitWords('standing', 220, 40);
    expect(size).toBe(40 / CAP);
    expect(stretch).toBeGreaterThanOrEqual(62.5);
    expect(stretch).toBeLessThan(100);
  });
  it('makes words that are as narrow as they go smaller, never wider than their place', () => {
    const { size, stretch } = fitWords('lateral transfer aid', 100, 40);
    expect(stretch).toBe(62.5);
    expect(size).toBeLessThan(40 / CAP);
  });
});
