/** How many pieces the ward’s own ratios ask for. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { ratiosOf } from './ratios.ts';

describe('what the ward’s ratios ask for', () => {
  it('rounds up, counts a person once, and asks nothing for nobody', () => {
    const lifted = Array.from({ length: 9 }, () => ['lift-and-sling', 'lateral-aid'] as const);
    const all = ratiosOf(['floor-lift', 'sling', 'sling', 'walking-aid'], lifted, DEFAULT_RULES.aids);
    // One lift for 8 people and two slings for each: common practice, no source.
    expect(all.map(({ of, have, people, wanted }) => [of, have, people, wanted])).toEqual([
      ['lift', 1, 9, 2],
      ['standing-aid', 0, 0, 0],
      ['sling', 2, 9, 18],
    ]);
    expect(ratiosOf([], [], DEFAULT_RULES.aids).map(({ wanted }) => wanted)).toEqual([0, 0, 0]);
  });

  it('counts lifts on the floor and on a track together, and standing aids for those who stand with one', () => {
    const needs = [
      ...Array.from({ length: 9 }, () => ['standing-aid'] as const),
      ['lift-and-sling'] as const,
    ];
    const kinds = ['floor-lift', 'ceiling-lift', 'ceiling-lift', 'standing-aid', 'standing-aid'] as const;
    const all = ratiosOf([...kinds, 'sling'], needs, DEFAULT_RULES.aids);
    // One standing aid for 8 people: common practice, no source.
    expect(all.map(({ of, have, people, wanted }) => [of, have, people, wanted])).toEqual([
      ['lift', 3, 1, 1],
      ['standing-aid', 2, 9, 2],
      ['sling', 1, 1, 2],
    ]);
  });

  it('asks for no sling more where a ward counts them in tenths: 25 people at 2.2 each need 55', () => {
    const { aids } = DEFAULT_RULES;
    const tenths = { ...aids, slingsPerPerson: { ...aids.slingsPerPerson, value: 2.2 } };
    const wanted = (people: number) => {
      const needs = Array.from({ length: people }, () => ['lift-and-sling'] as const);
      return ratiosOf([], needs, tenths).find(({ of }) => of === 'sling')!.wanted;
    };
    expect([25, 26].map(wanted)).toEqual([55, 58]);
  });
});
