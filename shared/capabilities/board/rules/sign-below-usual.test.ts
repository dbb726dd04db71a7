/** Days below the usual way of moving: which day something counts on, and of whom it is told. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Told } from './history.testkit.ts';
import { did, sign, signWithoutArrival, usual } from './signs.testkit.ts';

/** Whole ward days begin 14, 38, 62, 86 and 110 h after the arrival. */
const below = (h: number, ...told: readonly Told[]) => sign('below-baseline', h, told);
const three = [did(20, 'stand'), did(44, 'edge-sit'), did(68, 'chair')];

describe('a ward day', () => {
  it('holds what was done at its very first instant', () => {
    const told = below(86, usual('walks'), did(14, 'stand'), did(38, 'edge-sit'), did(62, 'chair'));
    expect(told?.because[0]!.facts).toEqual(['usual', 's-14', 's-38', 's-62']);
  });
  it('that nothing was recorded on stays a gap, whatever less was done since', () => {
    const told = below(115, usual('walks'), ...three, did(112, 'stand'));
    expect(told?.words).toMatch(/ on 3 ward days in a row \(1 day not recorded, not counted\); /);
  });
});

describe('is told', () => {
  it.each([
    ['frame', 'chair', 'walks with a frame'],
    ['wheelchair', 'stand', 'wheelchair'],
  ])('against the usual way by its words: %s', (moves, less, words) => {
    const days = [20, 44, 68].map((at) => did(at, less));
    expect(below(86, usual(moves), ...days)?.words).toContain(`(${words}, transfers alone)`);
  });
  it("under the staged check alone: a clinician's plan has its own measure", () => {
    const fenced: Told = {
      type: 'scope-set',
      at: 80,
      payload: { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } },
    };
    expect(below(86, usual('walks'), ...three)).toBeDefined();
    expect(below(86, usual('walks'), ...three, fenced)).toBeUndefined();
  });
  it('of nobody whose arrival was not entered: which days were whole is not known', () => {
    expect(signWithoutArrival('below-baseline', 86, [usual('walks'), ...three])).toBeUndefined();
  });
});
