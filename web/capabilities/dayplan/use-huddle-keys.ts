/**
 * The huddle by keys alone: 1 to 5 go to a question, the arrows from line to line, Enter opens the why
 * that has the focus, a agrees an action and c closes one. Everything is a button too, so Tab reaches
 * all of it. While a sheet or a why is open, or somebody types, the keys are theirs.
 */
import { onBeforeUnmount, onMounted, watch, type Ref } from 'vue';

export interface HuddleKeys {
  /** `line`: the key of the line that has the focus; null for none. */
  readonly act: (line: string | null) => void;
  readonly close: (line: string | null) => void;
}

const OPEN = '[role="dialog"], [role="alertdialog"], [role="menu"]';
const TYPED_IN = 'input, textarea, select, [contenteditable]';

const lines = (): HTMLElement[] => [...document.querySelectorAll<HTMLElement>('[data-line]')];
const lineOf = (element: Element | null): HTMLElement | null =>
  element?.closest<HTMLElement>('[data-line]') ?? null;

function focusLine(line: HTMLElement | undefined): void {
  const target = line?.querySelector<HTMLElement>('.why');
  target?.focus();
  target?.scrollIntoView({ block: 'nearest' });
}

export function goToQuestion(n: number): void {
  const section = document.getElementById(`question-${n}`);
  const first = section?.querySelector<HTMLElement>('[data-line] .why');
  (first ?? section?.querySelector<HTMLElement>('h2'))?.focus({ preventScroll: true });
  section?.scrollIntoView({ block: 'start' });
}

export function useHuddleKeys({ act, close }: HuddleKeys): void {
  function pressed(event: KeyboardEvent): void {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    const target = event.target instanceof Element ? event.target : null;
    if (target?.closest(TYPED_IN) || document.querySelector(OPEN)) return;
    const line = lineOf(document.activeElement);
    const key = event.key.toLowerCase();
    if (/^[1-5]$/.test(key)) goToQuestion(Number(key));
    else if (key === 'arrowdown' || key === 'arrowup') {
      const all = lines();
      const at = line ? all.indexOf(line) : -1;
      focusLine(all[key === 'arrowdown' ? at + 1 : at < 0 ? all.length - 1 : at - 1]);
    } else if (key === 'a') act(line?.dataset['line'] ?? null);
    else if (key === 'c') close(line?.dataset['line'] ?? null);
    else return;
    event.preventDefault();
  }
  onMounted(() => window.addEventListener('keydown', pressed));
  onBeforeUnmount(() => window.removeEventListener('keydown', pressed));
}

/** Keys of a sheet while it is open. They are a shorter way to its buttons, which do the same. */
export function useKeysWhile(open: Ref<boolean>, pressed: (event: KeyboardEvent) => void): void {
  const stop = (): void => window.removeEventListener('keydown', pressed);
  watch(
    open,
    (is) => {
      stop();
      if (is) window.addEventListener('keydown', pressed);
    },
    { immediate: true },
  );
  onBeforeUnmount(stop);
}
