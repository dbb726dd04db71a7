/** What there is: equipment, how sure, and people who can be spared. */
import { MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { ItemState } from '../../aids/rules/item-state.ts';
import type { Usable } from '../../aids/rules/usable.ts';
import type { ItemDescription, ItemId, ItemKind } from '../../aids/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { AidGroup, SimItem } from './scenario.ts';

export type ForecastRules = RulesDocument['forecast'];

export interface SeenItem {
  readonly item: ItemId;
  readonly is: ItemDescription;
  readonly state: ItemState;
  readonly now: Usable;
}

export const GROUP_OF_KIND: Readonly<Partial<Record<ItemKind, AidGroup>>> = {
  'floor-lift': 'lift',
  'ceiling-lift': 'lift',
  'standing-aid': 'standing-aid',
  'lateral-aid': 'lateral-aid',
};

/** How long a use lasts, as measured on this ward; a kind that is not in it goes by the rules' numbers. */
export type Measured = ReadonlyMap<ItemKind, { readonly minutes: number; readonly uses: number }>;

export interface HoldTime {
  /** Fetched, used, wiped, brought back. */
  readonly minutes: number;
  readonly handMinutes: number;
  /** Uses it was measured from; 0: the rules' numbers. */
  readonly uses: number;
}

export function holdTimeOf(kind: ItemKind, rules: ForecastRules, measured: Measured): HoldTime {
  const handMinutes =
    kind === 'ceiling-lift'
      ? rules.trackSeconds.value / 60
      : kind === 'floor-lift'
        ? rules.floorSeconds.value / 60
        : rules.otherAidMinutes.value;
  // A lift on a track hangs where it is used; wiping it is part of the same numbers.
  const around = rules.aroundMinutes.value;
  const seen = measured.get(kind);
  if (!seen || seen.uses < rules.enoughUses.value)
    return { minutes: handMinutes + around, handMinutes, uses: 0 };
  return { minutes: seen.minutes, handMinutes: Math.min(handMinutes, seen.minutes), uses: seen.uses };
}

const order = (kind: ItemKind): number => (kind === 'ceiling-lift' ? 0 : 1);

/**
 * Equipment as the simulator takes it, tracks first; what cannot be used now is left out. In use now:
 * free when a use of ordinary length will be over, or half a use from now when it is past that.
 */
export function itemsOf(
  items: readonly SeenItem[],
  from: EpochMs,
  rules: ForecastRules,
  measured: Measured,
): SimItem[] {
  return items
    .toSorted((a, b) => order(a.is.kind) - order(b.is.kind))
    .flatMap(({ item, is, state, now }): SimItem[] => {
      const group = GROUP_OF_KIND[is.kind];
      if (!group || now.word === 'not-usable') return [];
      const { minutes, handMinutes } = holdTimeOf(is.kind, rules, measured);
      const since = now.word === 'in-use' && state.inUse ? (from - state.inUse.at) / MINUTE : null;
      return [
        {
          item,
          group,
          sure: now.word === 'unknown' ? rules.unknownUsable.value : 1,
          freeFrom: since === null ? 0 : since < minutes ? minutes - since : minutes / 2,
          from: 0,
          to: Infinity,
          minutes,
          handMinutes,
        },
      ];
    });
}

/** Of the people on, whole people who can be spared for moves of others, by slot. */
export const handsOf = (on: readonly number[], share: number): number[] =>
  on.map((n) => Math.floor(n * share + 1e-9));
