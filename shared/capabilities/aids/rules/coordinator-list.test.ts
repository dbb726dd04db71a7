import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import type { Weight } from '../../stays/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemDescription, type ItemDescription, type ItemId } from '../values.ts';
import { daysAfter, mattersOfItem, mattersOfStay } from './coordinator-list.ts';
import { fitOf, type FitItem } from './fit.ts';
import { NOTHING_SEEN } from './item-state.ts';
import { NO_DATE, type UsableWhy } from './usable.ts';

const anna = 'anna' as StayId;
const piece = (item: string, is: Partial<ItemDescription>, keptFor: string | null = null): FitItem => ({
  item: item as ItemId,
  is: itemDescription.parse({
    label: item,
    kind: 'floor-lift',
    model: 'A',
    home: 'Store',
    safeLoadKg: 200,
    ...is,
  }),
  state: { ...NOTHING_SEEN, keptFor: keptFor as StayId | null },
  // Whether a piece is free now does not matter to the coordinator's list.
  now: { word: 'in-use', against: ['somebody has it'] },
});
const sling = (item: string, is: Partial<ItemDescription> = {}, keptFor: string | null = null) =>
  piece(
    item,
    {
      kind: 'sling',
      model: 'B',
      style: 'whole-body',
      fitsFromKg: 50,
      fitsToKg: 120,
      worksWithModels: ['A'],
      ...is,
    },
    keptFor,
  );
const weighs = (kg: number): Weight => ({ kg, how: 'measured' });

function matters(items: readonly FitItem[], weight: Weight | null, { waits = false, lifted = true } = {}) {
  const plan = { task: 'bed-chair', aid: lifted ? 'sling-lift' : 'none' } as const;
  const fit = fitOf({
    plan,
    stay: { stay: anna, isolation: false },
    bed: { bay: 'Bay 1' },
    weight,
    items,
    rules: DEFAULT_RULES,
  });
  const asks = fit.need === 'nothing-listed' ? [] : [{ ...plan, fit }];
  const kept = new Set(items.filter(({ state }) => state.keptFor === anna).map(({ item }) => item));
  return mattersOfStay({ weight, weightWaits: waits, asks }, items, kept, DEFAULT_RULES);
}

