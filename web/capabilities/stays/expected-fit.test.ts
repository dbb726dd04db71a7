import { describe, expect, it } from 'vitest';
import { HOUR } from '@footboard/shared/kernel/times';
import { fitting, type Expected } from './expected-fit.ts';

const NOW = Date.UTC(2026, 10, 25, 12);
const one = (expected: string, hours: number, bed: string | null): Expected => ({
  expected,
  at: NOW + hours * HOUR,
  from: 'home',
  bed: bed as Expected['bed'],
  usual: null,
  bariatric: false,
  previous: null,
});
const ids = (all: readonly Expected[]) => all.map(({ expected }) => expected);

describe('who may be the person that arrives', () => {
  it('are those for this bed, then those without one, the nearest time first; late is as near as early', () => {
    const all = [one('no-bed', 0, null), one('far', 9, 'b1'), one('late', -2, 'b1'), one('soon', 3, 'b1')];
    expect(ids(fitting(all, 'b1', NOW))).toEqual(['late', 'soon', 'far', 'no-bed']);
  });
  it('are not those for another bed, nor those of another day', () => {
    expect(ids(fitting([one('elsewhere', 0, 'b2'), one('tomorrow', 20, 'b1')], 'b1', NOW))).toEqual([]);
  });
});
