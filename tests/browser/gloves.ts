/** What a gloved thumb needs of a screen: things large enough to hit, and far enough from one another. */
// oxlint-disable unicorn/consistent-function-scoping -- what runs in the page takes nothing from outside of it
import type { Page } from 'playwright-core';

/** WCAG 2.2, 2.5.5 (AAA): 44 by 44 CSS px. Between two of them 8 px: common practice, no source. */
const LIMITS = { least: 44, apart: 8 };

/** One line for each thing that is too small and each pair that is too close. Runs in the page: it knows nothing outside. */
function missed({ least, apart }: typeof LIMITS): string[] {
  const seen = (one: Element) =>
    one.checkVisibility({ visibilityProperty: true }) && one.closest('.only-read-aloud') === null;
  const layers = [...document.querySelectorAll('[role=dialog], [role=menu]')];
  const top = layers.findLast(seen) ?? document.body;
  const targets = new Set<Element>();
  const all = 'button, a[href], input, select, textarea, summary, [role=menuitem], [tabindex="0"]';
  for (const one of top.querySelectorAll(all)) {
    // A radio button is hit by the whole of its label.
    const choice = one.matches('[type=radio], [type=checkbox]') ? one.closest('label') : null;
    if (seen(one)) targets.add(choice ?? one);
  }
  /** A bar that stays where it is over the page: what scrolls beneath it comes as near as it likes. */
  const barOf = (one: Element): Element => {
    for (let at: Element | null = one; at && at !== top; at = at.parentElement)
      if (/fixed|sticky/.test(getComputedStyle(at).position)) return at;
    return top;
  };
  const named = (one: Element) =>
    (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().replaceAll(/\s+/g, ' ').slice(0, 40) ||
    one.outerHTML.slice(0, 60);
  const boxes = [...targets]
    .map((one) => ({ one, bar: barOf(one), box: one.getBoundingClientRect() }))
    .filter(({ box }) => box.width > 0 && box.height > 0);
  // A tenth for what a layout rounds.
  const faults = boxes
    .filter(({ box }) => Math.min(box.width, box.height) < least - 0.1)
    .map(({ one, box }) => `${named(one)}: ${box.width.toFixed(1)} x ${box.height.toFixed(1)}`);
  for (const [i, a] of boxes.entries()) {
    for (const b of boxes.slice(i + 1)) {
      if (a.bar !== b.bar || a.one.contains(b.one) || b.one.contains(a.one)) continue;
      const across = Math.max(a.box.left - b.box.right, b.box.left - a.box.right, 0);
      const down = Math.max(a.box.top - b.box.bottom, b.box.top - a.box.bottom, 0);
      const between = Math.hypot(across, down);
      if (between < apart - 0.1)
        faults.push(`${named(a.one)} | ${named(b.one)}: ${between.toFixed(1)} apart`);
    }
  }
  return faults;
}

/** Taps every choice and unfolds every fold of what lies uppermost, one after another, looking after each. Runs in the page. */
async function missedOnTheWay(look: () => string[]): Promise<string[]> {
  const tried = new Set<string>();
  const faults = new Set<string>();
  const next = () => {
    const top = [...document.querySelectorAll('[role=dialog]')].at(-1) ?? document.body;
    return [...top.querySelectorAll<HTMLElement>('button[aria-pressed], label.choice, summary')]
      .map((one) => {
        const group = one.closest('[role=group], fieldset')?.firstElementChild?.textContent ?? '';
        return { one, words: `${group.trim()}: ${one.textContent?.trim()}` };
      })
      .find(({ one, words }) => !tried.has(words) && one.checkVisibility());
  };
  for (let at = next(); at; at = next()) {
    tried.add(at.words);
    at.one.click();
    await new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted)));
    for (const fault of look()) faults.add(`${at.words}: ${fault}`);
  }
  return [...faults];
}

/** What lies uppermost (a menu, a card, a sheet, or else the page), also what is to be scrolled to. */
export const missedByGloves = (page: Page): Promise<string[]> => page.evaluate(missed, LIMITS);

/** Taps each choice and fold, and tells what gloves miss after each; with bare hands only what the taps bring up stays. */
export const missedWhileTapping = (page: Page, gloves = true): Promise<string[]> =>
  page.evaluate(
    `(${missedOnTheWay.toString()})(() => ${gloves ? `(${missed.toString()})(${JSON.stringify(LIMITS)})` : '[]'})`,
  ) as Promise<string[]>;
