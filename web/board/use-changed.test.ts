import { describe, expect, it } from 'vitest';
import { effectScope, nextTick, ref, shallowRef } from 'vue';
import type { BedView } from '@footboard/shared/capabilities/board/view';
import { NOON, bedRow, holdRow, stayRow } from './rows.testkit.ts';
import { NEWS_FOR_MS, useChanged } from './use-changed.ts';

function watched(first: BedView[]) {
  const beds = shallowRef<BedView[]>([]);
  const now = ref(NOON);
  const news = effectScope().run(() => useChanged(() => beds.value, () => now.value))!; // prettier-ignore
  beds.value = first;
  return { beds, now, news, names: () => [...news.value.keys()] };
}

describe('what is news on a wall', () => {
  it('WALL-6 is nothing of the board that a screen starts with', async () => {
    const { names } = watched([bedRow('A1'), bedRow('A2')]);
    await nextTick();
    expect(names()).toEqual([]);
  });
  it('WALL-6 is what moves somebody, for ten minutes, and no longer', async () => {
    const { beds, now, names } = watched([bedRow('A1'), bedRow('A2')]);
    await nextTick();
    beds.value = [bedRow('A1', stayRow({ holds: [holdRow()] })), beds.value[1]!];
    await nextTick();
    expect(names()).toEqual(['bed-A1']);
    now.value += NEWS_FOR_MS - 1;
    expect(names()).toEqual(['bed-A1']);
    now.value += 1;
    expect(names()).toEqual([]);
  });
  it('WALL-6 is not that somebody was up, and is that somebody else lies there', async () => {
    const { beds, names } = watched([bedRow('A1'), bedRow('A2')]);
    await nextTick();
    const up = stayRow({ lastUp: { ...stayRow().lastUp!, at: NOON } });
    beds.value = [bedRow('A1', up), bedRow('A2', stayRow({ stay: 's9' as typeof up.stay }))];
    await nextTick();
    expect(names()).toEqual(['bed-A2']);
  });
});
