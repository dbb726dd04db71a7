/** The tier of an instant looks at what was entered up to it; and how far each check left the person cleared. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../corrections/facts.ts';
import { assessment, fact, hours, notMet, tierInput, upTo } from './assessment.testkit.ts';
import { checkUnder, LONG } from './own-protocol.testkit.ts';
import { protocolLookup } from './protocol.ts';
import { judgeTier } from './tier.ts';

const view = (at: number, ...facts: Fact[]) => judgeTier(tierInput(facts, at)).view;

describe('the plan that applies', () => {
  it.each([
    [1.9, 'Walk'],
    [2, null],
    [2.1, null],
  ])('given a comfort plan entered at 2 hours, at %s hours the tier is %s', (at, word) => {
    const comfort = fact('scope-set', { scope: 'comfort' }, { at: 2 });
    expect(view(at, assessment(upTo('walk')), comfort).word).toBe(word);
  });
});

describe('a person who is not assessed yet', () => {
  it.each([
    [1.9, []],
    [2, ['arrived']],
    [2.1, ['arrived']],
  ])('given an arrival at 2 hours, at %s hours the reason names %j', (at, named) => {
    const arrived = fact(
      'stay-begun',
      { stay: 'stay-1', person: 'person-1', bed: 'bed-1', from: 'home' },
      { at: 2, id: 'arrived' },
    );
    expect(view(at, arrived).because).toEqual([
      { rule: 'tier/not-known', facts: named, words: 'Not assessed on this ward' },
    ]);
  });
});

describe('how far a check left the person cleared', () => {
  const protocols = protocolLookup([{ id: LONG.id, version: LONG.version, document: LONG }]);
  const left = (check: Parameters<typeof assessment>[0], extra: Parameters<typeof assessment>[2] = {}) =>
    [...judgeTier({ ...tierInput([assessment(check, {}, extra)]), protocols }).clearedAfter.values()].at(-1);
  it.each([
    ['the start not met: nowhere', upTo('clear', { clear: notMet('no-active-bleeding') }), -1],
    ['the start: the first place', upTo('clear'), 0],
    ['Stand: the fourth', upTo('stand'), 3],
    ['Walk: the last', upTo('walk'), 5],
    ['Walk with Stand not met: up to Edge', upTo('walk', { stand: notMet('rises') }), 2],
  ])('%s', (_, check, place) => {
    expect(left(check)).toBe(place);
  });
  it('a stage that only the ward knows takes nothing from the one before it', () => {
    expect(left({}, checkUnder(LONG, 'lean', hours(0)))).toBe(2);
  });
  it('a check that nobody can read leaves a person never checked nowhere', () => {
    expect(left(upTo('walk'), { protocol: { id: 'gone', version: 4 } })).toBe(-1);
  });
});
