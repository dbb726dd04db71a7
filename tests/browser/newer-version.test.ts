/**
 * A newer version of the program while a page is open: fetched beside it, said in a line, and taken by a
 * tap; nothing is reloaded under the finger. The worker, its update and its taking over are the browser's own.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { screenFaults, openBrowser, openScreen, PHONE_SIZE, shoot } from './support.ts';
import { longestWords, playWard, type PlayedWard } from './wall-kit.ts';

let browser: Browser;
let ward: PlayedWard;
beforeAll(async () => {
  [browser, ward] = await Promise.all([openBrowser(), playWard()]);
  ward.show({ beds: longestWords(4) });
});
afterAll(async () => {
  await browser?.close();
  await ward?.close();
});

/** A page that its service worker has taken under its care, and a mark that a reload would wipe away. */
async function installed(path: string) {
  const screen = await openScreen(browser, PHONE_SIZE);
  await screen.page.goto(`${ward.url}${path}`);
  await screen.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, {
    timeout: 60_000,
  });
  await screen.page.evaluate(() => Object.assign(window, { sameProgram: true }));
  return screen;
}
const update = () => navigator.serviceWorker.getRegistration().then((found) => found!.update());
const untouched = () => 'sameProgram' in window;

describe('a newer version', () => {
  it('SCREEN-25 is told on the page that is open, which stays as it is until somebody takes it', async () => {
    const { page, context, faults } = await installed('/wards/w1/huddle');
    const line = page.getByText('A newer version is ready.');
    expect(await line.count()).toBe(0);
    ward.serveNewer();
    await page.evaluate(update);
    await line.waitFor({ timeout: 60_000 });
    // The new one waits: the page has neither been loaded anew nor been given to it.
    expect(await page.evaluate(untouched)).toBe(true);
    const waiting = () => navigator.serviceWorker.getRegistration().then((found) => found!.waiting !== null);
    expect(await page.evaluate(waiting)).toBe(true);
    await shoot(page, 'newer-version-390');
    expect(await screenFaults(page)).toEqual([]);

    await page.getByRole('button', { name: 'Reload' }).click();
    await page.waitForFunction(() => !('sameProgram' in window), null, { timeout: 60_000 });
    await page.locator('h1').first().waitFor();
    expect(await page.evaluate(waiting)).toBe(false);
    expect(await line.count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('is not told on a wall, where nobody could tap, and does not reload it at once', async () => {
    const { page, context } = await installed('/wards/w1/wall');
    ward.serveNewer();
    await page.evaluate(update);
    await page.waitForFunction(() =>
      navigator.serviceWorker.getRegistration().then((found) => found!.waiting !== null),
    );
    expect(await page.getByText('A newer version is ready.').count()).toBe(0);
    expect(await page.evaluate(untouched)).toBe(true);
    await context.close();
  });
});
