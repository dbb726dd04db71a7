import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Cable } from '../support/cable.ts';
import { sayWho, switchedOn } from './open-kit.ts';
import {
  WARD,
  helpOf,
  lastKnown,
  onTheDevice,
  peopleAlder,
  recordSession,
  sessionsOf,
} from './offline-support.ts';
import {
  screenFaults,
  openBrowser,
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
  await peopleAlder(server);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const again = async (): Promise<void> => {
  const { port, folder } = server;
  server = {
    ...(await startBuilt('tests/support/open-server.mjs', {
      PORT: String(port),
      DATA_DIR: join(folder, 'data'),
    })),
  };
};
const bedside = (bed: string) => `${server.url}/wards/${WARD}/bedside/${bed}`;

async function nurse(page: Page): Promise<void> {
  await sayWho(page, /Noor Haddad/);
  await page.getByRole('button', { name: 'Session', exact: true }).waitFor();
}
const waits = (page: Page, n: number) => page.getByText(`${n} ${n === 1 ? 'waits' : 'wait'} for the network`);

async function wrote(page: Page, activity: string, n: number): Promise<void> {
  await recordSession(page, activity);
  await page.getByText('Not sent yet; try again').waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: 'Close' }).click();
  await waits(page, n).waitFor();
}

describe('without the server', () => {
  it('SCREEN-14 a phone and a wall come up with the last known board; entries go out once and in order when it is back', async () => {
    const context = await browser.newContext({ viewport: PHONE_SIZE });
    const phone = await context.newPage();
    const faults: string[] = [];
    phone.on('pageerror', (error) => faults.push(error.message));
    phone.on('console', (said) => {
      if (said.type() === 'error' && /policy|trusted/i.test(said.text())) faults.push(said.text());
    });
    await phone.goto(bedside('bed-A1'));
    await nurse(phone);
    const away = await browser.newContext({ viewport: WALL_SIZE });
    const wall = await away.newPage();
    await wall.goto(`${server.url}/wards/${WARD}/wall`);
    await wall.getByRole('heading', { name: 'A1', exact: true }).waitFor();
    await Promise.all([onTheDevice(phone), onTheDevice(wall)]);
    const before = await helpOf(wall);
    expect(before.every(({ help }) => help.length > 0)).toBe(true);

    await server.halt();
    await Promise.all([phone.reload(), wall.reload()]);
    await lastKnown(wall).waitFor({ timeout: 15_000 });
    await wall.getByText('clock stopped').waitFor();
    expect(await wall.locator('article.tile').count()).toBe(3);
    await shoot(wall, 'wall-from-the-device-1920');
    expect(await screenFaults(wall)).toEqual([]);
    // Rule 1: nothing shows less help than it did.
    const kept = await helpOf(wall);
    expect(kept.map(({ help }) => help)).toEqual(before.map(({ help }) => help));
    for (const { text } of kept) expect(text).not.toMatch(/\bcurrent\b/i);

    await lastKnown(phone).waitFor({ timeout: 15_000 });
    await wrote(phone, 'Lifted to chair', 1);
    await phone.reload();
    await lastKnown(phone).waitFor({ timeout: 15_000 });
    await wrote(phone, 'Stand', 2);
    await shoot(phone, 'bedside-from-the-device-390');
    expect(await screenFaults(phone)).toEqual([]);

    await again();
    await expect.poll(async () => (await sessionsOf(server, 'stay-0')).length, { timeout: 40_000 }).toBe(2);
    const order = (await sessionsOf(server, 'stay-0')).toSorted((a, b) => a.occurred - b.occurred);
    expect(order.map(({ words }) => /chair/i.test(words))).toEqual([true, false]);
    await lastKnown(wall).waitFor({ state: 'detached', timeout: 20_000 });
    await phone.getByText('Not on the board').waitFor({ state: 'detached', timeout: 20_000 });
    expect(await sessionsOf(server, 'stay-0')).toHaveLength(2);
    expect(faults).toEqual([]);
    await context.close();
    await away.close();
  });

  it('SCREEN-14 a phone whose battery dies has lost nothing when it is switched on again', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'footboard-phone-'));
    const cable = await Cable.between(server.port);
    const address = `http://127.0.0.1:${cable.port}/wards/${WARD}/bedside/bed-A2`;
    let device = await switchedOn(profile);
    let page = await device.newPage();
    await page.goto(address);
    await nurse(page);
    await onTheDevice(page);
    cable.pull();
    await wrote(page, 'Lifted to chair', 1);
    // As an empty battery: every process of the browser at once, no handler runs.
    const devtools = await device.newCDPSession(page);
    await expect(devtools.send('Browser.crash' as 'Browser.close')).rejects.toThrow(/closed/);
    await device.close().catch(() => undefined);
    expect(await sessionsOf(server, 'stay-1')).toEqual([]);

    device = await switchedOn(profile);
    page = await device.newPage();
    await page.goto(address);
    await lastKnown(page).waitFor({ timeout: 20_000 });
    await waits(page, 1).waitFor();
    cable.plugIn();
    await expect.poll(async () => (await sessionsOf(server, 'stay-1')).length, { timeout: 40_000 }).toBe(1);
    await page.getByText('Not on the board').waitFor({ state: 'detached', timeout: 20_000 });
    expect(await sessionsOf(server, 'stay-1')).toHaveLength(1);
    await device.close();
    await cable.close();
    rmSync(profile, { recursive: true, force: true });
  });
});
