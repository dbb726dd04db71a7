import { watch } from 'vue';

/** Paper by day, slate by night. Returns the way to stop following. */
export function followNight(isNight: () => boolean): () => void {
  return watch(
    isNight,
    (night) => {
      document.documentElement.dataset['theme'] = night ? 'night' : 'day';
    },
    { immediate: true },
  );
}
