/**
 * What stands on the board beside an entry that was sent later than it was made: what happened in
 * between, and what the entry does not change. Pure: the entry, the server's answer and the board's rows
 * in, codes and instants out.
 */
import type { HoldView } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView } from '@footboard/shared/capabilities/board/view';

export interface SentEntry {
  /** The stay it was made for; null for an arrival. */
  readonly stay: string | null;
  /** When it happened, epoch ms. */
  readonly occurred: number;
  /** Ids of the events that the server made of it. */
  readonly events: readonly string[];
  /** Label of the bed its person was in when it was made; left out where that is not known. */
  readonly bed?: string;
}

export type StandsBeside =
  | { readonly kind: 'hold'; readonly at: number; readonly scope: HoldView['scope'] }
  | { readonly kind: 'trigger'; readonly at: number; readonly words: string }
  | { readonly kind: 'order'; readonly at: number }
  | { readonly kind: 'disagrees'; readonly words: string }
  /** Its person is in another bed now; the entry is theirs. */
  | { readonly kind: 'other-bed'; readonly from: string; readonly bed: string }
  /** Its person is in no bed of this ward any more: it went to their closed stay. */
  | { readonly kind: 'gone' };

/** In the order in which it matters to whoever made the entry. */
export function standsBeside(entry: SentEntry, beds: readonly BedView[]): readonly StandsBeside[] {
  if (entry.stay === null) return [];
  const row = beds.find((bed) => bed.stay?.stay === entry.stay);
  const stay = row?.stay;
  if (!stay) return [{ kind: 'gone' }];
  const { bed: from = row.label } = entry;
  const own = new Set(entry.events);
  const since = (at: number, event: string) => at >= entry.occurred && !own.has(event);
  return [
    ...(from === row.label ? [] : [{ kind: 'other-bed' as const, from, bed: row.label }]),
    ...stay.holds
      .filter(({ placedAt, event }) => since(placedAt, event))
      .map(({ placedAt, scope }) => ({ kind: 'hold' as const, at: placedAt, scope })),
    ...stay.trust.openTriggers
      .filter(({ at, event }) => since(at, event))
      .map(({ at, words }) => ({ kind: 'trigger' as const, at, words })),
    ...stay.orders
      .filter(({ at, event }) => since(at, event))
      .map(({ at }) => ({ kind: 'order' as const, at })),
    ...stay.trust.conflicts
      .filter(({ safer, other }) => own.has(safer) || own.has(other))
      .map(({ words }) => ({ kind: 'disagrees' as const, words })),
  ];
}
