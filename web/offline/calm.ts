/** When a wall may reload by itself: nothing has changed on it for a while, and it is not waited for for ever. */
import { onScopeDispose, watch } from 'vue';

/** Common practice, no source. */
const CALM_MS = 60_000;
const AT_THE_LATEST_MS = 60 * 60_000;

/**
 * @param wanted true from when a newer version is there
 * @param feed what the wall has painted; a change is the end of calm
 * @param act done once, at the first calm moment
 */
export function whenCalm(wanted: () => boolean, feed: () => number | null, act: () => void): void {
  let calm: ReturnType<typeof setTimeout> | undefined;
  let latest: ReturnType<typeof setTimeout> | undefined;
  const forget = () => {
    clearTimeout(calm);
    clearTimeout(latest);
    calm = latest = undefined;
  };
  const done = () => {
    forget();
    act();
  };
  watch(
    [wanted, feed],
    ([want]) => {
      if (!want) return forget();
      clearTimeout(calm);
      calm = setTimeout(done, CALM_MS);
      latest ??= setTimeout(done, AT_THE_LATEST_MS);
    },
    { immediate: true },
  );
  onScopeDispose(forget);
}
