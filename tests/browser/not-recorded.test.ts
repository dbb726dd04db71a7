import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WARD, enter, peopleAlder } from './offline-support.ts';
import {
  openBrowser,
  openScreen,
  PHONE_SIZE,
  shoot,
  startBuilt,
  WALL_SIZE,
  type RunningServer,
} from './support.ts';

let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  server = await startBuilt('tests/support/open-server.mjs');
  browser = await openBrowser();
  await peopleAlder(server, 30);
  // Up once, and then nothing for twenty hours and more.
  const at = new Date(Date.now() - 26 * 3_600_000).toISOString();
  const session = { outcome: 'done', occasion: 'planned', activities: ['chair'], startedAt: at, events: [] };
  await enter(server, 'record-session', { stay: 'stay-0', session }, 'noor', {
    occurred: { at },
  });
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe('A11: nothing was recorded', () => {
  it.each([
    ['wall', 'wall', WALL_SIZE],
    ['huddle', 'huddle', WALL_SIZE],
    ['bedside', 'bedside/bed-A1', PHONE_SIZE],
  ])('SCREEN-3 the %s says not recorded, never 0 of a goal', async (name, path, size) => {
    const { page, context } = await openScreen(browser, size);
    await page.goto(`${server.url}/wards/${WARD}/${path}`);
    await page.getByText('A1').first().waitFor();
    await page
      .getByText(/not recorded|nothing recorded|no time up recorded/i)
      .first()
      // The huddle says it in a list that is folded at first.
      .waitFor({ state: name === 'huddle' ? 'attached' : 'visible' });
    const text = await page.evaluate(() => document.body.innerText);
    expect(text).not.toMatch(/\b0 of \d|\b0\/\d|\b0 times\b/);
    await shoot(page, `not-recorded-${name}`);
    await context.close();
  });
});
