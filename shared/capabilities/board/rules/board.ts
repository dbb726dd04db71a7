import type { LoggedEvent } from '../../../kernel/event-type.ts';
import type { BedId, StayId, WardId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import type { WardState } from '../../wards/context.ts';
import type { BoardView } from '../view.ts';

export interface BoardState {
  readonly ward: WardId;
  /** Last position folded. */
  position: number;
  wardState: WardState | null;
  /** By the beds' guard streams. */
  readonly occupancy: Map<BedId, StayId>;
  readonly records: Map<StayId, unknown>;
}
export function emptyBoard(_ward: WardId): BoardState {
  throw new Error('signature only');
}
/**
 * Folds events in position order; mutates the state. `touched`: every stay an event spoke of, also
 * one that holds no bed any more (its row is gone, its totals may change). `missing`: stays that
 * hold a bed and whose earlier events are not here: load their streams and hand them to addRecord.
 */
export function foldBoard(
  _state: BoardState,
  _events: readonly LoggedEvent[],
): { touched: ReadonlySet<StayId>; missing: ReadonlySet<StayId> } {
  throw new Error('signature only');
}
/** Takes a stay's whole stream as read; ignored for a stay that holds no bed. */
export function addRecord(_state: BoardState, _record: StayRecord): void {
  throw new Error('signature only');
}
export function viewBoard(
  _state: BoardState,
  _t: EpochMs,
  _only?: ReadonlySet<StayId>,
): { board: BoardView; nextChange: EpochMs | null } {
  throw new Error('signature only');
}
