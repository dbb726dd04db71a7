import { computed, onScopeDispose, ref, shallowRef, watch } from 'vue';
import type { Problem } from '@footboard/shared/wire/http';
import {
  dayPlanPage,
  planChecked,
  proposedDay,
  type DayPlanPage,
  type PlanChecked,
  type ProposedDay,
} from '@footboard/shared/wire/planning';
import { getPage } from '../../asking/get-page.ts';
import { postPage } from '../../asking/post-page.ts';
import { useSending } from '../../commanding/use-sending.ts';
import { useWhoStore } from '../../people/who-store.ts';
import { SLOT_MS, type Drawn } from './plan-lines.ts';

/** The day plan of a ward: the accepted one, a proposal that may be changed by hand, and accepting it. */
export function useDayPlan(ward: () => string) {
  const who = useWhoStore();
  const page = shallowRef<DayPlanPage | null>(null);
  const proposal = shallowRef<ProposedDay | null>(null);
  const draft = shallowRef<readonly Drawn[]>([]);
  const edited = ref(false);
  /** What the plan as it is changed breaks by now, because the ward has changed since. */
  const breaches = shallowRef<PlanChecked['breaches']>([]);
  const problem = shallowRef<Problem | null>(null);
  const planFailed = shallowRef<Problem | null>(null);
  const working = shallowRef<AbortController | null>(null);
  const { send, sending, problem: refused, forget } = useSending(ward);

  async function ask(): Promise<void> {
    const of = ward();
    const asked = await getPage(`/api/wards/${of}/day-plan`, dayPlanPage);
    if (of !== ward()) return;
    problem.value = asked.ok ? null : asked.problem;
    if (asked.ok) page.value = asked.page;
  }
  watch(
    ward,
    () => {
      working.value?.abort();
      [page.value, proposal.value] = [null, null];
      void ask();
    },
    { immediate: true },
  );

  async function make(): Promise<void> {
    const mine = new AbortController();
    [working.value, planFailed.value] = [mine, null];
    forget();
    const asked = await postPage(`/api/wards/${ward()}/day-plan`, {}, proposedDay, {
      staff: who.chosenId,
      signal: mine.signal,
    });
    if (working.value !== mine) return;
    working.value = null;
    if (!asked) return;
    if (!asked.ok) {
      planFailed.value = asked.problem;
      return;
    }
    [page.value, proposal.value, edited.value] = [asked.page, asked.page, false];
    [draft.value, breaches.value] = [asked.page.proposal.placed, []];
  }
  function stop(): void {
    working.value?.abort();
    working.value = null;
  }
  onScopeDispose(stop);

  const accepted = computed<readonly Drawn[]>(() =>
    (page.value?.accepted?.placements ?? []).flatMap(({ start, visit, crew, items }) => {
      const at = (start - page.value!.start) / SLOT_MS;
      return [{ visit, start: at, crew, items }];
    }),
  );
  /** What is shown: the proposal as it was changed, else the accepted plan. */
  const shown = computed(() => (proposal.value ? draft.value : accepted.value));

  /**
   * Null leaves the visit out. The checker is asked first: a change that breaks a rule is not made, and
   * what it breaks is answered. What other visits break by now stands in `breaches`.
   */
  async function change(visit: string, to: Drawn | null): Promise<PlanChecked['breaches'] | Problem | null> {
    const of = proposal.value;
    if (!of) return null;
    const next = [...draft.value.filter((one) => one.visit !== visit), ...(to ? [to] : [])];
    const placements = next.map(({ visit: id, start, crew, items }) => ({ visit: id, start, crew, items }));
    const asked = await postPage(
      `/api/wards/${ward()}/day-plan/check`,
      { start: of.start, placements },
      planChecked,
      { staff: who.chosenId, signal: new AbortController().signal },
    );
    if (!asked || proposal.value !== of) return null;
    if (!asked.ok) return asked.problem;
    const own = asked.page.breaches.filter((one) => one.visit === visit || one.other === visit);
    if (own.length > 0) return own;
    [draft.value, edited.value, breaches.value] = [next, true, asked.page.breaches];
    forget();
    return null;
  }
  function discard(): void {
    proposal.value = null;
    forget();
  }

  async function accept(): Promise<boolean> {
    const of = proposal.value;
    if (!of) return false;
    const visits = new Map(of.visits.map((one) => [one.visit as string, one]));
    const taken = await send('accept-day-plan', {
      day: of.day,
      placements: draft.value.flatMap(({ visit, start, crew, items }) => {
        const is = visits.get(visit);
        if (!is) return [];
        const at = new Date(of.start + start * SLOT_MS).toISOString();
        return [{ visit, stay: is.stay, kind: is.kind, start: at, minutes: is.length * 15, crew, items }];
      }),
      hash: of.hash,
      weightsVersion: of.proposal.weightsVersion,
      how: of.proposal.how,
      gap: of.proposal.gap,
      edited: edited.value,
      unplaced: leftOver(of, draft.value),
    });
    if (!taken) return false;
    proposal.value = null;
    await ask();
    return true;
  }

  return {
    page,
    proposal,
    shown,
    edited,
    breaches,
    problem,
    planFailed,
    working,
    sending,
    refused,
    ask,
    make,
    stop,
    change,
    discard,
    accept,
  };
}

/** All that was asked for and is not in the plan as it is accepted, with what kept it out. */
function leftOver({ visits, proposal }: ProposedDay, draft: readonly Drawn[]) {
  const placed = new Set(draft.map(({ visit }) => visit));
  const bounds = new Map(proposal.unplaced.map(({ visit, bound }) => [visit as string, bound]));
  return visits
    .filter(({ visit }) => !placed.has(visit))
    .map(({ visit, stay, kind }) => ({ visit, stay, kind, why: bounds.get(visit) ?? 'left-out' }));
}
