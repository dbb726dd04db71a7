/** Initials beside each bed, on a wall that was paired to show them. Asked for again when the ward's stays change. */
import { computed, onUnmounted, shallowRef, watch, type ComputedRef } from 'vue';
import { initialsPage } from '@footboard/shared/wire/access';
import { getPage } from '../asking/get-page.ts';
import { useMeStore } from '../people/me-store.ts';
import { useBoardStore } from '../sync/board-store.ts';

const AGAIN_MS = 60_000;

/** By stay; null where this screen shows none. */
export function useInitials(ward: () => string): ComputedRef<ReadonlyMap<string, string> | null> {
  const me = useMeStore();
  const board = useBoardStore();
  const wanted = computed(() => me.device?.level === 'initials' && me.device.ward === ward());
  const stays = computed(() => board.beds.flatMap(({ stay }) => (stay ? [stay.stay] : [])).join(' '));
  const found = shallowRef<ReadonlyMap<string, string>>(new Map());
  let again: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;

  async function ask(): Promise<void> {
    clearTimeout(again);
    const turn = ++asked;
    const answer = await getPage(`/api/wards/${ward()}/initials`, initialsPage);
    if (turn !== asked) return;
    if (answer.ok) found.value = new Map(Object.entries(answer.page.initials));
    // Letters of before would stand beside somebody else.
    else [found.value, again] = [new Map(), setTimeout(() => void ask(), AGAIN_MS)];
  }
  watch(
    [wanted, stays, ward],
    ([on, all]) => {
      if (on && all !== '') void ask();
      else found.value = new Map();
    },
    { immediate: true },
  );
  onUnmounted(() => {
    asked += 1;
    clearTimeout(again);
  });
  return computed(() => (wanted.value ? found.value : null));
}
