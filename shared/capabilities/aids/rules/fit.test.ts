import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import { runs } from '../../../kernel/runs.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { ItemId } from '../values.ts';
import { against, anna, fit, lift, sling } from './fit.testkit.ts';

describe('which lift and sling can do it', () => {
  it('offers a lift with a sling that its maker lists, within load and body range', () => {
    expect(fit([lift('lift-1'), sling('sling-1')])).toMatchObject({
      need: 'lift-and-sling',
      counts: 80,
      sets: [{ item: 'lift-1', sling: 'sling-1', usableNow: true }],
      warnings: [],
    });
  });

  it('A6: never offers a sling of another maker, whatever letter is on it, and says why', () => {
    const large = sling('Sling L', { model: 'Z' });
    const answer = fit([lift('lift-1'), large]);
    expect(answer.sets).toEqual([]);
    expect(against(answer, 'Sling L')).toBe("not on the maker's list for lift-1");
    expect(answer.warnings).toContain('Nothing on the ward’s list fits: ask the handling coordinator');
  });

  it('holds loops and clips apart even where a list names them', () => {
    const answer = fit([lift('lift-1'), sling('sling-1', { attachment: 'clips' })]);
    expect(answer.sets).toEqual([]);
    expect(against(answer, 'sling-1')).toBe('hangs by clips, lift-1 takes loops');
  });

  it('goes by the weakest of lift, bar and sling, less what the ward keeps free', () => {
    const heavy = { weight: { kg: 150, how: 'measured' } as const };
    const wide = { fitsToKg: 200 };
    expect(fit([lift('l'), sling('s', wide)], heavy).sets).toHaveLength(1);
    expect(fit([lift('l', { barLoadKg: 149 }), sling('s', wide)], heavy).sets).toEqual([]);
    expect(fit([lift('l'), sling('s', { ...wide, safeLoadKg: 149 })], heavy).sets).toEqual([]);
    const kept = {
      ...DEFAULT_RULES,
      aids: { ...DEFAULT_RULES.aids, loadMargin: { ...DEFAULT_RULES.aids.loadMargin, value: 0.3 } },
    };
    const answer = fit([lift('l'), sling('s', wide)], { ...heavy, rules: kept });
    expect(answer.sets).toEqual([]);
    expect(against(answer, 'l')).toBe('bears 140 kg, the person counts as 150 kg');
  });

  it('counts an estimate with a fifth added, at the upper ends only', () => {
    const estimated = { weight: { kg: 90, how: 'estimated' } as const };
    const answer = fit([lift('l'), sling('s', { fitsFromKg: 89, fitsToKg: 108 })], estimated);
    expect(answer.counts).toBeCloseTo(108);
    expect(answer.sets).toHaveLength(1);
    expect(answer.warnings).toContain('Weight estimated: counted as 108 kg');
    expect(fit([lift('l'), sling('s', { fitsToKg: 107 })], estimated).sets).toEqual([]);
    expect(fit([lift('l', { safeLoadKg: 107 }), sling('s', { fitsToKg: 120 })], estimated).sets).toEqual([]);
  });

  it('with no weight offers no sling, and of the lifts only the one that bears most', () => {
    const answer = fit([lift('small', { safeLoadKg: 150 }), lift('large', { safeLoadKg: 250 }), sling('s')], {
      weight: null,
    });
    expect(answer.sets).toEqual([]);
    expect(answer.judged.filter((one) => one.suits).map((one) => one.item)).toEqual(['large']);
    expect(against(answer, 's')).toContain('weigh or estimate');
    expect(answer.warnings[0]).toContain('weigh or estimate');
  });

  it('takes a track only where it reaches', () => {
    const track = lift('track', { kind: 'ceiling-lift', covers: ['Bay 2'] });
    expect(fit([track, sling('s')]).sets).toEqual([]);
    expect(against(fit([track, sling('s')]), 'track')).toBe('its track does not reach Bay 1');
    expect(fit([track, sling('s')], { bed: { bay: 'Bay 2' } }).sets).toHaveLength(1);
  });

  it('keeps a toileting sling for the toilet, and a sling of one person for that person', () => {
    const toileting = sling('t', { style: 'toileting' });
    expect(fit([lift('l'), toileting]).sets).toEqual([]);
    expect(fit([lift('l'), toileting], { plan: { task: 'toilet', aid: 'sling-lift' } }).sets).toHaveLength(1);
    expect(fit([lift('l'), sling('s', {}, { keptFor: 'ben' as StayId })]).sets).toEqual([]);
    const own = fit([lift('l'), sling('s', {}, { keptFor: anna })]);
    expect(own.judged.find((one) => one.item === 's')!.for).toContain('kept for this person');
  });

  it('does not offer what nobody has described', () => {
    for (const missing of [{ style: null }, { fitsFromKg: null }, { fitsToKg: null }, { safeLoadKg: null }])
      expect({ missing, sets: fit([lift('l'), sling('s', missing)]).sets }).toEqual({ missing, sets: [] });
    expect(fit([lift('l', { safeLoadKg: null }), sling('s')]).sets).toEqual([]);
  });

  it('puts what is usable now first, and says of the rest what stands against it', () => {
    const busy = lift('busy', {}, {}, { word: 'in-use', against: ['somebody has it'] });
    const answer = fit([busy, lift('free'), sling('s')]);
    expect(answer.sets.map((one) => [one.item, one.usableNow])).toEqual([
      ['free', true],
      ['busy', false],
    ]);
    expect(against(answer, 'busy')).toBe('not now: somebody has it');
  });

  it('warns where infection steps apply, and asks nothing of the list where the plan needs none of it', () => {
    expect(fit([lift('l'), sling('s')], { stay: { stay: anna, isolation: true } }).warnings).toHaveLength(1);
    expect(fit([lift('l')], { plan: { task: 'walk', aid: 'none' } })).toMatchObject({
      need: 'nothing-listed',
      sets: [],
      warnings: [],
    });
  });

  const maybe = (from: number, to: number) => fc.option(fc.integer({ min: from, max: to }), { nil: null });
  const anyLift = fc.record({
    safeLoadKg: maybe(100, 300),
    barLoadKg: maybe(100, 300),
    worksWithModels: fc.constantFrom<string[]>(['B'], ['C'], []),
  });
  const anySling = fc.record({
    safeLoadKg: maybe(100, 300),
    fitsFromKg: maybe(30, 90),
    fitsToKg: maybe(90, 250),
    model: fc.constantFrom('B', 'C'),
  });

  it('never offers anything above the load of its weakest part, off the maker’s list, or outside the body range', () => {
    fc.assert(
      fc.property(
        fc.array(anyLift, { maxLength: 4 }),
        fc.array(anySling, { maxLength: 5 }),
        fc.integer({ min: 30, max: 260 }),
        fc.constantFrom('measured' as const, 'estimated' as const),
        (lifts, slings, weight, how) => {
          const items = [
            ...lifts.map((is, i) => lift(`l${i}`, is)),
            ...slings.map((is, i) => sling(`s${i}`, is)),
          ];
          const of = (id: ItemId | null) => items.find((one) => one.item === id)!.is;
          const counts = how === 'estimated' ? weight * 1.2 : weight;
          for (const { item, sling: s } of fit(items, { weight: { kg: weight, how } }).sets) {
            const [a, b] = [of(item), of(s)];
            expect(Math.min(a.safeLoadKg!, a.barLoadKg ?? Infinity, b.safeLoadKg!)).toBeGreaterThanOrEqual(
              counts,
            );
            expect(a.worksWithModels).toContain(b.model);
            expect(b.fitsFromKg!).toBeLessThanOrEqual(weight);
            expect(b.fitsToKg!).toBeGreaterThanOrEqual(counts);
          }
        },
      ),
      runs(300, 'cases'),
    );
  });
});
