/** Help as a lattice: design, rule 1. Laws over any help that joins can produce. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aidClass, people, task } from '../values.ts';
import type { AidClass, Task } from '../values.ts';
import type { Help } from './help.ts';
import {
  AID_CHAINS,
  aidCovers,
  atLeast,
  help,
  joinHelp,
  morePeople,
  mustAsk,
  NO_HELP,
  noLess,
  topAids,
  withMore,
} from './help.ts';

const oneHelp: fc.Arbitrary<Help> = fc
  .record({
    hold: fc.boolean(),
    people: fc.constantFrom(...people.options),
    aid: fc.constantFrom(...aidClass.options),
  })
  .map((h) => help(h.people, h.aid, h.hold));
const anyHelp = fc.array(oneHelp, { maxLength: 4 }).map((all) => all.reduce(joinHelp, NO_HELP));
const runs = { numRuns: 300 };
const implies = (a: boolean, b: boolean): boolean => !a || b;
/** The order of the lattice itself: `b` asks for all that `a` asks for. */
const below = (a: Help, b: Help): boolean => JSON.stringify(joinHelp(a, b)) === JSON.stringify(b);

describe('the join of helps', () => {
  it('is associative, commutative and idempotent, and no help is its unit', () => {
    fc.assert(
      fc.property(anyHelp, anyHelp, anyHelp, (a, b, c) => {
        expect(joinHelp(a, joinHelp(b, c))).toEqual(joinHelp(joinHelp(a, b), c));
        expect(joinHelp(a, b)).toEqual(joinHelp(b, a));
        expect(joinHelp(a, a)).toEqual(a);
        expect(joinHelp(a, NO_HELP)).toEqual(a);
        expect(joinHelp(NO_HELP, a)).toEqual(a);
      }),
      runs,
    );
  });
  it('is the least that is above both', () => {
    fc.assert(
      fc.property(anyHelp, anyHelp, anyHelp, (a, b, more) => {
        const both = joinHelp(a, b);
        expect(below(a, both) && below(b, both)).toBe(true);
        const above = joinHelp(both, more);
        expect(below(both, above)).toBe(true);
        expect(implies(below(a, more) && below(b, more), below(both, more))).toBe(true);
      }),
      runs,
    );
  });
  it('is monotone: whoever asks for more gets no less of the join', () => {
    fc.assert(
      fc.property(anyHelp, anyHelp, anyHelp, (a, more, c) => {
        expect(below(joinHelp(a, c), joinHelp(joinHelp(a, more), c))).toBe(true);
      }),
      runs,
    );
  });
  it('takes the greatest of hold and people, and every aid, in the order of the list of aids', () => {
    expect(joinHelp(help('two', 'belt'), help('one', 'walking-support', true))).toEqual({
      hold: true,
      people: 'two',
      aids: ['walking-support', 'belt'],
    });
    expect(help('two')).toEqual({ hold: false, people: 'two', aids: [] });
    expect(joinHelp(help('two'), help('one', 'belt')).aids).toEqual(['belt']);
    expect(joinHelp(help('two', 'belt'), help('one')).aids).toEqual(['belt']);
  });
});

describe.each(task.options)('in the task %s', (t) => {
  it('no less is a preorder, and the join is no less than either', () => {
    fc.assert(
      fc.property(anyHelp, anyHelp, anyHelp, (a, b, c) => {
        expect(noLess(t, a, a)).toBe(true);
        expect(implies(noLess(t, a, b) && noLess(t, b, c), noLess(t, a, c))).toBe(true);
        expect(noLess(t, a, joinHelp(a, b))).toBe(true);
        expect(noLess(t, b, joinHelp(a, b))).toBe(true);
      }),
      runs,
    );
  });
  it('agrees with the order of the lattice: whatever is above is no less', () => {
    fc.assert(
      fc.property(anyHelp, anyHelp, (a, b) => {
        expect(implies(below(a, b), noLess(t, a, b))).toBe(true);
      }),
      runs,
    );
  });
  it('what must be asked about stays so whatever is joined to it', () => {
    fc.assert(
      fc.property(anyHelp, anyHelp, (a, b) => {
        expect(implies(mustAsk(t, a), mustAsk(t, joinHelp(a, b)))).toBe(true);
      }),
      runs,
    );
  });
  it('covering is a partial order over the aids, and no aid is below all', () => {
    const all = aidClass.options;
    for (const a of all) {
      expect(aidCovers(t, a, a)).toBe(true);
      expect(aidCovers(t, 'none', a)).toBe(true);
      for (const b of all) {
        expect(implies(a !== b && aidCovers(t, a, b), !aidCovers(t, b, a))).toBe(true);
        for (const c of all) {
          expect(implies(aidCovers(t, a, b) && aidCovers(t, b, c), aidCovers(t, a, c))).toBe(true);
        }
      }
    }
  });
  it('every chain ends in the lifts, the bariatric one last, so a lift covers what it replaces', () => {
    for (const chain of AID_CHAINS[t]) expect(chain.slice(-2)).toEqual(['sling-lift', 'bariatric-lift']);
    for (const aid of new Set<AidClass>(AID_CHAINS[t].flat())) {
      const joined = joinHelp(help('one', aid), help('two', 'bariatric-lift'));
      expect(topAids(t, joined)).toEqual(['bariatric-lift']);
      expect(mustAsk(t, joined)).toBe(false);
    }
  });
});

