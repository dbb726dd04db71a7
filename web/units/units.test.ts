import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Units } from '@footboard/shared/capabilities/wards/values';
import { amountIn, fromShown, otherWeights, toShown } from './units.ts';

const si: Units = { weight: 'kg', length: 'm' };
const ours: Units = { weight: 'lb', length: 'ft' };

describe('units of the ward', () => {
  // International yard and pound agreement, 1959; NIST SP 811, appendix B.8: "pound (avoirdupois) 4.535 924 E-01 kg", "foot 3.048 E-01 m" (both exact; from memory).
  it('use the exact factors of the pound and the foot', () => {
    expect(fromShown(1000, 'weight', ours)).toBe(453.592);
    expect(fromShown(100, 'length', ours)).toBe(30.48);
    expect(toShown(45.359237, 'weight', ours)).toBe(100);
    expect(toShown(3.048, 'length', ours)).toBe(10);
  });
  it('leave kilograms and metres alone', () => {
    expect([toShown(70.25, 'weight', si), fromShown(70.25, 'weight', si)]).toEqual([70.25, 70.25]);
    expect(amountIn(2.5, 'length', si)).toBe('2.5 m');
  });
  it('give back what was typed', () => {
    const typed = fc.integer({ min: 0, max: 20_000 }).map((n) => n / 10);
    fc.assert(
      fc.property(typed, fc.constantFrom('weight' as const, 'length' as const), (value, quantity) => {
        expect(toShown(fromShown(value, quantity, ours), quantity, ours)).toBe(value);
      }),
    );
  });
  it('read in a sentence as a person would say them', () => {
    expect(amountIn(70, 'weight', ours)).toBe('154 lb');
    expect(amountIn(40, 'length', ours)).toBe('131 ft');
    expect(amountIn(2, 'length', ours)).toBe('6.6 ft');
    expect(amountIn(0, 'length', ours)).toBe('0 ft');
  });
  it('say a weight back in the other units', () => {
    expect(otherWeights(70, si)).toEqual(['154 lb', '11 st 0 lb']);
    expect(otherWeights(fromShown(154, 'weight', ours), ours)).toEqual(['69.9 kg', '11 st 0 lb']);
  });
});
