import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WARD, accept, ask, enter, setUpAlder } from './access-support.ts';
import {
  screenFaults,
  openBrowser,
  openScreen,
  PHONE_SIZE,
  shoot,
  startBuilt,
  WALL_SIZE,
} from './support.ts';
import type { RunningServer } from './support.ts';

/**
 * The screens in German: no English word is left beside what people wrote themselves and what is marked
 * as English, a reader is told the language, axe finds nothing, and 200 % zoom needs no sideways scroll.
 */
const DESK = { width: 1280, height: 800 };
/** 1280 pixels at 200 %, as a browser's own zoom lays them out. */
const ZOOMED = { width: 640, height: 400 };
/** Words that no German sentence has and hardly an English one does without. */
const ENGLISH =
  /\b(the|and|with|without|since|from|before|after|each|every|no|not known|of|to|is|are|by|check|checked|move|moving|bed|beds|ward|nurse|therapist|people|staff|hold|holds|walk|edge|chair|settings|open|save|add|close|sign|recorded|nothing|nobody)\b/i;

let server: RunningServer;
let browser: Browser;
/** The charge nurse, signed in. */
let noor: Awaited<ReturnType<typeof openScreen>>;
/** Written by people, and nobody's to translate. */
const NAMES = ['Alder', 'Bay A', 'Noor Haddad', 'Rosa Pinto', 'Europe/Lisbon'];

