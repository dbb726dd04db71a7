/** What is said for and against each lift and sling, and which go together. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { overLoad } from './fit.ts';
import { against, anna, ben, fit, judgedOf, lift, piece, sling } from './fit.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';

const notKnown = { weight: null };
const weighs = (kg: number) => ({ weight: { kg, how: 'measured' } as const });
const toClean = { word: 'not-usable', against: ['dirty', 'battery flat'] } as const;

describe('what speaks for a lift and a sling', () => {
  it('says of a lift what it bears, of a sling whom it is made for and with which lifts it works', () => {
    // given two lifts that the sling is listed for, and one of another maker
    const answer = fit([lift('Lift 1'), lift('Lift 2'), lift('Lift 3', { worksWithModels: [] }), sling('S')]);
    // then each says in full what speaks for it, and nothing against
    expect(judgedOf(answer, 'Lift 1')).toEqual({
      item: 'Lift 1',
      part: 'lift',
      suits: true,
      for: ['bears 200 kg'],
      against: [],
      unfit: [],
    });
    expect(judgedOf(answer, 'S')).toEqual({
      item: 'S',
      part: 'sling',
      suits: true,
      for: ['made for 50 kg to 100 kg', 'works with Lift 1, Lift 2'],
      against: [],
      unfit: [],
    });
  });

  it('says of a sling that is kept for this person that it is', () => {
    const own = judgedOf(fit([lift('Lift 1'), sling('S', {}, { keptFor: anna })]), 'S');
    expect(own.for).toEqual(['made for 50 kg to 100 kg', 'kept for this person', 'works with Lift 1']);
  });

  it('says nothing for a lift or a sling that does not suit', () => {
    // given Anna is too heavy for the one lift, and each sling is too narrow, kept for Ben, or of another maker
    const items = [
      lift('small', { safeLoadKg: 100 }),
      lift('Lift 1'),
      sling('narrow'),
      sling('kept', { fitsToKg: 200 }, { keptFor: ben }),
      sling('other maker', { model: 'Z', fitsToKg: 200 }),
    ];
    const answer = fit(items, weighs(120));
    for (const item of ['small', 'narrow', 'kept', 'other maker'])
      expect(judgedOf(answer, item)).toMatchObject({ item, suits: false, for: [] });
    expect(against(answer, 'small')).toBe('bears 100 kg, the person counts as 120 kg');
    expect(against(answer, 'narrow')).toBe('made for 50 kg to 100 kg, the person counts as 120 kg');
    expect(against(answer, 'kept')).toBe('kept for another person');
    expect(against(answer, 'other maker')).toBe("not on the maker's list for Lift 1");
  });

  it('takes a ceiling track for a lift, as a floor lift is one', () => {
    const answer = fit([
      lift('track', { kind: 'ceiling-lift', covers: ['Bay 1'] }),
      lift('floor'),
      sling('S'),
    ]);
    expect(judgedOf(answer, 'track')).toMatchObject({ part: 'lift', for: ['bears 200 kg'] });
    expect(judgedOf(answer, 'floor')).toMatchObject({ part: 'lift', for: ['bears 200 kg'] });
  });
});

describe('what nobody has entered', () => {
  it.each([
    [{ style: null }, 'nobody has entered what it is made for'],
    [{ style: 'walking' }, 'made for walking'],
    [{ fitsFromKg: null }, 'the body weight it is made for is not known'],
    [{ fitsToKg: null }, 'the body weight it is made for is not known'],
    [{ safeLoadKg: null }, 'its safe working load is not known'],
  ] as const)('stands against a sling with %o in words', (is, words) => {
    const answer = fit([lift('Lift 1'), sling('S', is)]);
    expect(against(answer, 'S')).toBe(words);
    expect(answer.sets).toEqual([]);
  });

  it('stands against a lift whose load is not known, and is not said to be too little', () => {
    const unknown = lift('Lift 1', { safeLoadKg: null });
    expect(against(fit([unknown, sling('S')]), 'Lift 1')).toBe('its safe working load is not known');
    expect(overLoad(unknown.is, 80, DEFAULT_RULES)).toBeNull();
  });

  it('is not a reason against how a sling hangs: the maker’s list decides', () => {
    const setsOf = (onLift: 'loops' | null, onSling: 'loops' | null) =>
      fit([lift('Lift 1', { attachment: onLift }), sling('S', { attachment: onSling })]).sets;
    const together = [{ item: 'Lift 1', sling: 'S', usableNow: true }];
    expect(setsOf(null, 'loops')).toEqual(together);
    expect(setsOf('loops', null)).toEqual(together);
    expect(setsOf(null, null)).toEqual(together);
  });
});

describe('nobody has weighed or estimated', () => {
  it('says of the smaller lift that another bears more, and asks for a weight before a sling', () => {
    const answer = fit(
      [lift('small', { safeLoadKg: 150 }), lift('large', { safeLoadKg: 250 }), sling('S')],
      notKnown,
    );
    expect(against(answer, 'small')).toBe('the weight is not known, and another bears more');
    expect(against(answer, 'large')).toBe('');
    expect(against(answer, 'S')).toBe('the weight is not known: weigh or estimate');
  });

  it('offers no lift where the load of none is known', () => {
    const answer = fit([piece('Lift 1', {}), piece('Lift 2', {})], notKnown);
    for (const item of ['Lift 1', 'Lift 2'])
      expect(judgedOf(answer, item)).toMatchObject({
        suits: false,
        against: ['its safe working load is not known'],
      });
  });
});

describe('at the very limit', () => {
  it('a lift bears whoever counts as just what it bears', () => {
    const wide = sling('S', { fitsToKg: 300 });
    expect(fit([lift('Lift 1'), wide], weighs(200)).sets).toHaveLength(1);
    expect(fit([lift('Lift 1'), wide], weighs(200.5)).sets).toEqual([]);
  });

  it('a sling fits from the very weight it is made for to the very weight', () => {
    expect(fit([lift('Lift 1'), sling('S')], weighs(50)).sets).toHaveLength(1);
    expect(fit([lift('Lift 1'), sling('S')], weighs(100)).sets).toHaveLength(1);
    expect(fit([lift('Lift 1'), sling('S')], weighs(49.5)).sets).toEqual([]);
    expect(fit([lift('Lift 1'), sling('S')], weighs(100.5)).sets).toEqual([]);
  });
});

describe('what is not free just now', () => {
  it('a free lift with a sling in the wash suits, and cannot be used now', () => {
    const answer = fit([lift('Lift 1'), sling('S', {}, {}, toClean)]);
    expect(answer.sets).toEqual([{ item: 'Lift 1', sling: 'S', usableNow: false }]);
    expect(judgedOf(answer, 'S')).toMatchObject({ suits: true, unfit: [] });
  });

  it('gives every reason, one after the other', () => {
    const answer = fit([lift('Lift 1', {}, {}, toClean), sling('S')]);
    expect(against(answer, 'Lift 1')).toBe('not now: dirty; battery flat');
  });

  it('warns in a room with infection steps what is to be done before anything leaves it', () => {
    expect(fit([lift('Lift 1'), sling('S')], { stay: { stay: anna, isolation: true } }).warnings).toEqual([
      'Infection steps: what goes into the room is cleaned before it leaves',
    ]);
  });
});
