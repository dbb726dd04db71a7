import { onScopeDispose, ref, shallowRef, watch } from 'vue';
import { huddlePage, type HuddlePage, type Problem } from '@footboard/shared/wire/http';
import { getPage } from '../asking/get-page.ts';
import { useBoardStore } from '../sync/board-store.ts';

/** What is agreed changes no row of the board: other screens hear of it this often. */
const ASK_EVERY_MS = 20_000;

/**
 * The huddle list of a ward, asked for again whenever the board moves. One question at a time: while
 * one is on its way, any number of changes make one more. After a failure the last list is kept and
 * `problem` says that it is old.
 */
export function useHuddle(ward: () => string) {
  const page = shallowRef<HuddlePage | null>(null);
  const problem = shallowRef<Problem | null>(null);
  const asking = ref(false);
  const board = useBoardStore();
  let again = false;

  async function ask(): Promise<void> {
    if (asking.value) {
      again = true;
      return;
    }
    asking.value = true;
    do {
      again = false;
      const of = ward();
      const asked = await getPage(`/api/wards/${of}/huddle`, huddlePage);
      if (of !== ward()) again = true;
      else if (asked.ok) {
        page.value = asked.page;
        problem.value = null;
      } else problem.value = asked.problem;
    } while (again);
    asking.value = false;
  }

  watch(
    [ward, () => board.snapshot?.feed, () => board.age.state],
    ([of], [before]) => {
      if (of !== before) page.value = null;
      if (board.snapshot) void ask();
    },
    { immediate: true },
  );
  const ticking = setInterval(() => board.snapshot && void ask(), ASK_EVERY_MS);
  onScopeDispose(() => clearInterval(ticking));
  return { page, problem, ask };
}
