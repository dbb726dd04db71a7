/** The ward's clock in whole minutes: what is counted in minutes is drawn anew once in each, not with every beat. */
import { computed, type ComputedRef } from 'vue';
import { MINUTE } from '@footboard/shared/kernel/times';
import { useBoardStore } from '../sync/board-store.ts';

export function useMinute(): ComputedRef<number> {
  const board = useBoardStore();
  return computed(() => Math.floor((board.now ?? Date.now()) / MINUTE) * MINUTE);
}