beforeAll(async () => {
  server = await startBuilt('server/dist/main.js');
  browser = await openBrowser();
  const { page, context } = await openScreen(browser, DESK);
  await setUpAlder(page, server, { noor: ['Noor Haddad', 'charge-nurse'] });
  const account = await ask(page, 'POST', `/api/wards/${WARD}/accounts`, {
    staff: 'noor',
    name: 'Noor Haddad',
  });
  await context.close();
  noor = await openScreen(browser, DESK);
  await noor.page.goto(`${server.url}/sign-in`);
  await accept(noor.page, String(account['path']), 'noor');
  const person = { person: 'of-stay-1', bed: 'bed-A1', from: 'home', identity: { name: 'Rosa Pinto' } };
  const hours = (n: number) => Date.now() - n * 3_600_000;
  await enter(noor.page, 'begin-stay', { stay: 'stay-1', ...person }, { at: hours(30) });
  const hold = {
    hold: 'hold-1',
    scope: 'walking',
    reason: 'after-fall',
    reviewAt: new Date(hours(-5)).toISOString(),
  };
  await enter(noor.page, 'place-hold', { stay: 'stay-1', ...hold }, { at: hours(4) });
  await enter(noor.page, 'record-trigger', { stay: 'stay-1', kind: 'sedation' }, { at: hours(3) });
  const startedAt = new Date(hours(26)).toISOString();
  const session = { outcome: 'done', occasion: 'planned', activities: ['chair'], startedAt, events: [] };
  await enter(noor.page, 'record-session', { stay: 'stay-1', session }, { at: hours(26) });
  const from = new Date(hours(1)).toISOString();
  const until = new Date(hours(-7)).toISOString();
  await enter(noor.page, 'set-people-on', { people: [{ staff: 'noor', from, until, breaks: [] }] });
  const piece = { model: 'A', home: 'Lager', attachment: 'loops', inspectionDue: '2099-01-01' };
  const lift = { ...piece, label: 'Lifter 1', kind: 'floor-lift', powered: true, safeLoadKg: 200 };
  await enter(noor.page, 'add-item', { item: 'lift-1', is: lift });
  const sling = {
    ...piece,
    label: 'Hebetuch 1',
    kind: 'sling',
    style: 'whole-body',
    fitsFromKg: 50,
    fitsToKg: 90,
  };
  await enter(noor.page, 'add-item', { item: 'sling-1', is: sling });
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** What the screen says in its own words: without what is marked as English, and names that people gave. */
const words = (page: Page): Promise<string> =>
  page.evaluate((given) => {
    const whole = document.body.cloneNode(true) as HTMLElement;
    for (const one of whole.querySelectorAll('[lang="en"], script, style, noscript')) one.remove();
    const spoken = [...whole.querySelectorAll('[aria-label], [placeholder], [title]')].flatMap((one) =>
      ['aria-label', 'placeholder', 'title'].map((name) => one.getAttribute(name) ?? ''),
    );
    const text = [whole.innerText, ...spoken].join('\n');
    return given
      .toSorted((a, b) => b.length - a.length)
      .reduce((left, name) => left.replaceAll(name, ''), text);
  }, NAMES);

async function speakGerman(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.getByLabel(/^(Language|Sprache)$/).selectOption('de');
  await page.getByLabel('Sprache').waitFor();
}

async function isGerman(page: Page): Promise<void> {
  expect(await page.getAttribute('html', 'lang')).toBe('de');
  expect(await page.title()).not.toMatch(ENGLISH);
  expect((await words(page)).split('\n').filter((line) => ENGLISH.test(line))).toEqual([]);
  expect(await screenFaults(page)).toEqual([]);
}
const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe('in German', () => {
  it('somebody chooses it before signing in, and is told how', async () => {
    const { page, context, faults } = await openScreen(browser, DESK);
    await speakGerman(page, `${server.url}/sign-in`);
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
    ['account', '/account', 'Konto – Footboard', 'Anmeldung'],
    ['huddle', `/wards/${WARD}/huddle`, /^Kurzbesprechung – .* – Footboard$/, /./],
    ['wall', `/wards/${WARD}/wall`, /Footboard$/, 'A1'],
    ['round', `/wards/${WARD}/round`, /Footboard$/, 'A1'],
    ['day-plan', `/wards/${WARD}/day-plan`, /Footboard$/, 'Noch ist nichts geplant'],
    ['equipment', `/wards/${WARD}/equipment`, /Footboard$/, 'Lifter 1'],
    ['bedside', `/wards/${WARD}/bedside/bed-A1`, /Footboard$/, 'Rosa Pinto'],
  ])(
    '%s says nothing in English, and needs no sideways scroll on a phone and at 200 percent',
    async (name, path, title, holds) => {
      const { page, faults } = noor;
      await page.setViewportSize(DESK);
      await speakGerman(page, server.url);
      await page.goto(`${server.url}${path}`);
      await page.getByRole('main').getByText(holds).first().waitFor();
      await page.waitForLoadState('networkidle');
      expect(await page.title()).toMatch(title);
      await isGerman(page);
      await page.setViewportSize(ZOOMED);
      // A wall lays itself out anew in the next frame.
      await expect.poll(() => sideways(page)).toBeLessThanOrEqual(0);
      await page.setViewportSize(PHONE_SIZE);
      await expect.poll(() => sideways(page)).toBeLessThanOrEqual(0);
      await shoot(page, `german-${name}-390`);
      await page.setViewportSize(WALL_SIZE);
      await shoot(page, `german-${name}`);
      expect(faults).toEqual([]);
    },
  );

  it('a check that is begun says nothing in English, stage by stage, on a phone and at 200 %', async () => {
    const { page, faults } = noor;
    await page.setViewportSize(PHONE_SIZE);
    await speakGerman(page, server.url);
    await page.goto(`${server.url}/wards/${WARD}/bedside/bed-A1`);
    await page.getByRole('button', { name: 'Prüfung', exact: true }).click();
    const sheet = page.getByRole('dialog');
    for (const which of [0, 1]) await sheet.locator('.fact').nth(which).click();
    await sheet.getByRole('button', { name: /^Voll mit Blutdruckreihe/ }).waitFor();
    await isGerman(page);
    await shoot(page, 'german-depth-390');
    await sheet.getByRole('button', { name: /^Voll mit Blutdruckreihe/ }).click();
    for (const stage of [1, 2, 3]) {
      await sheet.getByText(`Stufe ${stage} von 6`).waitFor();
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
      await isGerman(page);
      expect(await sideways(page)).toBeLessThanOrEqual(0);
      await shoot(page, `german-stage-${stage}-390`);
      await sheet.getByRole('button', { name: 'Alles Übrige erfüllt, kein Symptom' }).click();
      for (const free of await sheet.getByRole('button', { name: 'Frei, aus eigener Kraft' }).all())
        await free.click();
      await sheet.getByRole('button', { name: 'Stufe erfüllt, weiter' }).click();
    }
    await page.setViewportSize(ZOOMED);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(faults).toEqual([]);
  });
});
