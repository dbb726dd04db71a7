import { computed, onScopeDispose, shallowRef, watch } from 'vue';
import type { Problem } from '@footboard/shared/wire/http';
import { roundPage, type RoundPage } from '@footboard/shared/wire/round';
import { getPage } from '../../asking/get-page.ts';
import { useWhoStore } from '../../people/who-store.ts';
import { useBoardStore } from '../../sync/board-store.ts';

/** Ranks change with the clock as well; this often the server is asked without a change of the board. */
const ASK_EVERY_MS = 60_000;

const orderOf = (page: RoundPage | null): string =>
  page ? [...page.entries.map((e) => e.stay), '/', ...page.notListed.map((e) => e.stay)].join() : '';

/**
 * The round, asked for again whenever the board moves. What is shown stays as it is, in its order,
 * until whoever looks at it asks for the newer one: nothing moves under a finger. `latest` is what
 * holds now, for what must be said at once.
 */
export function useRound(ward: () => string) {
  const shown = shallowRef<RoundPage | null>(null);
  const latest = shallowRef<RoundPage | null>(null);
  /** The list that stood here before, so that what moved can be marked. */
  const before = shallowRef<RoundPage | null>(null);
  const problem = shallowRef<Problem | null>(null);
  const board = useBoardStore();
  const who = useWhoStore();
  let running: Promise<void> | null = null;
  let again = false;

  /** One question at a time; resolves once an answer is here that was asked for after the call. */
  function ask(): Promise<void> {
    again = true;
    running ??= askOn().finally(() => (running = null));
    return running;
  }
  async function askOn(): Promise<void> {
    while (again) {
      again = false;
      const of = ward();
      const headers = who.chosenId ? { 'x-footboard-staff': who.chosenId } : {};
      const asked = await getPage(`/api/wards/${of}/round`, roundPage, headers);
      if (of !== ward()) again = true;
      else if (asked.ok) {
        latest.value = asked.page;
        shown.value ??= asked.page;
        problem.value = null;
      } else problem.value = asked.problem;
    }
  }
  function showLatest(): void {
    if (orderOf(latest.value) !== orderOf(shown.value)) before.value = shown.value;
    shown.value = latest.value;
  }
  /** After whoever holds the phone did something themselves, they see what came of it. */
  async function askAndShow(): Promise<void> {
    await ask();
    showLatest();
  }

  watch(
    [ward, () => board.snapshot?.feed, () => board.age.state, () => who.chosenId],
    ([of, , , me], [wardBefore, , , was]) => {
      if (of !== wardBefore || me !== was) before.value = shown.value = null;
      if (board.snapshot) void ask();
    },
    { immediate: true },
  );
  const ticking = setInterval(() => board.snapshot && void ask(), ASK_EVERY_MS);
  onScopeDispose(() => clearInterval(ticking));

  const changed = computed(() => orderOf(latest.value) !== orderOf(shown.value));
  return { shown, latest, before, problem, changed, ask, askAndShow, showLatest };
}
