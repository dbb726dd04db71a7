import { shallowRef, watch, type ShallowRef } from 'vue';
import { stayPage, type Problem, type StayPage } from '@footboard/shared/wire/http';
import { getPage } from '../../asking/get-page.ts';
import { useMeStore } from '../../people/me-store.ts';

/** Whoever may not read it (any more) is not shown what somebody before them read. */
const NOT_YOURS: ReadonlySet<number> = new Set([401, 403]);

/**
 * The page of one stay, asked for again whenever `version` grows (the board says that the stay has a
 * new fact) and whenever somebody signs in or off. A late answer for a stay that is no longer wanted is dropped: one person's name must
 * never stand beside another's plan.
 */
export function useStayPage(
  ward: () => string,
  stay: () => string | null,
  version: () => number | null,
): {
  readonly page: Readonly<ShallowRef<StayPage | null>>;
  readonly problem: Readonly<ShallowRef<Problem | null>>;
  reload(): Promise<void>;
} {
  const page = shallowRef<StayPage | null>(null);
  const problem = shallowRef<Problem | null>(null);
  let asked = 0;
  const me = useMeStore();

  async function reload(): Promise<void> {
    const wanted = stay();
    const turn = ++asked;
    if (page.value?.stay !== wanted) page.value = null;
    if (wanted === null) return;
    const answer = await getPage(`/api/wards/${ward()}/stays/${wanted}`, stayPage);
    if (turn !== asked) return;
    problem.value = answer.ok ? null : answer.problem;
    if (answer.ok) page.value = answer.page;
    else if (NOT_YOURS.has(answer.problem.status)) page.value = null;
  }
  watch([ward, stay, version, () => me.person?.staff], reload, { immediate: true });
  return { page, problem, reload };
}
