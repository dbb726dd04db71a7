import type { EpochMs } from '@footboard/shared/kernel/times';
import type { EventId, StayId, WardId } from '@footboard/shared/kernel/ids';

/** Finds the event of a type and time in a stay, for entries that speak of an earlier one. */
export type Find = (stay: StayId, type: string, occurred: EpochMs) => EventId | null;

/** One thing somebody enters: who, when, which command, with what. */
export interface Entry {
  readonly at: EpochMs;
  readonly ward: WardId;
  readonly by: string;
  readonly command: string;
  /** A function when the entry needs an earlier event's id; null from it means "nothing to enter". */
  readonly data: object | ((find: Find) => object | null);
}
