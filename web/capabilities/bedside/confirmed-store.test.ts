import { describe, expect, it } from 'vitest';
import { CONFIRMED_FOR_MS, holds, type Confirmed } from './confirmed-store.ts';

const at = Date.UTC(2026, 9, 27, 9, 0);
const one: Confirmed = { stay: 's1', staff: 'n1', by: 'wristband', at };

describe('a confirmed person', () => {
  it('stays confirmed for a few minutes for whoever confirmed them', () => {
    expect(holds(one, 's1', 'n1', at)).toBe(true);
    expect(holds(one, 's1', 'n1', at + CONFIRMED_FOR_MS - 1)).toBe(true);
    expect(holds(one, 's1', 'n1', at + CONFIRMED_FOR_MS)).toBe(false);
  });

  it('is not whoever is in the bed next, nor confirmed for another carer, nor by a clock put back', () => {
    expect(holds(one, 's2', 'n1', at)).toBe(false);
    expect(holds(one, 's1', 'n2', at)).toBe(false);
    expect(holds(one, 's1', null, at)).toBe(false);
    expect(holds(one, 's1', 'n1', at - 1)).toBe(false);
    expect(holds(null, 's1', 'n1', at)).toBe(false);
  });
});
