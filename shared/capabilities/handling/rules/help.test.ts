import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aidClass, people, task } from '../values.ts';
import type { AidClass } from '../values.ts';
import type { Help } from './help.ts';
import { AID_CHAINS, help, joinHelp, mustAsk, NO_HELP, noLess, topAids, withMore } from './help.ts';

const aTask = fc.constantFrom(...task.options);
const oneHelp: fc.Arbitrary<Help> = fc
  .record({
    hold: fc.boolean(),
    people: fc.constantFrom(...people.options),
    aid: fc.constantFrom(...aidClass.options),
  })
  .map((h) => help(h.people, h.aid, h.hold));
/** Any help that joins can produce. */
const anyHelp = fc.array(oneHelp, { maxLength: 4 }).map((all) => all.reduce(joinHelp, NO_HELP));

describe('help as a lattice', () => {
  it('joining is commutative, associative and idempotent', () => {
    fc.assert(
      fc.property(anyHelp, anyHelp, anyHelp, (a, b, c) => {
        expect(joinHelp(a, b)).toEqual(joinHelp(b, a));
        expect(joinHelp(a, joinHelp(b, c))).toEqual(joinHelp(joinHelp(a, b), c));
        expect(joinHelp(a, a)).toEqual(a);
        expect(joinHelp(a, NO_HELP)).toEqual(a);
      }),
      { numRuns: 500 },
    );
  });
  it('joining never lowers', () => {
    fc.assert(
      fc.property(aTask, anyHelp, anyHelp, (t, a, b) => {
        expect(noLess(t, a, joinHelp(a, b))).toBe(true);
        expect(noLess(t, b, joinHelp(a, b))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
  it('two aids that no chain puts in order are a hold, and a bigger one does not settle it', () => {
    const both = joinHelp(help('one', 'standing-aid'), help('one', 'seated-transfer-aid'));
    expect(both.hold).toBe(false);
    expect(mustAsk('bed-chair', both)).toBe(true);
    expect(mustAsk('bed-chair', joinHelp(both, help('two', 'sling-lift')))).toBe(true);
  });
  it('a lift covers every other aid of a transfer, each on its own', () => {
    for (const t of ['bed-chair', 'toilet'] as const) {
      for (const aid of new Set<AidClass>(AID_CHAINS[t].flat())) {
        const joined = joinHelp(help('one', aid), help('two', 'bariatric-lift'));
        expect(topAids(t, joined)).toEqual(['bariatric-lift']);
        expect(mustAsk(t, joined)).toBe(false);
      }
    }
  });
  it('a slide sheet demanded beside a belt on the way to a chair is a hold', () => {
    expect(mustAsk('bed-chair', joinHelp(help('two', 'slide-sheet'), help('one', 'belt')))).toBe(true);
  });
  it('one more person stops at three or more', () => {
    expect(withMore('stand-by', 1)).toBe('one');
    expect(withMore('two', 5)).toBe('three-or-more');
    expect(withMore('one', -1)).toBe('one');
  });
});
