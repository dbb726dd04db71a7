import { onBeforeUnmount, onMounted, ref, type Ref } from 'vue';

/** What a picture is drawn for where nothing can be measured (no layout, as in a test). */
const UNMEASURED = 640;

/** Width of an element in CSS pixels as it is laid out, followed while it changes; null until it is known. */
export function useWidth(box: Ref<HTMLElement | null>): Ref<number | null> {
  const width = ref<number | null>(null);
  let watching: ResizeObserver | null = null;
  onMounted(() => {
    const measured = () => box.value?.clientWidth || UNMEASURED;
    width.value = measured();
    if (typeof ResizeObserver === 'undefined' || !box.value) return;
    watching = new ResizeObserver(() => {
      const now = Math.floor(measured());
      if (now !== width.value) width.value = now;
    });
    watching.observe(box.value);
  });
  onBeforeUnmount(() => watching?.disconnect());
  return width;
}
