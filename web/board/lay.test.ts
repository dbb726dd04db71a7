import { describe, expect, it } from 'vitest';
import { LEAD, breakWords, layOut, type Block } from './lay.ts';

const block = (words: string, over: Partial<Block> = {}): Block => ({
  words,
  most: 4,
  lines: 3,
  weight: 700,
  ...over,
});
const tall = (laid: ReturnType<typeof layOut>) =>
  laid.reduce((sum, one) => sum + one.lines.length * one.size * LEAD, 0);

describe('breaking words over lines', () => {
  it('makes the longest line as short as it can be', () => {
    expect(breakWords('powered standing aid', 2, 700)).toEqual(['powered', 'standing aid']);
  });
  it('keeps one thing of two on a line of its own', () => {
    expect(breakWords('powered standing aid +\u00A0frame', 2, 700)).toEqual([
      'powered standing aid',
      '+\u00A0frame',
    ]);
  });
  it('has no answer for more lines than words', () => expect(breakWords('frame', 2, 700)).toBeNull());
});

describe('setting blocks of words into a tile', () => {
  it('gives short words their largest size', () => {
    expect(layOut([block('frame')], 18, 9)).toEqual([{ lines: ['frame'], size: 4 }]);
  });
  it('breaks long words rather than draw them small', () => {
    const [people, aid] = layOut([block('2 people', { lines: 1 }), block('powered standing aid')], 18, 8.5);
    expect(aid!.lines).toHaveLength(2);
    expect(aid!.size).toBeGreaterThan(2);
    expect(people!.size).toBeGreaterThanOrEqual(aid!.size);
  });
  it('never exceeds the height, and lets the largest give way first', () => {
    const laid = layOut(
      [block('2 people', { lines: 1 }), block('frame'), block('HOLD REVIEW DUE: no walking')],
      18,
      6,
    );
    expect(tall(laid)).toBeLessThanOrEqual(6 + 1e-9);
    expect(Math.min(...laid.map((one) => one.size))).toBeGreaterThan(1.2);
  });
  it('draws no block above the one it must stay under', () => {
    const laid = layOut([block('frame', { notAbove: 1 }), block('HOLD: no walking', { most: 2 })], 18, 20);
    expect(laid[0]!.size).toBeLessThanOrEqual(laid[1]!.size);
  });
});
