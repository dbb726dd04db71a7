import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFaults, openBrowser, openScreen, shoot, startBuilt, WALL_SIZE } from './support.ts';
import type { RunningServer } from './support.ts';

/**
 * The screens in German: no English word is left beside what people wrote themselves and what is marked
 * as English, a reader is told the language, axe finds nothing, and 200 % zoom needs no sideways scroll.
 */
const WARD = 'larkfield';
const DESK = { width: 1280, height: 800 };
/** 1280 pixels at 200 %, as a browser's own zoom lays them out. */
const ZOOMED = { width: 640, height: 400 };
/** Words that no German sentence has and hardly an English one does without. */
const ENGLISH =
  /\b(the|and|with|without|since|from|before|after|each|every|no|not known|of|to|is|are|was|by|check|checked|move|moving|bed|beds|ward|nurse|therapist|people|staff|hold|holds|walk|edge|chair|settings|open|save|add|close|sign|recorded|nothing|nobody)\b/gi;

let demo: RunningServer;
let real: RunningServer;
let browser: Browser;
beforeAll(async () => {
  [demo, real] = await Promise.all([
    startBuilt('demo/dist/main.js', { DEMO_SPEED: '1' }),
    startBuilt('server/dist/main.js'),
  ]);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await demo?.stop();
  await real?.stop();
});

/** What the screen says in its own words: without what is marked as English, and without names that people gave. */
const words = (page: Page, names: readonly string[]): Promise<string> =>
  page.evaluate((given) => {
    const whole = document.body.cloneNode(true) as HTMLElement;
    for (const one of whole.querySelectorAll('[lang="en"], script, style')) one.remove();
    const spoken = [...whole.querySelectorAll('[aria-label], [placeholder], [title]')].flatMap((one) =>
      ['aria-label', 'placeholder', 'title'].map((name) => one.getAttribute(name) ?? ''),
    );
    const text = [whole.innerText, ...spoken].join('\n');
    return given
      .toSorted((a, b) => b.length - a.length)
      .reduce((left, name) => left.replaceAll(name, ''), text);
  }, names);

/** Names of the ward, its bays and its staff: the invented ward is an English one. */
async function givenNames(): Promise<string[]> {
  const board = await (await fetch(`${demo.url}/api/wards/${WARD}/board`)).text();
  const staff = await (await fetch(`${demo.url}/api/wards/${WARD}/staff`)).text();
  const of = (text: string, key: string) =>
    [...text.matchAll(new RegExp(`"${key}":"([^"]+)"`, 'g'))].map(([, name]) => name!);
  return [...new Set([...of(board, 'bay'), ...of(board, 'name'), ...of(staff, 'name')])];
}

async function speakGerman(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.getByLabel('Language').selectOption('de');
  await page.getByLabel('Sprache').waitFor();
}

async function isGerman(page: Page, names: readonly string[] = []): Promise<void> {
  expect(await page.getAttribute('html', 'lang')).toBe('de');
  expect(await page.title()).not.toMatch(ENGLISH);
  expect((await words(page, names)).match(ENGLISH) ?? []).toEqual([]);
  expect(await axeFaults(page)).toEqual([]);
}
const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe('in German', () => {
  it('somebody chooses it before signing in, and is told how', async () => {
    const { page, context, faults } = await openScreen(browser, DESK);
    await speakGerman(page, `${real.url}/sign-in`);
    await isGerman(page);
    await page.getByRole('button', { name: 'Anmelden', exact: true }).click();
    await page.getByText('Anmeldenamen eingeben.').waitFor();
    await shoot(page, 'german-sign-in');
    await isGerman(page);
    expect(faults).toEqual([]);
    await context.close();
  });

  it.each([
    ['home', '/', 'Stationen und Bildschirme – Footboard', 'Kurzbesprechung'],
    ['settings', `/wards/${WARD}/settings`, /^Einstellungen – .* – Footboard$/, 'Protokoll und Regeln'],
    ['huddle', `/wards/${WARD}/huddle`, /^Kurzbesprechung – .* – Footboard$/, /./],
  ])(
    '%s says nothing in English, and needs no sideways scroll at 200 %%',
    async (name, path, title, holds) => {
      const names = await givenNames();
      const { page, context, faults } = await openScreen(browser, DESK);
      await speakGerman(page, demo.url);
      await page.goto(`${demo.url}${path}`);
      await page.getByRole('main').getByText(holds).first().waitFor();
      await page.waitForLoadState('networkidle');
      expect(await page.title()).toMatch(title);
      await isGerman(page, names);
      await page.setViewportSize(ZOOMED);
      expect(await sideways(page)).toBeLessThanOrEqual(0);
      await page.setViewportSize(WALL_SIZE);
      await shoot(page, `german-${name}`);
      expect(faults).toEqual([]);
      await context.close();
    },
  );
});
