/** The size of the window, followed: which plan the wall is drawn by. */
import { computed, onMounted, onUnmounted, ref, type ComputedRef } from 'vue';
import { DEFAULT_PANEL, type Panel } from '@footboard/shared/capabilities/wards/values';
import { widestLabel } from './label.ts';
import { planHand, planWall, type WallPlan } from './legible.ts';

/** Narrower than this a screen is held in a hand. */
const HAND = 720;

export function usePanel(
  labels: () => readonly string[],
  panel: () => Panel | undefined,
): { plan: ComputedRef<WallPlan>; hand: ComputedRef<boolean>; width: ComputedRef<number> } {
  const width = ref(window.innerWidth);
  const height = ref(window.innerHeight);
  const measure = () => {
    width.value = window.innerWidth;
    height.value = window.innerHeight;
  };
  onMounted(() => window.addEventListener('resize', measure));
  onUnmounted(() => window.removeEventListener('resize', measure));
  const hand = computed(() => width.value < HAND);
  return {
    hand,
    width: computed(() => width.value),
    plan: computed(() => {
      const { length } = labels();
      const widest = widestLabel(labels());
      if (hand.value) return planHand(length, width.value, widest);
      return planWall(Math.max(1, length), width.value, height.value, panel() ?? DEFAULT_PANEL, widest);
    }),
  };
}
