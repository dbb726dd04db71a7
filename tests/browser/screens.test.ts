import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  openBrowser,
  openScreen,
  PHONE_SIZE,
  shoot,
  startBuilt,
  WALL_SIZE,
  type RunningServer,
} from './support.ts';

/**
 * Each screen of the living demo at both sizes: it draws without a fault in the console, nothing
 * sticks out sideways, and axe finds nothing against WCAG 2.2 A and AA. The pictures are to be looked at.
 */
let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  server = await startBuilt('demo/dist/main.js', { DEMO_SPEED: '1' });
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const SCREENS = [
  ['home', '/', 'Larkfield'],
  ['wall', '/wards/larkfield/wall', 'Stand by'],
  ['wall-small-ward', '/wards/millbrook/wall', 'F1'],
  ['huddle', '/wards/larkfield/huddle', 'Arrived'],
  ['day', '/wards/larkfield/day', 'Sessions by the hour'],
  ['bedside', '/wards/larkfield/bedside', 'A1'],
  ['bedside-bed', '/wards/larkfield/bedside/lf-a3', 'Sunniva Tarn'],
  ['bedside-empty-bed', '/wards/larkfield/bedside/lf-b6', 'A person arrives here'],
  ['stay', '/wards/larkfield/stays/st-003', 'Sunniva Tarn'],
  ['settings', '/wards/larkfield/settings', 'Ida Merrow'],
  ['set-up', '/set-up', 'Set up a ward'],
] as const;

describe.each([
  ['1920', WALL_SIZE],
  ['390', PHONE_SIZE],
] as const)('at %s wide', (size, viewport) => {
  it.each(SCREENS)('%s', async (name, path, holds) => {
    const { page, context, faults } = await openScreen(browser, viewport);
    await page.goto(`${server.url}${path}`);
    await page.getByText(holds).first().waitFor();
    await shoot(page, `${name}-${size}`);

    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`),
    ).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
    expect(await page.getByText('DEMO').count()).toBeGreaterThan(0);
    expect(faults).toEqual([]);
    await context.close();
  });
});