describe('COORD-1 people whose plan the equipment does not meet', () => {
  it('says nothing of somebody whom a lift and a sling fit, though both are with others now', () => {
    expect(matters([piece('lift', {}), sling('s')], weighs(80))).toEqual([]);
  });

  it('lists whoever has no weight, whatever the plan asks for, and that once', () => {
    expect(matters([piece('lift', {}), sling('s')], null)).toMatchObject([
      { matter: 'no-weight', closes: 'weigh-or-estimate', tasks: ['bed-chair'], countsKg: null },
    ]);
    expect(matters([], null, { lifted: false })).toMatchObject([{ matter: 'no-weight', tasks: [] }]);
    expect(matters([], null, { waits: true })).toMatchObject([{ closes: 'nurse-records-weight' }]);
  });

  it('lists which piece the person is too heavy for, and by how much', () => {
    const items = [piece('small', { safeLoadKg: 130 }), piece('large', {}), sling('s', { fitsToKg: 200 })];
    expect(matters(items, weighs(150))).toMatchObject([
      {
        matter: 'over-limit',
        closes: 'use-another',
        over: [{ item: 'small', bearsKg: 130, overKg: 20 }],
        countsKg: 150,
      },
    ]);
  });

  it('counts an estimate with its share added, and the bar where it bears less', () => {
    const items = [piece('lift', { barLoadKg: 100 }), sling('s', { fitsToKg: 200 })];
    const [found] = matters(items, { kg: 90, how: 'estimated' });
    expect(found).toMatchObject({ matter: 'over-limit', closes: 'bring-one-that-bears' });
    expect(found!.over[0]).toMatchObject({ item: 'lift', bearsKg: 100 });
    // 90 kg estimated count as 108 kg.
    expect(found!.over[0]!.overKg).toBeCloseTo(8);
  });

  it('looks at the sling that is kept for the person, and at no other sling, for its load', () => {
    const kept = [
      piece('lift', {}),
      sling('s', { fitsToKg: 200 }),
      sling('own', { safeLoadKg: 100 }, 'anna'),
    ];
    expect(matters(kept, weighs(110))).toMatchObject([{ matter: 'over-limit', over: [{ item: 'own' }] }]);
    const other = [piece('lift', {}), sling('s'), sling('light', { safeLoadKg: 100 })];
    expect(matters(other, weighs(110))).toEqual([]);
  });

  it('lists whom no sling fits, with the question of the fit rules that each sling fails', () => {
    const items = [
      piece('lift', { attachment: 'loops' }),
      sling('narrow', { fitsToKg: 70 }),
      sling('toilet-only', { style: 'toileting' }),
      sling('bens', {}, 'ben'),
      sling('other-maker', { worksWithModels: ['Z'] }),
      sling('clipped', { attachment: 'clips' }),
    ];
    const [found, ...more] = matters(items, weighs(80));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ matter: 'no-sling', closes: 'bring-a-sling', lifts: ['lift'] });
    expect(found!.failed).toEqual([
      { item: 'narrow', against: ['made for 50 kg to 70 kg, the person counts as 80 kg'] },
      { item: 'toilet-only', against: ['made for toileting'] },
      { item: 'bens', against: ['kept for another person'] },
      { item: 'other-maker', against: ["not on the maker's list for lift"] },
      { item: 'clipped', against: ['hangs by clips, lift takes loops'] },
    ]);
  });

  it('lists a missing sling also where the list has none, and a lift that reaches nobody apart from weight', () => {
    expect(matters([piece('lift', {})], weighs(80))).toMatchObject([{ matter: 'no-sling', failed: [] }]);
    const track = piece('track', { kind: 'ceiling-lift', covers: ['Bay 2'] });
    expect(matters([track, sling('s')], weighs(80))).toMatchObject([
      {
        matter: 'nothing-fits',
        closes: 'bring-one-that-fits',
        failed: [{ item: 'track', against: ['its track does not reach Bay 1'] }],
      },
    ]);
  });
});

describe('COORD-2 pieces that nobody can count on', () => {
  const fine: UsableWhy = { word: 'usable', against: [], unknown: [] };
  const nothing = { outOfService: null, missing: null };
  const of = (due: string | null, seen: Parameters<typeof mattersOfItem>[1] = nothing, now = fine) =>
    mattersOfItem(due, seen, now, '2026-11-30', DEFAULT_RULES).map(({ matter }) => matter);

  // Due today is still in date, tomorrow it is out: derived from LOLER 1998 regulation 9 (six months; HSE HSIS4).
  it.each([
    ['2026-11-29', ['examination-overdue']],
    ['2026-11-30', ['examination-due']],
    ['2026-12-30', ['examination-due']],
    ['2026-12-31', []],
  ])('an examination due %s, looked at on 30 November', (due, expected) => {
    expect(of(due)).toEqual(expected);
  });

  it('lists what is out of service, lost, or has no date, and what nobody has said lately', () => {
    const broken = { word: 'not-usable', against: ['out of service (inspection)'], unknown: [] } as const;
    expect(of('2027-09-01', { ...nothing, outOfService: {} }, broken)).toEqual(['out-of-service']);
    expect(of('2027-09-01', { ...nothing, missing: {} }, { ...fine, word: 'not-usable' })).toEqual([
      'not-there',
    ]);
    expect(of(null, nothing, { word: 'unknown', against: [NO_DATE], unknown: [NO_DATE] })).toEqual([
      'no-examination-date',
    ]);
    const unsaid = { word: 'unknown', against: ['battery not read'], unknown: ['battery not read'] } as const;
    expect(of('2027-09-01', nothing, unsaid)).toEqual(['state-unknown']);
  });

  it('leaves to the ward what the ward puts right: dirty, flat, in use', () => {
    for (const word of ['in-use', 'not-usable'] as const)
      expect(of('2027-09-01', nothing, { word, against: ['dirty'], unknown: [] })).toEqual([]);
  });

  it('counts days over the end of a month and a year', () => {
    expect(daysAfter('2026-12-15', 30)).toBe('2027-01-14');
    expect(daysAfter('2028-02-28', 1)).toBe('2028-02-29');
  });
});
