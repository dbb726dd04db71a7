/** Since when something has been so without a break. Ours, practice. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../../../kernel/runs.testkit.ts';
import { heldSince, type HeldAt } from './held-since.ts';

/** It flips at each of these instants, beginning with "does not hold". */
const flipping =
  (flips: readonly number[]) =>
  (t: number): HeldAt => ({
    holds: flips.filter((flip) => flip <= t).length % 2 === 1,
    next: flips.find((flip) => flip > t) ?? null,
  });

describe('since when something has held', () => {
  it('goes back over entries that did not change it', () => {
    expect(heldSince(100, [10, 30, 50, 70], flipping([30]))).toBe(30);
  });
  it('begins by time alone between two entries', () => {
    expect(heldSince(100, [10, 70], flipping([40]))).toBe(40);
    expect(heldSince(100, [10, 70], flipping([80]))).toBe(80);
  });
  it('begins anew after a break', () => {
    expect(heldSince(100, [10, 50, 60], flipping([10, 50, 60]))).toBe(60);
  });
  it('is not told of what does not hold now, nor of what is still to come', () => {
    expect(heldSince(100, [10, 50], flipping([10, 50]))).toBeNull();
    expect(heldSince(100, [10, 200], flipping([150]))).toBeNull();
  });
  it('with nothing recorded, holds from now at the earliest', () => {
    expect(heldSince(100, [], () => ({ holds: true, next: null }))).toBe(100);
  });
  it('begins with what is recorded this very minute', () => {
    // What was recorded at 50 says nothing of what comes at 100.
    expect(heldSince(100, [50, 100], (t) => ({ holds: t >= 100, next: null }))).toBe(100);
  });
  it('goes back over an entry of this very minute, though it ends in the next', () => {
    expect(heldSince(100, [50, 100], flipping([50, 101]))).toBe(50);
  });
  it('ends its search where the answer names no later time', () => {
    let asked = 0;
    const stuck = (t: number): HeldAt => {
      if (++asked > 9) throw new Error('asks for ever');
      return { holds: true, next: t };
    };
    expect(heldSince(100, [40], stuck)).toBe(40);
  });

  it('agrees with looking at every instant one by one', () => {
    const instant = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(
        fc.uniqueArray(instant, { maxLength: 8 }),
        fc.uniqueArray(instant, { maxLength: 8 }),
        (flips, entries) => {
          const sorted = flips.toSorted((a, b) => a - b);
          const at = flipping(sorted);
          const found = heldSince(50, [0, ...entries], at);
          let since: number | null = null;
          for (let t = 50; t >= 0 && at(t).holds; t--) since = t;
          expect(found).toBe(since);
        },
      ),
      runs(500, 'cases'),
    );
  });
});
