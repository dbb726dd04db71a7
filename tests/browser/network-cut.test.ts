import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Cable } from '../support/cable.ts';
import { helpOf, lastKnown } from './offline-support.ts';
import { openBrowser, shoot, startBuilt, WALL_SIZE } from './support.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});

describe('A1: the network is pulled', () => {
  it('for 90 s, then 40 min: every tile has its age, the whole wall is last known, nothing shows less help', async () => {
    const demo = await startBuilt('demo/dist/main.js', { DEMO_SPEED: '1' });
    const cable = await Cable.between(demo.port);
    const context = await browser.newContext({ viewport: WALL_SIZE });
    const page = await context.newPage();
    await page.clock.install();
    await page.goto(`http://127.0.0.1:${cable.port}/wards/larkfield/wall`);
    await page.getByRole('heading', { name: 'A1', exact: true }).waitFor();
    const before = await helpOf(page);
    expect(before.length).toBeGreaterThan(20);
    cable.pull();
    for (const more of [90_000, 40 * 60_000]) {
      await page.clock.fastForward(more);
      await lastKnown(page).waitFor({ timeout: 10_000 });
      await page.getByText('clock stopped').waitFor();
      const now = await helpOf(page);
      expect(now.map(({ help }) => help)).toEqual(before.map(({ help }) => help));
      // Whoever lies in a bed: what is shown of them is marked.
      const fresh = now.filter(({ text }) => !/Empty(\.empty)?$/.test(text) && !/last known/i.test(text));
      expect(fresh).toEqual([]);
    }
    await shoot(page, 'wall-forty-minutes-cut-1920');
    await context.close();
    await cable.close();
    await demo.stop();
  });
});
