/** What the coordinator reads of one person: each matter once, and what closes it. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import type { AidClass, Task } from '../../handling/values.ts';
import type { Weight } from '../../stays/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemDescription, type ItemDescription, type ItemId } from '../values.ts';
import { isListed, mattersOfStay } from './coordinator-list.ts';
import { fitOf, type FitItem } from './fit.ts';
import { NOTHING_SEEN } from './item-state.ts';

interface Planned {
  readonly task: Task;
  readonly aid: AidClass;
}
const TO_CHAIR: Planned = { task: 'bed-chair', aid: 'sling-lift' };
const TO_TOILET: Planned = { task: 'toilet', aid: 'sling-lift' };
const TO_STAND: Planned = { task: 'stand', aid: 'standing-aid' };
const TO_WALK: Planned = { task: 'walk', aid: 'walking-support' };

const piece = (item: string, is: Partial<ItemDescription>): FitItem => ({
  item: item as ItemId,
  is: itemDescription.parse({ label: item, kind: 'floor-lift', model: 'A', home: 'Store', ...is }),
  state: NOTHING_SEEN,
  now: { word: 'usable', against: [] },
});
const lift = (item: string, safeLoadKg: number) => piece(item, { safeLoadKg });
const standing = (item: string, safeLoadKg: number) => piece(item, { kind: 'standing-aid', safeLoadKg });
const track = (item: string, bay: string) =>
  piece(item, { kind: 'ceiling-lift', safeLoadKg: 200, covers: [bay] });
const SLING = piece('sling', {
  kind: 'sling',
  model: 'B',
  style: 'whole-body',
  safeLoadKg: 300,
  fitsFromKg: 50,
  fitsToKg: 200,
  worksWithModels: ['A'],
});

const fit = (items: readonly FitItem[], plan: Planned, weight: Weight | null) =>
  fitOf({
    plan,
    stay: { stay: 'anna' as StayId, isolation: false },
    bed: { bay: 'Bay 1' },
    weight,
    items,
    rules: DEFAULT_RULES,
  });
/** Somebody in Bay 1 with this plan of the day, for whom these are kept. */
function linesOf(
  items: readonly FitItem[],
  kg: number | null,
  day: readonly Planned[],
  theirs: readonly FitItem[],
) {
  const weight: Weight | null = kg === null ? null : { kg, how: 'measured' };
  const asks = day.map((plan) => ({ ...plan, fit: fit(items, plan, weight) }));
  const kept = new Set(theirs.map(({ item }) => item));
  return mattersOfStay({ weight, weightWaits: false, asks }, items, kept, DEFAULT_RULES);
}
/** The same with no sling kept for them. */
const lines = (items: readonly FitItem[], kg: number | null, ...day: readonly Planned[]) =>
  linesOf(items, kg, day, []);

describe('what the coordinator reads of one person', () => {
  it('names each task and each kind of aid that waits for a weight, and blames no piece for it', () => {
    expect(lines([lift('lift', 200), SLING], null, TO_CHAIR, TO_TOILET)).toEqual([
      {
        matter: 'no-weight',
        closes: 'weigh-or-estimate',
        tasks: ['bed-chair', 'toilet'],
        aids: ['sling-lift'],
        over: [],
        countsKg: null,
        failed: [],
        lifts: [],
      },
    ]);
  });

  it('says once that the only lift bears too little, and not that it does not fit as well', () => {
    expect(lines([lift('small', 130), SLING], 150, TO_CHAIR)).toEqual([
      {
        matter: 'over-limit',
        closes: 'bring-one-that-bears',
        tasks: ['bed-chair'],
        aids: ['sling-lift'],
        over: [{ item: 'small', bearsKg: 130, overKg: 20 }],
        countsKg: 150,
        failed: [],
        lifts: [],
      },
    ]);
  });

  it('asks for one that bears as soon as one of the tasks has none, though another task has', () => {
    const items = [lift('small', 130), lift('large', 200), SLING, standing('stander', 120)];
    const found = lines(items, 150, TO_CHAIR, TO_STAND);
    expect(found).toMatchObject([
      {
        matter: 'over-limit',
        closes: 'bring-one-that-bears',
        tasks: ['bed-chair', 'stand'],
        aids: ['sling-lift', 'standing-aid'],
        over: [{ item: 'small' }, { item: 'stander' }],
      },
    ]);
  });

  it('names a walking frame that is listed with less than the person counts as; listed without a load, none', () => {
    const frame = (safeLoadKg: number | null) => piece('frame', { kind: 'walking-aid', safeLoadKg });
    expect(lines([frame(null)], 150, TO_WALK)).toEqual([]);
    expect(lines([frame(150)], 150, TO_WALK)).toEqual([]);
    expect(lines([frame(100)], 150, TO_WALK)).toMatchObject([
      { matter: 'over-limit', closes: 'bring-one-that-bears', over: [{ item: 'frame', overKg: 50 }] },
    ]);
  });

  it('says that the only one that bears enough does not reach, beside one that bears too little', () => {
    const items = [track('over-bay-2', 'Bay 2'), lift('small', 130), SLING];
    expect(lines(items, 150, TO_CHAIR).map(({ matter, closes }) => [matter, closes])).toEqual([
      ['over-limit', 'use-another'],
      ['nothing-fits', 'bring-one-that-fits'],
    ]);
  });

  it('says that a lift is missing, and not one that bears more, where their own sling alone bears too little', () => {
    const own = { ...SLING, is: { ...SLING.is, safeLoadKg: 100 } };
    expect(linesOf([own], 150, [TO_CHAIR], [own])).toMatchObject([
      { matter: 'over-limit', closes: 'use-another', over: [{ item: 'sling' }] },
      { matter: 'nothing-fits', closes: 'bring-one-that-fits' },
      { matter: 'no-sling' },
    ]);
  });

  it('blames nothing that is kept for somebody else', () => {
    const bens = { ...lift('bens', 100), state: { ...NOTHING_SEEN, keptFor: 'ben' as StayId } };
    expect(lines([lift('large', 300), bens, SLING], 110, TO_CHAIR)).toEqual([]);
  });

  it('misses no sling where the plan asks for a standing aid', () => {
    expect(lines([standing('stander', 160)], 80, TO_STAND)).toEqual([]);
  });

  it('looks for a sling only for the lifts that reach the person', () => {
    const items = [track('over-bay-2', 'Bay 2'), lift('floor', 200)];
    expect(lines(items, 80, TO_CHAIR)).toMatchObject([{ matter: 'no-sling', lifts: ['floor'] }]);
  });
});

describe('whether the ward lists what the plan asks for', () => {
  it.each<[string, Planned, FitItem[], boolean]>([
    ['a lift, with none on the list: nobody is lifted without one', TO_CHAIR, [], true],
    ['a lift, with one on the list', TO_CHAIR, [lift('lift', 200)], true],
    ['a standing aid, on a ward that lists lifts only', TO_STAND, [lift('lift', 200)], false],
    ['a standing aid, with one on the list', TO_STAND, [standing('stander', 160)], true],
  ])('%s', (_asked, plan, items, expected) => {
    expect(isListed(fit(items, plan, { kg: 80, how: 'measured' }))).toBe(expected);
  });
});
