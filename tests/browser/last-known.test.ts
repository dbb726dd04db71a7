import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Cable } from '../support/cable.ts';
import {
  screenFaults,
  openBrowser,
  openScreen,
  PHONE_SIZE,
  shoot,
  startBuilt,
  WALL_SIZE,
  type RunningServer,
} from './support.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});

const lastKnown = (page: Page) => page.getByText(/LAST KNOWN \d\d:\d\d/);
const tile = (page: Page, label: string) =>
  page.locator('article.tile').filter({ has: page.getByRole('heading', { name: label, exact: true }) });

/** Enters a hold by the API, past the screen. */
async function hold(url: string, stay: string, id: string): Promise<void> {
  const { t } = (await (await fetch(`${url}/api/wards/larkfield/board`)).json()) as { t: number };
  const answer = await fetch(`${url}/api/wards/larkfield/commands/place-hold`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-footboard-staff': 'ida' },
    body: JSON.stringify({
      commandId: crypto.randomUUID(),
      occurred: { at: new Date(t).toISOString() },
      entered: { at: new Date(t).toISOString(), offsetMinutes: 0 },
      source: { kind: 'person' },
      expect: 'latest',
      data: {
        stay,
        hold: id,
        scope: 'out-of-bed',
        reason: 'unstable',
        reviewAt: new Date(t + 7_200_000).toISOString(),
      },
    }),
  });
  expect(await answer.text()).toContain('accepted');
}

describe('the wall says LAST KNOWN', () => {
  let server: RunningServer;
  let cable: Cable;
  beforeAll(async () => {
    server = await startBuilt('demo/dist/main.js', { DEMO_SPEED: '1' });
    cable = await Cable.between(server.port);
  });
  afterAll(async () => {
    await cable?.close();
    await server?.stop();
  });

  async function wall() {
    const screen = await openScreen(browser, WALL_SIZE);
    await screen.page.goto(`http://127.0.0.1:${cable.port}/wards/larkfield/wall`);
    await tile(screen.page, 'A1').waitFor();
    return screen;
  }

  it('when the network is pulled; restored, it catches up with what happened meanwhile', async () => {
    const { page, context } = await wall();
    expect(await lastKnown(page).count()).toBe(0);

    cable.pull();
    await lastKnown(page).waitFor({ timeout: 13_000 });
    await page.getByText('This screen does not hear the server.').waitFor();
    await shoot(page, 'wall-last-known-1920');
    await hold(server.url, 'st-004', 'hold-while-cut');
    expect(await tile(page, 'A4').innerText()).not.toMatch(/HOLD/);

    cable.plugIn();
    await tile(page, 'A4').getByText(/HOLD/).first().waitFor({ timeout: 30_000 });
    await lastKnown(page).waitFor({ state: 'detached', timeout: 15_000 });
    await context.close();
  });

  it('reads well by WCAG 2.2 A and AA at both sizes, wall and huddle', async () => {
    const screens = [];
    for (const size of [WALL_SIZE, PHONE_SIZE])
      for (const path of ['wall', 'huddle']) {
        const screen = await openScreen(browser, size);
        await screen.page.goto(`http://127.0.0.1:${cable.port}/wards/larkfield/${path}`);
        await screen.page.getByText('A1').first().waitFor();
        screens.push(screen);
      }
    cable.pull();
    for (const { page } of screens) await lastKnown(page).waitFor({ timeout: 13_000 });
    await shoot(screens[1]!.page, 'huddle-last-known-1920');
    await shoot(screens[2]!.page, 'wall-last-known-390');
    for (const { page, context } of screens) {
      expect(await screenFaults(page)).toEqual([]);
      await context.close();
    }
    cable.plugIn();
  });

  it('judges its age before painting when a frozen tab wakes up', async () => {
    const { page, context } = await wall();
    const devtools = await context.newCDPSession(page);
    await devtools.send('Page.setWebLifecycleState', { state: 'frozen' });
    cable.pull();
    await hold(server.url, 'st-006', 'hold-while-frozen');
    // Longer than a board may be trusted, measured in this process: the page itself is asleep.
    await new Promise((resolve) => setTimeout(resolve, 11_000));
    await devtools.send('Page.setWebLifecycleState', { state: 'active' });
    // The first thing it shows is its age, or a cover; never the old board as if it were current.
    const shown = await page.evaluate(() => document.body.innerText);
    expect(/LAST KNOWN|Checking how old/i.test(shown) || !/\d+ of \d+ beds shown/.test(shown)).toBe(true);
    cable.plugIn();
    await tile(page, 'A6').getByText(/HOLD/).first().waitFor({ timeout: 30_000 });
    await lastKnown(page).waitFor({ state: 'detached', timeout: 15_000 });
    await context.close();
  });
});

describe.runIf(process.env['TEST_DATABASE_URL'])('the wall says LAST KNOWN with its sockets up', () => {
  it('when the database is gone, and recovers when it is back', async () => {
    const address = new URL(process.env['TEST_DATABASE_URL']!);
    const pg = await import('pg');
    const admin = new pg.default.Client({ connectionString: address.href });
    await admin.connect();
    const name = `footboard_browser_${process.pid}`;
    await admin.query(`create database ${name}`);
    const cable = await Cable.between(Number(address.port || 5432), address.hostname);
    const through = new URL(address);
    through.port = String(cable.port);
    through.hostname = '127.0.0.1';
    through.pathname = `/${name}`;
    const server = await startBuilt('tests/support/open-server.mjs', { DATABASE_URL: through.href });
    const screen = await openScreen(browser, WALL_SIZE);
    try {
      const now = new Date().toISOString();
      const entry = (data: object) =>
        JSON.stringify({
          commandId: crypto.randomUUID(),
          occurred: { at: now },
          entered: { at: now, offsetMinutes: 0 },
          source: { kind: 'person' },
          expect: 'latest',
          data,
        });
      const made = await fetch(`${server.url}/api/wards/cut/commands/set-up-ward`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: entry({
          name: 'Cut Ward',
          zone: 'Europe/Lisbon',
          beds: [{ bed: 'b1', label: '1', bay: 'One' }],
        }),
      });
      expect(made.status).toBe(200);
      await screen.page.goto(`${server.url}/wards/cut/wall`);
      await tile(screen.page, '1').waitFor();

      cable.pull();
      await lastKnown(screen.page).waitFor({ timeout: 14_000 });
      expect(await screen.page.getByText(/cannot read its records/).count()).toBeGreaterThan(0);

      cable.plugIn();
      await lastKnown(screen.page).waitFor({ state: 'detached', timeout: 60_000 });
    } finally {
      await screen.context.close();
      await server.stop();
      await cable.close();
      await admin.query(`drop database if exists ${name} with (force)`);
      await admin.end();
    }
  });
});
