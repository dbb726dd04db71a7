/**
 * Who was confirmed at the bed, by whom, and when: for one stay at a time, for a few minutes, on this
 * page alone. A bed's next occupant, another name signed in or the time passed drops it.
 */
import { defineStore } from 'pinia';
import { shallowRef } from 'vue';

/** Practice, no source: as long as nobody walks away from the bed and back. */
export const CONFIRMED_FOR_MS = 5 * 60_000;

export type ConfirmedBy = 'two-identifiers' | 'wristband' | 'bed-code-and-name';
export interface Confirmed {
  readonly stay: string;
  /** The staff id of whoever confirmed; null when nobody had said who they are. */
  readonly staff: string | null;
  readonly by: ConfirmedBy;
  /** This device's clock (epoch ms). */
  readonly at: number;
}

/** A clock put back must not make it last longer. */
export const holds = (one: Confirmed | null, stay: string, staff: string | null, now: number): boolean =>
  one !== null &&
  one.stay === stay &&
  one.staff === staff &&
  now >= one.at &&
  now - one.at < CONFIRMED_FOR_MS;

export const useConfirmedStore = defineStore('confirmed-person', () => {
  const last = shallowRef<Confirmed | null>(null);
  return {
    last,
    confirm: (one: Confirmed) => void (last.value = one),
    drop: () => void (last.value = null),
  };
});
