import { defineStore } from 'pinia';
import { computed, ref, shallowRef } from 'vue';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { staffList, type Problem, type StaffList } from '@footboard/shared/wire/http';
import { getPage } from '../asking/get-page.ts';

export type StaffMember = StaffList['staff'][number];
const KEY = 'footboard.staff';
const RECENT = 'footboard.recent';
const RECENT_KEPT = 12;

/**
 * Whose name entries carry. With sign-in off it is chosen from the ward's staff list and kept in this
 * browser until changed; with accounts it follows who has signed in (me-store.ts) and is not kept.
 */
export const useWhoStore = defineStore('who', () => {
  const ward = ref<WardId | null>(null);
  const staff = shallowRef<readonly StaffMember[]>([]);
  const chosenId = ref<StaffId | null>(read(KEY) as StaffId | null);
  /** Somebody signed in who may stand on no list of this ward. */
  const spoken = shallowRef<StaffMember | null>(null);
  const recent = ref<readonly string[]>((read(RECENT) ?? '').split(' ').filter((id) => id !== ''));
  const problem = shallowRef<Problem | null>(null);
  const chosen = computed(
    () =>
      staff.value.find((s) => s.staff === chosenId.value && s.active) ??
      (spoken.value?.staff === chosenId.value ? spoken.value : null),
  );
  /** Active members, whoever used this device last first. */
  const recentFirst = computed(() => {
    const rank = new Map(recent.value.map((id, i) => [id, i]));
    const of = (member: StaffMember) => rank.get(member.staff) ?? RECENT_KEPT;
    return staff.value.filter((s) => s.active).toSorted((a, b) => of(a) - of(b));
  });

  async function load(of: WardId): Promise<void> {
    ward.value = of;
    const asked = await getPage(`/api/wards/${of}/staff`, staffList);
    problem.value = asked.ok ? null : asked.problem;
    if (asked.ok) staff.value = asked.page.staff;
  }

  function choose(id: StaffId | null): void {
    chosenId.value = id;
    keep(KEY, id);
  }

  /** With accounts: the name of whoever signed in. What is kept of the time without sign-in goes. */
  function speakFor(member: StaffMember | null): void {
    choose(null);
    spoken.value = member;
    chosenId.value = member?.staff ?? null;
  }

  /** A name that nobody has proven, for an entry that may go out unconfirmed. */
  function claim(id: StaffId): void {
    spoken.value = null;
    chosenId.value = id;
  }

  /** Ids only: this device lists first who signed on it last. */
  function usedBy(id: StaffId): void {
    recent.value = [id, ...recent.value.filter((one) => one !== id)].slice(0, RECENT_KEPT);
    keep(RECENT, recent.value.join(' '));
  }

  const nameOf = (id: string): string => staff.value.find((s) => s.staff === id)?.name ?? 'a staff member';

  return {
    ward,
    staff,
    recentFirst,
    chosenId,
    chosen,
    problem,
    load,
    choose,
    speakFor,
    claim,
    usedBy,
    nameOf,
  };
});

function read(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
function keep(key: string, value: string | null): void {
  try {
    if (value) localStorage.setItem(key, value);
    else localStorage.removeItem(key);
  } catch {
    // A browser without storage asks again on the next page.
  }
}
