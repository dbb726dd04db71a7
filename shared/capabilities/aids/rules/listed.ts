/**
 * Which pieces are on a ward: its own but those it has lent, and those it has borrowed. A piece is on one
 * list at a time, so that nothing is counted on two wards (decision 14). Pure.
 */
import type { LoggedEvent, PayloadOf } from '../../../kernel/event-type.ts';
import type { StaffId, WardId } from '../../../kernel/ids.ts';
import { toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { itemAdded, itemBorrowed, itemLent, itemLoanEnded } from '../events.ts';
import type { ItemDescription, ItemId } from '../values.ts';

export interface Loan {
  /** The other ward, and its name as it was called then. */
  readonly ward: WardId;
  readonly name: string;
  readonly at: EpochMs;
  readonly by: StaffId;
  /** As it was agreed; past it nothing happens by itself. Null: no time was. */
  readonly until: EpochMs | null;
}
export interface Listed {
  /** In the order they came. */
  readonly items: ReadonlyMap<ItemId, ItemDescription>;
  /** The ward's own that are on another ward. */
  readonly lent: ReadonlyMap<ItemId, Loan & { readonly is: ItemDescription }>;
  /** Of `items`, those of another ward. */
  readonly borrowed: ReadonlyMap<ItemId, Loan>;
  /** Whose a piece is that was borrowed once and given back: a fault that is told late still reaches them. */
  readonly givenBack: ReadonlyMap<ItemId, WardId>;
}
export const NOTHING_LISTED: Listed = {
  items: new Map(),
  lent: new Map(),
  borrowed: new Map(),
  givenBack: new Map(),
};

export const LIST_EVENTS: ReadonlySet<string> = new Set([
  'item-added',
  'item-changed',
  'item-withdrawn',
  'item-lent',
  'item-borrowed',
  'item-loan-ended',
]);

/** One event of the ward's stream more. The same object where it says nothing of the list. */
export function foldListed<S extends Listed>(state: S, event: LoggedEvent): S {
  const loanOf = (p: { name: string; until?: string | undefined }, ward: WardId): Loan => ({
    ward,
    name: p.name,
    at: event.occurred,
    by: event.author.staff,
    until: p.until === undefined ? null : toEpoch(p.until),
  });
  switch (event.type) {
    case 'item-added':
    case 'item-changed': {
      const { item, is } = event.payload as PayloadOf<typeof itemAdded>;
      const lent = state.lent.get(item);
      return lent
        ? { ...state, lent: put(state.lent, item, { ...lent, is }) }
        : { ...state, items: put(state.items, item, is) };
    }
    case 'item-withdrawn': {
      const { item } = event.payload as PayloadOf<typeof itemLoanEnded>;
      return { ...state, items: without(state.items, item) };
    }
    case 'item-lent': {
      const p = event.payload as PayloadOf<typeof itemLent>;
      const is = state.items.get(p.item);
      if (!is) return state;
      const lent = put(state.lent, p.item, { ...loanOf(p, p.to), is });
      return { ...state, items: without(state.items, p.item), lent };
    }
    case 'item-borrowed': {
      const p = event.payload as PayloadOf<typeof itemBorrowed>;
      return {
        ...state,
        items: put(state.items, p.item, p.is),
        borrowed: put(state.borrowed, p.item, loanOf(p, p.from)),
        givenBack: without(state.givenBack, p.item),
      };
    }
    case 'item-loan-ended': {
      const { item } = event.payload as PayloadOf<typeof itemLoanEnded>;
      const lent = state.lent.get(item);
      if (lent) return { ...state, items: put(state.items, item, lent.is), lent: without(state.lent, item) };
      const borrowed = state.borrowed.get(item);
      if (!borrowed) return state;
      return {
        ...state,
        items: without(state.items, item),
        borrowed: without(state.borrowed, item),
        givenBack: put(state.givenBack, item, borrowed.ward),
      };
    }
    default:
      return state;
  }
}

const put = <V>(map: ReadonlyMap<ItemId, V>, item: ItemId, to: V): ReadonlyMap<ItemId, V> =>
  new Map(map).set(item, to);
const without = <V>(map: ReadonlyMap<ItemId, V>, item: ItemId): ReadonlyMap<ItemId, V> =>
  map.has(item) ? new Map([...map].filter(([id]) => id !== item)) : map;

/** As long as a name may be. */
const MOST = 40;

/**
 * What the borrower lists: everything as its owner described it, so that load, class, compatibility and
 * examination decide there as here. Its name says whose it is: every ward has a "Lift 1".
 */
export function asLent(is: ItemDescription, owner: string): ItemDescription {
  const room = MOST - is.label.length - 3;
  const label = room > 0 ? `${is.label} (${cut(owner, room)})` : is.label;
  return { ...is, label, home: cut(owner, MOST) };
}

/** Never through the middle of a character: half of one is no text that can be kept. */
const cut = (text: string, to: number): string =>
  text
    .slice(0, to)
    .replace(/[\ud800-\udbff]$/, '')
    .trim();
