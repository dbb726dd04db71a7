import type { BedView } from '../capabilities/board/view.ts';
import type { Patch, Snapshot } from './messages.ts';

export type Applied =
  | { readonly result: 'applied'; readonly state: Snapshot }
  /** Already painted, or meant for another ward: nothing to do. */
  | { readonly result: 'ignored' }
  /** Something between is missing: ask again with `join`. */
  | { readonly result: 'gap' };

const GAP: Applied = { result: 'gap' };

/**
 * One linked patch onto what a screen holds. Pure: gives a new state and keeps the rows that did
 * not change as the same objects. Never half applies: a patch that does not fit is a gap.
 */
export function applyPatch(state: Snapshot, patch: Patch): Applied {
  if (patch.ward !== state.ward || patch.to <= state.feed) return { result: 'ignored' };
  if (patch.from !== state.feed) return GAP;

  const rows = new Map<string, BedView>(state.board.beds.map((row) => [row.bed, row]));
  const known = rows.size;
  for (const row of patch.beds) rows.set(row.bed, row);
  // A bed nobody has heard of comes only with the new order of all beds.
  if (!patch.order && rows.size !== known) return GAP;
  const order = patch.order ?? state.board.beds.map((row) => row.bed);
  const beds: BedView[] = [];
  for (const bed of order) {
    const row = rows.get(bed);
    if (!row) return GAP;
    beds.push(row);
  }
  return {
    result: 'applied',
    state: {
      ward: state.ward,
      feed: patch.to,
      p: patch.p,
      t: patch.t,
      board: { ...state.board, ...patch.board, beds },
    },
  };
}
