/** Words are measured only when the font they are drawn in is there. */
import { ref } from 'vue';

const FAMILY = "'Archivo Variable'";
/** A board is not kept waiting for its letters longer than this. */
const WAIT_MS = 3_000;

/** Grows whenever widths measured so far no longer hold. */
export const fontEdition = ref(0);

let asked: Promise<void> | null = null;

/** Resolves when the font can be measured, or has been waited for long enough. */
export function fontThere(): Promise<void> {
  asked ??= load();
  return asked;
}

async function load(): Promise<void> {
  if (typeof document.fonts?.load !== 'function') return;
  const sizes = ['500', '600', '700'].map((weight) => document.fonts.load(`${weight} 32px ${FAMILY}`));
  const loaded = Promise.allSettled(sizes).then(() => {
    fontEdition.value += 1;
  });
  await Promise.race([loaded, new Promise((done) => setTimeout(done, WAIT_MS))]);
}
