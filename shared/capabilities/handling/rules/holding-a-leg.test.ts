/**
 * A leg is held as well as lifted: the more of the two decides. About 22 lb for a limb held up with two
 * hands (peri-operative nursing ergonomic guidance, 2022), 10 kg here; the shares are those of the segments.
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { carersFor, legLoad } from './manual-load.ts';
import { heaviestShare } from './tables/segments.ts';

const limits = DEFAULT_RULES.handling;
const LEG = heaviestShare('leg').share;

describe('given a leg that two may lift', () => {
  it.each([96, 120, 145, 152])(
    'when holding it takes three or more, at %i kg, then it is a limb sling',
    (kg) => {
      expect(carersFor(kg, LEG, limits.liftLimitKgPerCarer.value)).toBe(2);
      expect(carersFor(kg, LEG, limits.limbHoldKgPerCarer.value)).toBeGreaterThan(2);
      const load = legLoad(kg, limits);
      expect(load?.words).toBe('Leg: a limb sling; too heavy for two people, or weight unknown');
      expect(load?.why).toContain('one carer may hold up 10 kg');
    },
  );
  it('when two may hold it as well, at 90 kg, then two people will do', () => {
    expect(legLoad(90, limits)?.words).toBe('Leg: two people or a limb sling');
    expect(legLoad(90, limits)?.why).toContain('one carer may lift');
  });
});
