/** Display receipts of the ward, while something shown here was corrected or taken back. */
import { onUnmounted, shallowRef, watch, type ShallowRef } from 'vue';
import { receiptsPage, type ReceiptsPage } from '@footboard/shared/wire/access';
import { getPage } from '../../asking/get-page.ts';

const AGAIN_MS = 15_000;

export function useReceipts(ward: () => string, wanted: () => boolean): ShallowRef<ReceiptsPage | null> {
  const page: ShallowRef<ReceiptsPage | null> = shallowRef(null);
  let timer: ReturnType<typeof setInterval> | undefined;
  const ask = async () => {
    const answer = await getPage(`/api/wards/${ward()}/receipts`, receiptsPage);
    // What is not known now is not said: an old "seen by all" would be a wrong one.
    page.value = answer.ok ? answer.page : null;
  };
  watch(
    [wanted, ward],
    ([on]) => {
      clearInterval(timer);
      page.value = null;
      if (!on) return;
      void ask();
      timer = setInterval(() => void ask(), AGAIN_MS);
    },
    { immediate: true },
  );
  onUnmounted(() => clearInterval(timer));
  return page;
}
