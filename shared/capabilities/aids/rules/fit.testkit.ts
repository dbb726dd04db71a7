/** A ward's lifts, slings and other aids in a few words, and what of them can do a task for Anna in Bay 1. */
import type { StayId } from '../../../kernel/ids.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemDescription, type ItemDescription, type ItemId } from '../values.ts';
import { fitOf, type Fit, type FitInput, type FitItem } from './fit.ts';
import { NOTHING_SEEN, type ItemState } from './item-state.ts';

export const anna = 'anna' as StayId;
export const ben = 'ben' as StayId;

export const piece = (
  item: string,
  is: Partial<ItemDescription>,
  state: Partial<ItemState> = {},
  now: FitItem['now'] = { word: 'usable', against: [] },
): FitItem => ({
  item: item as ItemId,
  is: itemDescription.parse({ label: item, kind: 'floor-lift', model: 'A', home: 'Store', ...is }),
  state: { ...NOTHING_SEEN, ...state },
  now,
});
export const lift = (
  item: string,
  is: Partial<ItemDescription> = {},
  more: Partial<ItemState> = {},
  now?: FitItem['now'],
) => piece(item, { safeLoadKg: 200, attachment: 'loops', worksWithModels: ['B'], ...is }, more, now);
export const sling = (
  item: string,
  is: Partial<ItemDescription> = {},
  more: Partial<ItemState> = {},
  now?: FitItem['now'],
) =>
  piece(
    item,
    {
      kind: 'sling',
      model: 'B',
      style: 'whole-body',
      safeLoadKg: 200,
      fitsFromKg: 50,
      fitsToKg: 100,
      attachment: 'loops',
      ...is,
    },
    more,
    now,
  );

/** Anna weighs 80 kg and is lifted from bed to chair, unless told otherwise. */
export const fit = (items: readonly FitItem[], over: Partial<FitInput> = {}) =>
  fitOf({
    plan: { task: 'bed-chair', aid: 'sling-lift' },
    stay: { stay: anna, isolation: false },
    bed: { bay: 'Bay 1' },
    weight: { kg: 80, how: 'measured' },
    items,
    rules: DEFAULT_RULES,
    ...over,
  });
export const judgedOf = (answer: Fit, item: string) => answer.judged.find((one) => one.item === item)!;
export const against = (answer: Fit, item: string) => judgedOf(answer, item).against.join('; ');
