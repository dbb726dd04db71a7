/** Which language this screen speaks: what was chosen on this device, or else the ward's. */
import { computed, ref, watch } from 'vue';
import { language, type Language } from '@footboard/shared/capabilities/wards/values';
import { i18n } from './words.ts';

const KEPT_AS = 'footboard-language';

function kept(): Language | null {
  try {
    return language.safeParse(localStorage.getItem(KEPT_AS)).data ?? null;
  } catch {
    return null;
  }
}
const chosen = ref<Language | null>(kept());
const wards = ref<Language>('en');

/** The language the screens speak now. */
export const speaks = computed<Language>(() => chosen.value ?? wards.value);
/** What was chosen on this device; null follows the ward. */
export const chosenLanguage = computed(() => chosen.value);

export function chooseLanguage(to: Language | null): void {
  chosen.value = to;
  try {
    if (to === null) localStorage.removeItem(KEPT_AS);
    else localStorage.setItem(KEPT_AS, to);
  } catch {
    // A browser that keeps nothing speaks the chosen language until it is closed.
  }
}
/** Told by the board once it is there. */
export const followWardLanguage = (to: Language): void => {
  wards.value = to;
};

/** Keeps vue-i18n and the page's own `lang` in step. Called once, at the start. */
export function keepLanguage(): void {
  watch(
    speaks,
    (to) => {
      i18n.global.locale.value = to;
      document.documentElement.lang = to;
    },
    { immediate: true },
  );
}
