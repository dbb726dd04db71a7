/** Who should be in the bed, as far as this page may say it, and whether they were confirmed at the bed. */
import { computed, watch } from 'vue';
import type { StayPage, Problem } from '@footboard/shared/wire/http';
import { useWhoStore } from '../../people/who-store.ts';
import { confirmWords as say } from './confirm-words.ts';
import { holds, useConfirmedStore, type ConfirmedBy } from './confirmed-store.ts';

export function useIdentity(given: {
  readonly bed: () => string | undefined;
  readonly stay: () => string | null;
  readonly read: () => StayPage | null;
  readonly problem: () => Problem | null;
  /** Ticks, so that a confirmation that ran out is seen to. */
  readonly tick: () => number;
}) {
  const store = useConfirmedStore();
  const who = useWhoStore();
  const identity = computed(() => given.read()?.identity ?? null);
  /** Why no name is shown, in words; empty when one is. */
  const why = computed(() => {
    if (identity.value) return '';
    if (given.problem()?.status === 401) return say('name-withheld');
    if (given.problem()) return say('not-readable');
    return given.read() ? say('no-name') : say('reading');
  });
  const isConfirmed = (stay: string | null): boolean =>
    stay !== null && holds(store.last, stay, who.chosenId, Date.now());
  const confirmed = computed(() => {
    given.tick();
    return isConfirmed(given.stay()) ? store.last : null;
  });
  // Whoever comes into this bed next is not the one who was confirmed, and a walk to another bed ends it too.
  watch([given.bed, given.stay], ([bed, stay]) => {
    if (store.last && (bed === undefined || (stay !== null && stay !== store.last.stay))) store.drop();
  });
  function confirm(stay: string, by: ConfirmedBy): void {
    store.confirm({ stay, staff: who.chosenId, by, at: Date.now() });
  }
  return { identity, why, confirmed, isConfirmed, confirm };
}
