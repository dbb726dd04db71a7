import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Fact } from '../../corrections/facts.ts';
import { fact, hours } from './assessment.testkit.ts';
import { earlyWarningOf, earlyWarningRises, impossibleScore } from './early-warning.ts';

const on = structuredClone(DEFAULT_RULES);
on.earlyWarning.on.value = true;
const scored = (
  score: number,
  at: number,
  { anyThree = false, role = 'nurse' as Role, id = `s${at}` } = {},
): Fact => fact('early-warning-recorded', { score, anyThree, scale: 1 as const }, { at, role, id });

const noted: number[] = [];
const last = (facts: readonly Fact[], at: number) => {
  noted.length = 0;
  return earlyWarningOf(facts, hours(at), DEFAULT_RULES, (when) => noted.push(when));
};

describe('the early-warning score that counts', () => {
  it('is the last one, with its time and its entry', () => {
    expect(last([scored(2, 0), scored(4, 3, { anyThree: true })], 5)).toEqual({
      score: 4,
      anyThree: true,
      at: hours(3),
      event: 's3',
    });
    expect(last([scored(4, 0), scored(2, 3)], 5)?.score).toBe(2);
    expect(last([], 5)).toBeNull();
  });
  it("says nothing of now once it is as old as the ward's limit, and the board is told when", () => {
    const facts = [scored(2, 0)];
    expect(last(facts, 12 - 1 / 3600)?.score).toBe(2);
    expect(noted).toEqual([hours(12)]);
    expect(last(facts, 12)).toBeNull();
  });
  it('by someone who may not free counts only where it is worse', () => {
    expect(last([scored(4, 0), scored(2, 1, { role: 'aide' })], 2)?.score).toBe(4);
    expect(last([scored(4, 0), scored(4, 1, { role: 'aide' })], 2)?.event).toBe('s0');
    expect(last([scored(4, 0), scored(5, 1, { role: 'aide' })], 2)?.score).toBe(5);
    expect(last([scored(4, 0), scored(4, 1, { role: 'aide', anyThree: true })], 2)?.event).toBe('s1');
    expect(last([scored(4, 0), scored(3, 1, { role: 'aide', anyThree: true })], 2)?.event).toBe('s0');
    expect(last([scored(5, 0, { role: 'aide' }), scored(2, 1)], 2)?.score).toBe(2);
    expect(last([scored(2, 1, { role: 'aide' })], 2)?.score).toBe(2);
  });
  it('of two of one instant is the worse', () => {
    const facts = [scored(6, 1, { id: 'a' }), scored(2, 1, { id: 'b' })];
    expect(last(facts, 2)?.score).toBe(6);
    expect(last([scored(2, 1, { id: 'a' }), scored(6, 1, { id: 'b' })], 2)?.score).toBe(6);
  });
});

describe('an early-warning score as a trigger (Royal College of Physicians 2017: 5 in all, or one parameter at 3; a rise of 2: common practice)', () => {
  const rises = (...facts: Fact[]) => [...earlyWarningRises(facts, on)];

  it('is none on a ward that has not turned it on', () => {
    expect(DEFAULT_RULES.earlyWarning.on.value).toBe(false);
    expect([...earlyWarningRises([scored(20, 0, { anyThree: true })], DEFAULT_RULES)]).toEqual([]);
  });
  it('from the total on', () => {
    expect(rises(scored(4, 0))).toEqual([]);
    expect(rises(scored(5, 0))).toEqual([['s0', 'Early-warning score 5, 5 or more']]);
  });
  it('with one parameter at 3, where the ward asks for that', () => {
    const one = scored(3, 0, { anyThree: true });
    expect(rises(one)).toEqual([['s0', 'Early-warning score 3, one parameter at 3']]);
    const without = structuredClone(on);
    without.earlyWarning.anyThree.value = false;
    expect([...earlyWarningRises([one], without)]).toEqual([]);
  });
  it('risen by 2 over the score before', () => {
    expect(rises(scored(1, 0), scored(2, 1))).toEqual([]);
    expect(rises(scored(1, 0), scored(3, 1))).toEqual([['s1', 'Early-warning score risen from 1 to 3']]);
    expect(rises(scored(3, 0), scored(1, 1), scored(3, 2))).toEqual([
      ['s2', 'Early-warning score risen from 1 to 3'],
    ]);
    expect(rises(scored(3, 0))).toEqual([]);
  });
  it('is measured against the last score of a qualified author, or a lower one since', () => {
    const aide = { role: 'aide' } as const;
    expect(rises(scored(1, 0), scored(2, 1, aide), scored(3, 2))).toHaveLength(1);
    expect(rises(scored(2, 0), scored(1, 1, aide), scored(3, 2))).toHaveLength(1);
    expect(rises(scored(2, 0), scored(1, 1, aide), scored(2, 2, aide), scored(3, 3))).toHaveLength(1);
    expect(rises(scored(2, 0), scored(1, 1, aide), scored(2, 2), scored(3, 3))).toEqual([]);
    expect(rises(scored(2, 0, aide), scored(3, 1))).toEqual([]);
  });
  it('by someone who may not free is only ever one more', () => {
    const entry = fc.record({
      score: fc.integer({ min: 0, max: 6 }),
      anyThree: fc.boolean(),
      role: fc.constantFrom<Role>('aide', 'nurse'),
    });
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 8 }), fc.nat(8), fc.nat(6), (entries, place, score) => {
        const facts = entries.map((e, i) => scored(e.score, i, { ...e, id: `s${i}` }));
        const at = Math.min(place, facts.length);
        const more = [...facts];
        more.splice(at, 0, scored(score, at - 0.5, { role: 'aide', id: 'added' }));
        const before = [...earlyWarningRises(facts, on).keys()];
        const after = new Set(earlyWarningRises(more, on).keys());
        expect(before.filter((id) => !after.has(id))).toEqual([]);
        const shown = (all: readonly Fact[]) => last(all, 9)?.score ?? -1;
        expect(shown(more)).toBeGreaterThanOrEqual(shown(facts));
      }),
      { numRuns: 200 },
    );
  });
});

describe('a score that cannot be (Royal College of Physicians 2017, chart 1)', () => {
  it.each([
    [0, false, true],
    [2, true, false],
    [3, true, true],
    [12, false, true],
    [13, false, false],
    [13, true, true],
    [20, true, true],
  ])('%d with a parameter at 3 %s: can be %s', (score, anyThree, can) => {
    expect(impossibleScore({ score, anyThree, scale: 1 }) === null).toBe(can);
  });
  it('is told why', () => {
    expect(impossibleScore({ score: 2, anyThree: true, scale: 1 })).toBe(
      'one parameter at 3 makes a score of at least 3, not 2',
    );
    expect(impossibleScore({ score: 15, anyThree: false, scale: 2 })).toBe(
      'a score of 15 cannot be without one parameter at 3: without one it reaches 12 of 20 at most',
    );
  });
});
