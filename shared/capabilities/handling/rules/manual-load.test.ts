import { describe, expect, it } from 'vitest';
import { carersFor, legWords } from './manual-load.ts';
import { POUND } from './tables/table.ts';

// Waters TR, Am J Nurs 2007;107(8):53-58: 35 lb for each carer.
const lb = (pounds: number) => pounds * POUND;
const limit = lb(35);

describe('manual load', () => {
  it('one leg of a person of 250 lb at 16 % is 40 lb: too heavy for one (Waters 2007 as reported)', () => {
    expect(carersFor(lb(250), 0.16, limit)).toBe(2);
  });
  it('180 lb able to take half the own weight: two carers fail at 45 lb each, three pass at 30 (Waters 2007 as reported)', () => {
    expect(carersFor(lb(180), 0.5, limit)).toBe(3);
  });
  it('140 lb at a quarter is 35 lb, the limit itself: one; a little more: two (derived)', () => {
    expect(carersFor(lb(140), 0.25, limit)).toBe(1);
    expect(carersFor(lb(140.1), 0.25, limit)).toBe(2);
  });
  it('says so in words, with the heaviest published leg: from 167.6 lb up (derived from 20.88 %), or weight unknown', () => {
    expect(legWords(lb(167), limit)).toBeNull();
    expect(legWords(lb(168), limit)).toContain('two people');
    expect(legWords(null, limit)).toContain('two people');
  });
});
