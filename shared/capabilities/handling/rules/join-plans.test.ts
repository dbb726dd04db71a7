/** Joining two plans for one task: design, rule 1. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Because } from '../../board/because.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import { side } from '../../assessments/values.ts';
import { aidClass, people, task } from '../values.ts';
import { asksMore, joinPlans, joinReasons, samePlan } from './join-plans.ts';

const plan = (over: Partial<TaskPlan> = {}): TaskPlan => ({
  task: 'bed-chair',
  hold: false,
  people: 'one',
  aid: 'none',
  with: [],
  towards: 'left',
  cautions: [],
  because: [{ rule: 'r', facts: [], words: 'w' }],
  ...over,
});
const WORDS = ['a', 'b', 'c'];
const reason = fc
  .record({ rule: fc.constantFrom(...WORDS), words: fc.constantFrom(...WORDS) })
  .map((r): Because => ({ ...r, facts: [] }));
const distinct = <T>(one: fc.Arbitrary<T>) =>
  fc.uniqueArray(one, { maxLength: 3, selector: (x) => JSON.stringify(x) });
const planOf = (which: TaskPlan['task']): fc.Arbitrary<TaskPlan> =>
  fc.record({
    task: fc.constant(which),
    hold: fc.boolean(),
    people: fc.constantFrom(...people.options),
    aid: fc.constantFrom(...aidClass.options),
    with: distinct(fc.constantFrom(...WORDS)),
    towards: fc.option(fc.constantFrom(...side.options)),
    cautions: distinct(fc.constantFrom(...WORDS)),
    because: distinct(reason),
  });
const three = fc.constantFrom(...task.options).chain((t) => fc.tuple(planOf(t), planOf(t), planOf(t)));
/** Order of words is that of the plans joined; what they say is not. */
const said = (p: TaskPlan) => ({
  ...p,
  with: p.with.toSorted(),
  cautions: p.cautions.toSorted(),
  because: p.because.map((b) => JSON.stringify(b)).toSorted(),
});
const runs = { numRuns: 300 };

describe('the join of two plans', () => {
  it('is idempotent, and commutative in what it asks for and says', () => {
    fc.assert(
      fc.property(three, ([a, b]) => {
        expect(joinPlans(a, a)).toBe(a);
        expect(joinPlans(a, structuredClone(a))).toBe(a);
        const [ab, ba] = [joinPlans(a, b), joinPlans(b, a)];
        const words = ({ cautions, ...rest }: TaskPlan) => ({
          ...said({ ...rest, cautions: cautions.filter((c) => !c.includes('cannot be combined')) }),
        });
        expect(words(ab)).toEqual(words(ba));
        expect(ab.cautions).toHaveLength(ba.cautions.length);
      }),
      runs,
    );
  });
  it('asks at least as much as either', () => {
    fc.assert(
      fc.property(three, ([a, b]) => {
        const both = joinPlans(a, b);
        for (const one of [a, b]) {
          expect(both.hold || !one.hold).toBe(true);
          expect(asksMore(one, { ...both, aid: one.aid })).toBe(false);
          // Its aid covers theirs, or it is a HOLD that says why.
          expect(
            !asksMore(one, both) || (both.hold && both.cautions.join().includes('cannot be combined')),
          ).toBe(true);
          for (const word of one.cautions) expect(both.cautions).toContain(word);
          for (const why of one.because) expect(both.because).toContainEqual(why);
          for (const kit of one.with) expect(both.with).toContain(kit);
        }
      }),
      runs,
    );
  });
  it('is associative in people, aid and side, and never drops a hold by the order of joining', () => {
    fc.assert(
      fc.property(three, ([a, b, c]) => {
        const left = joinPlans(joinPlans(a, b), c);
        const right = joinPlans(a, joinPlans(b, c));
        expect([left.people, left.aid]).toEqual([right.people, right.aid]);
        for (const one of [left, right]) {
          expect(one.hold || !(a.hold || b.hold || c.hold)).toBe(true);
          // Only plans that already disagreed with the joined aid can make the difference.
          expect([a, b, c].every((p) => one.hold || !asksMore(p, one))).toBe(true);
        }
      }),
      runs,
    );
  });
});

describe('two plans for the same task', () => {
  it('join to the greatest of hold, people and aid, whichever comes first', () => {
    const few = plan({ people: 'two', aid: 'belt', cautions: ['a'], with: ['x'] });
    const many = plan({ hold: true, aid: 'sling-lift', cautions: ['a', 'b'], towards: null });
    for (const both of [joinPlans(few, many), joinPlans(many, few)]) {
      expect(both).toMatchObject({
        hold: true,
        people: 'two',
        aid: 'sling-lift',
        with: ['x'],
        towards: null,
      });
      expect(both.cautions.toSorted()).toEqual(['a', 'b']);
      expect(both.because).toHaveLength(1);
      expect(asksMore(few, both) || asksMore(many, both)).toBe(false);
    }
  });
  it('are a HOLD, ask, where their aids cannot be combined', () => {
    const both = joinPlans(plan({ aid: 'standing-aid' }), plan({ aid: 'seated-transfer-aid' }));
    expect(both).toMatchObject({ hold: true, aid: 'standing-aid' });
    expect(both.cautions).toEqual(['Aids that cannot be combined (standing aid, seated transfer aid): ask']);
  });
  it('go on where one aid covers the other, and keep the side only where they agree', () => {
    const both = joinPlans(plan({ aid: 'belt', towards: 'left' }), plan({ aid: 'sling-lift' }));
    expect(both).toMatchObject({ hold: false, aid: 'sling-lift', towards: 'left', cautions: [] });
    expect(joinPlans(plan(), plan({ towards: 'right' })).towards).toBeNull();
  });
  it.each<[Partial<TaskPlan>, Partial<TaskPlan>, boolean]>([
    [{}, {}, false],
    [{ hold: true }, {}, true],
    [{ hold: true }, { hold: true }, false],
    [{}, { hold: true }, false],
    [{ people: 'two' }, {}, true],
    [{}, { people: 'two' }, false],
    [{ aid: 'belt' }, { aid: 'standing-aid' }, false],
    [{ aid: 'standing-aid' }, { aid: 'belt' }, true],
    [{ aid: 'standing-aid' }, { aid: 'seated-transfer-aid' }, true],
  ])('%o asks more than %o: %s', (a, b, more) => {
    expect(asksMore(plan(a), plan(b))).toBe(more);
  });
  it('are the same by what they say, not by where they were made', () => {
    expect(samePlan(plan(), plan())).toBe(true);
    expect(samePlan(plan(), plan({ cautions: ['a'] }))).toBe(false);
  });
  it('give each reason once, those of the first first', () => {
    const why = (words: string): Because => ({ rule: 'r', facts: [], words });
    expect(joinReasons([why('a'), why('b')], [why('b'), why('c')])).toEqual([why('a'), why('b'), why('c')]);
  });
});
