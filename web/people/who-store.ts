import { defineStore } from 'pinia';
import { computed, ref, shallowRef } from 'vue';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { staffList, type Problem, type StaffList } from '@footboard/shared/wire/http';
import { getPage } from '../asking/get-page.ts';

export type StaffMember = StaffList['staff'][number];
const KEY = 'footboard.staff';

/** Who is using this device: chosen from the ward's staff list, kept in this browser until changed. */
export const useWhoStore = defineStore('who', () => {
  const ward = ref<WardId | null>(null);
  const staff = shallowRef<readonly StaffMember[]>([]);
  const chosenId = ref<StaffId | null>(read());
  const problem = shallowRef<Problem | null>(null);
  const chosen = computed(() => staff.value.find((s) => s.staff === chosenId.value && s.active) ?? null);

  async function load(of: WardId): Promise<void> {
    ward.value = of;
    const asked = await getPage(`/api/wards/${of}/staff`, staffList);
    problem.value = asked.ok ? null : asked.problem;
    if (asked.ok) staff.value = asked.page.staff;
  }

  function choose(id: StaffId | null): void {
    chosenId.value = id;
    try {
      if (id) localStorage.setItem(KEY, id);
      else localStorage.removeItem(KEY);
    } catch {
      // A browser without storage asks again on the next page.
    }
  }

  const nameOf = (id: string): string => staff.value.find((s) => s.staff === id)?.name ?? 'a staff member';

  return { ward, staff, chosenId, chosen, problem, load, choose, nameOf };
});

function read(): StaffId | null {
  try {
    return localStorage.getItem(KEY) as StaffId | null;
  } catch {
    return null;
  }
}