describe('aids that cannot be combined', () => {
  const PAIRS: [Task, AidClass, AidClass][] = [
    ['bed-chair', 'standing-aid', 'seated-transfer-aid'],
    ['bed-chair', 'slide-sheet', 'belt'],
    ['toilet', 'walking-support', 'seated-transfer-aid'],
    ['toilet', 'slide-sheet', 'seated-transfer-aid'],
    ['in-chair', 'seated-transfer-aid', 'slide-sheet'],
    ['in-chair', 'standing-aid', 'slide-sheet'],
    ['in-chair', 'standing-aid', 'seated-transfer-aid'],
    ['walk', 'slide-sheet', 'belt'],
  ];
  it.each(PAIRS)('PLAN-4 %s: %s and %s are a hold, and a bigger aid does not settle it', (t, a, b) => {
    const both = joinHelp(help('one', a), help('one', b));
    expect(both.hold).toBe(false);
    expect(mustAsk(t, both)).toBe(true);
    expect(mustAsk(t, joinHelp(both, help('two', 'sling-lift')))).toBe(true);
    expect(topAids(t, both)).toHaveLength(2);
  });
  it('one that no chain of the task has is a hold beside any other', () => {
    expect(mustAsk('in-bed', joinHelp(help('one', 'belt'), help('two', 'sling-lift')))).toBe(true);
    expect(mustAsk('in-bed', help('one', 'belt'))).toBe(false);
  });
  it('no less is not a licence to swap: a lift alone covers a belt, and says nothing of belt beside seated aid', () => {
    const belt = help('one', 'belt');
    const sling = help('two', 'sling-lift');
    const seated = help('one', 'seated-transfer-aid');
    expect(noLess('bed-chair', belt, sling)).toBe(true);
    expect(noLess('bed-chair', sling, belt)).toBe(false);
    expect(mustAsk('bed-chair', joinHelp(belt, seated))).toBe(true);
    expect(mustAsk('bed-chair', joinHelp(sling, seated))).toBe(false);
  });
});

describe('the chains of each task', () => {
  it.each<[Task, AidClass, AidClass, boolean]>([
    ['bed-chair', 'walking-support', 'standing-aid', true],
    ['bed-chair', 'standing-aid', 'belt', false],
    ['toilet', 'seated-transfer-aid', 'sling-lift', true],
    ['lateral', 'slide-sheet', 'lateral-transfer-aid', true],
    ['lateral', 'lateral-transfer-aid', 'sling-lift', true],
    ['in-bed', 'slide-sheet', 'sling-lift', true],
    ['in-bed', 'lateral-transfer-aid', 'sling-lift', false],
    ['edge-of-bed', 'slide-sheet', 'sling-lift', true],
    ['from-floor', 'slide-sheet', 'sling-lift', true],
    ['in-chair', 'slide-sheet', 'sling-lift', true],
    ['in-chair', 'seated-transfer-aid', 'sling-lift', true],
    ['in-chair', 'standing-aid', 'sling-lift', true],
    ['walk', 'sling-lift', 'bariatric-lift', true],
  ])('%s: %s is covered by %s: %s', (t, a, b, yes) => {
    expect(aidCovers(t, a, b)).toBe(yes);
  });
});

describe('people', () => {
  it('one more stops at three or more, and never takes anyone away', () => {
    expect(withMore('on-own', 1)).toBe('stand-by');
    expect(withMore('stand-by', 1)).toBe('one');
    expect(withMore('two', 1)).toBe('three-or-more');
    expect(withMore('two', 5)).toBe('three-or-more');
    expect(withMore('one', 0)).toBe('one');
    expect(withMore('one', -1)).toBe('one');
  });
  it('are compared by the order of the list', () => {
    expect(morePeople('one', 'two')).toBe('two');
    expect(morePeople('two', 'one')).toBe('two');
    expect(atLeast('two', 'two')).toBe(true);
    expect(atLeast('one', 'two')).toBe(false);
  });
  it('fewer, a lesser aid or a hold dropped is less help', () => {
    expect(noLess('walk', help('two'), help('one'))).toBe(false);
    expect(noLess('walk', help('one', 'belt'), help('one'))).toBe(false);
    expect(noLess('walk', help('one', 'none', true), help('three-or-more', 'bariatric-lift'))).toBe(false);
  });
});
