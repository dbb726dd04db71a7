/** Keeps the check under way on this device, and offers the one that was left here. */
import { onMounted, shallowRef, watch, type ShallowRef } from 'vue';
import type { Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { useWhoStore } from '../../people/who-store.ts';
import { useEntryContext, type Entry } from '../entry/use-entry.ts';
import type { CheckDraft } from './check-draft.ts';
import { halfDone, stillCounts, type HalfDone, type Whose } from './half-done.ts';

/** From here on the outbox has the entry, or the log. */
const HANDED_ON = new Set(['recorded', 'not-sent', 'needs-sign-in']);

export function useHalfDone(given: {
  readonly stay: string;
  readonly draft: ShallowRef<CheckDraft | null>;
  readonly docs: () => { readonly protocol: Protocol; readonly rules: RulesDocument };
  readonly entry: Entry;
}): {
  /** The one left here for this stay by whoever is here now; null once one is under way. */
  readonly left: ShallowRef<HalfDone | null>;
  /** One was left, and was put away because it no longer counts. */
  readonly tooOld: ShallowRef<boolean>;
  goOn(): void;
  putAway(): Promise<void>;
} {
  const context = useEntryContext();
  const who = useWhoStore();
  const left = shallowRef<HalfDone | null>(null);
  const tooOld = shallowRef(false);
  let begun = context.now();
  const whose = (): Whose | null =>
    who.chosenId ? { ward: context.ward, stay: given.stay, staff: who.chosenId } : null;

  async function look(): Promise<void> {
    const mine = whose();
    const kept = mine && (await halfDone.of(mine));
    if (given.draft.value) return;
    const counts = kept && stillCounts(kept, { ...given.docs(), now: context.now() });
    left.value = counts ? kept : null;
    tooOld.value = Boolean(kept) && !counts;
    if (mine && tooOld.value) await halfDone.drop(mine);
  }
  onMounted(look);
  // Somebody else is here now: what they did not begin is not theirs to go on with.
  watch(
    () => who.chosenId,
    () => void look(),
  );
  // Each change is written at once: a battery gives no notice.
  watch(given.draft, (draft, before) => {
    const mine = whose();
    if (!draft || !mine || HANDED_ON.has(given.entry.state.value.at)) return;
    if (!before && left.value === null) begun = context.now();
    left.value = null;
    const { id, version } = given.docs().protocol;
    void halfDone.put({ ...mine, begun, protocol: { id, version }, draft });
  });
  watch(given.entry.state, ({ at }) => {
    const mine = whose();
    if (mine && HANDED_ON.has(at)) void halfDone.drop(mine);
  });
  return {
    left,
    tooOld,
    goOn() {
      if (!left.value) return;
      begun = left.value.begun;
      given.draft.value = left.value.draft;
    },
    async putAway() {
      const mine = whose();
      left.value = null;
      if (mine) await halfDone.drop(mine);
    },
  };
}
