import { describe, expect, it } from 'vitest';
import { loadIn } from './load-words.ts';

describe('a safe working load in words', () => {
  // NIST SP 811, appendix B.8: one pound (avoirdupois) is 0.453 592 37 kg (exact; from memory).
  it.each([
    [200, '440 lb (200 kg)'],
    [226.8, '500 lb (226.8 kg)'],
    [45.359237, '100 lb (45.359237 kg)'],
  ])('cuts %d kg down to the pound, never up', (kg, words) => {
    expect(loadIn(kg, { weight: 'lb' })).toBe(words);
  });
  it('stays in kilograms where the ward weighs so', () => {
    expect(loadIn(200, { weight: 'kg' })).toBe('200 kg');
  });
});
