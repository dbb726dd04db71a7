/**
 * What a simulated day is made of. Pure data that can be handed to a worker thread; times are minutes
 * from the start of the first slot.
 */
export const SLOT_MINUTES = 15;

/** What requests compete for. `hands`: people beside the one who is there anyway. */
export const GROUPS = ['lift', 'standing-aid', 'lateral-aid', 'hands'] as const;
export type Group = (typeof GROUPS)[number];
export type AidGroup = Exclude<Group, 'hands'>;

export interface SimItem {
  readonly item: string;
  readonly group: AidGroup;
  /** Chance that it can be used at all: 1 when somebody has seen that it can. */
  readonly sure: number;
  /** Somebody has it until about then; 0 when it is free. */
  readonly freeFrom: number;
  /** The stretch it is there for; [0, Infinity) unless it is borrowed. */
  readonly from: number;
  readonly to: number;
  /** Mean time of one use: fetched, used, wiped and brought back. */
  readonly minutes: number;
  /** Of that, how long people stand at the bed. */
  readonly handMinutes: number;
}

/** What one move asks for, all at once. */
export interface Need {
  readonly group: AidGroup | null;
  /** Places in the list of items of those that fit; empty with no group. */
  readonly items: readonly number[];
  readonly hands: number;
  /** Mean time at the bed of a move without an item. */
  readonly minutes: number;
}

export const DUE_KINDS = ['visit', 'meal', 'back-to-bed', 'turn'] as const;
export type DueKind = (typeof DUE_KINDS)[number];
/** A move that is meant to happen about then. */
export interface Due {
  readonly kind: DueKind;
  readonly at: number;
  /** Somewhere in [at - spread, at + spread]. */
  readonly spread: number;
  readonly chance: number;
  readonly need: Need;
  /** When it happens, so does this one, so many minutes later. */
  readonly follows: { readonly after: number; readonly need: Need } | null;
}

/** A bed with somebody in it: at most one open request at a time. */
export interface Source {
  readonly bed: string;
  /** Row of the rates that its toilet and care moves come by; `scale` times as often. */
  readonly type: number;
  readonly scale: number;
  /** By day and by night; null when that move is on hold. */
  readonly care: { readonly day: Need | null; readonly night: Need | null };
  /** On the ward from and until (minutes). */
  readonly from: number;
  readonly to: number;
  readonly due: readonly Due[];
}

export interface Scenario {
  readonly slots: number;
  readonly items: readonly SimItem[];
  readonly sources: readonly Source[];
  /** People who can be spared for moves, by slot. */
  readonly hands: readonly number[];
  /** Everybody on, by slot: when nobody else is being moved, all of them can come. */
  readonly on: readonly number[];
  /** Whether the night plan applies, by slot. */
  readonly night: readonly boolean[];
  /** A request that waits longer than this is late (minutes). */
  readonly lateAfter: number;
  /** Stages of a hold time: 1 is exponential. */
  readonly holdStages: number;
}

/** Toilet and care moves per minute, by type of stay and slot. */
export type Rates = readonly (readonly number[])[];
