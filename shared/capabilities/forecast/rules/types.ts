/** What the forecast is asked and what it answers. Plain data: it crosses to a worker thread and back. */
import type { Group, Scenario, SimItem, Source } from './scenario.ts';
import type { Belief, Runs } from './tally.ts';

export interface ForecastInput {
  readonly scenario: Scenario;
  readonly belief: Belief;
  readonly runs: Runs;
  /** A chance from here on is worth saying. */
  readonly sayFrom: number;
  /** What could be done, to be tried out. */
  readonly changes: readonly Change[];
}

/** A share, with the range of nine in ten of the sets of rates that the record leaves open. */
export interface Chance {
  readonly chance: number;
  readonly low: number;
  readonly high: number;
}
export interface SlotOfGroup {
  /** In use at once if nobody had to wait: the mean of the most, and what one day in ten reaches. */
  readonly wanted: number;
  readonly wantedTenth: number;
  /** Requests of a day that fall into the slot. */
  readonly asked: number;
  /** That a request of this slot waits too long; null where hardly any is made. */
  readonly late: Chance | null;
}
/** Slots [from, to) in which a request is likely to wait too long. */
export interface Clash extends Chance {
  readonly group: Group;
  readonly from: number;
  readonly to: number;
  /** What is missing more often. */
  readonly short: 'item' | 'hands';
  /** Requests of these slots that wait too long, a day. */
  readonly lateADay: number;
}
export interface Waits {
  /** Place among the sources. */
  readonly source: number;
  /** That it waits too long at least once. */
  readonly chance: number;
  /** The slot in which it most often does. */
  readonly slot: number;
}
export interface Forecast {
  readonly groups: Readonly<Record<Group, readonly SlotOfGroup[]>>;
  readonly clashes: readonly Clash[];
  readonly waits: readonly Waits[];
  readonly helps: readonly Help[];
  readonly askedADay: number;
  readonly lateADay: number;
}

/** One thing that a person could do. Places are those of the scenario. */
export type Change =
  /** One more, from now until the last clash is over. */
  | { readonly kind: 'borrow'; readonly item: SimItem }
  /** Two people change rooms: one goes under the track, and is moved as they would be there. */
  | {
      readonly kind: 'swap-to-track';
      readonly source: number;
      readonly becomes: Source;
      /** Label of the bed under the track. */
      readonly track: string;
    }
  /** Two people do nothing but moves while it is tight. `hands`: what that adds to the hands there are. */
  | { readonly kind: 'pair-of-aides'; readonly hands: number }
  /** A planned move of one person, so many minutes later or earlier. */
  | { readonly kind: 'move-session'; readonly source: number; readonly due: number; readonly by: number };

export interface Help {
  readonly change: Change;
  /** Slots [from, to) of the tight stretch that it was tried for. */
  readonly from: number;
  readonly to: number;
  /** Requests that wait too long until the end: as it is, and so. */
  readonly before: number;
  readonly after: number;
}
