import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { effectScope, nextTick, ref } from 'vue';
import { whenCalm } from './calm.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function wall() {
  const wanted = ref(false);
  const feed = ref(1);
  const act = vi.fn<() => void>();
  const scope = effectScope();
  scope.run(() =>
    whenCalm(
      () => wanted.value,
      () => feed.value,
      act,
    ),
  );
  return { wanted, feed, act, scope };
}

describe('a wall with a newer version', () => {
  it('waits until nothing has changed for a minute', async () => {
    const { wanted, feed, act, scope } = wall();
    await vi.advanceTimersByTimeAsync(120_000);
    expect(act).not.toHaveBeenCalled();
    wanted.value = true;
    await nextTick();
    await vi.advanceTimersByTimeAsync(59_000);
    feed.value += 1;
    await nextTick();
    await vi.advanceTimersByTimeAsync(59_000);
    expect(act).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1_000);
    expect(act).toHaveBeenCalledTimes(1);
    scope.stop();
  });

  it('does not wait for ever on a ward that is never calm', async () => {
    const { wanted, feed, act, scope } = wall();
    wanted.value = true;
    for (let minute = 0; minute < 60; minute++) {
      await nextTick();
      expect(act).not.toHaveBeenCalled();
      for (let half = 0; half < 2; half++) {
        await vi.advanceTimersByTimeAsync(30_000);
        feed.value += 1;
        await nextTick();
      }
    }
    expect(act).toHaveBeenCalledTimes(1);
    scope.stop();
  });
});
