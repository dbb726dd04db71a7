/**
 * Which beds have news: what moves somebody changed while this screen looked, within the last ten
 * minutes. After a reload nothing is news: what stood before is not known here.
 */
import { computed, shallowRef, watch, type ComputedRef } from 'vue';
import type { BedView } from '@footboard/shared/capabilities/board/view';

export const NEWS_FOR_MS = 10 * 60_000;

/** What somebody would act on; ages and counts of the day are not news. */
export function movesBy({ state, stay }: BedView): string {
  if (!stay) return state;
  const { shown, trust, holds, plan, checkBeforeMoving, walkingSupport, firstTimeUpPending, isolation } =
    stay;
  return JSON.stringify([
    state,
    stay.stay,
    shown,
    stay.scope.kind,
    trust.state,
    holds.map((hold) => [hold.scope, hold.reviewAt, hold.reviewDue]),
    plan && [plan.day, plan.night].map((all) => all.map((p) => [p.task, p.hold, p.people, p.aid, p.with])),
    checkBeforeMoving,
    walkingSupport,
    firstTimeUpPending,
    isolation,
  ]);
}

/**
 * @param now the server's clock, by the minute
 */
export function useChanged(
  beds: () => readonly BedView[],
  now: () => number,
): ComputedRef<ReadonlyMap<string, number>> {
  const rows = new Map<string, { row: BedView; moves: string }>();
  const since = shallowRef<ReadonlyMap<string, number>>(new Map());
  watch(
    beds,
    (all) => {
      const found = new Map(since.value);
      const first = rows.size === 0;
      for (const row of all) {
        const before = rows.get(row.bed);
        if (before?.row === row) continue;
        const moves = movesBy(row);
        if (!first && before?.moves !== moves) found.set(row.bed, now());
        rows.set(row.bed, { row, moves });
      }
      since.value = found;
    },
    { immediate: true },
  );
  return computed(() => {
    const at = now();
    return new Map([...since.value].filter(([, when]) => at - when < NEWS_FOR_MS));
  });
}
