/** The size of the window, followed: which plan the wall is drawn by. */
import { computed, onMounted, onUnmounted, ref, type ComputedRef } from 'vue';
import { DEFAULT_PANEL, type Panel } from '@footboard/shared/capabilities/wards/values';
import { planHand, planWall, type WallPlan } from './legible.ts';

/** Narrower than this a screen is held in a hand. */
const HAND = 720;

export function usePanel(
  beds: () => number,
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
      if (hand.value) return planHand(beds(), width.value);
      return planWall(Math.max(1, beds()), width.value, height.value, panel() ?? DEFAULT_PANEL);
    }),
  };
}
