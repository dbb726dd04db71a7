/** A check that was begun and not sent: over a reload and an empty battery, for its author and its person alone. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { confirmPerson } from './bedside-support.ts';
import { peopleAlder, WARD } from './offline-support.ts';
import { switchedOn } from './open-kit.ts';
import { screenFaults, shoot, startBuilt, type RunningServer } from './support.ts';

let server: RunningServer;
let profile: string;
beforeAll(async () => {
  profile = mkdtempSync(join(tmpdir(), 'footboard-half-'));
  server = await startBuilt('tests/support/open-server.mjs');
  await peopleAlder(server);
}, 240_000);
afterAll(async () => {
  await server?.stop();
  rmSync(profile, { recursive: true, force: true });
});

async function toCheck(page: Page, bed: string): Promise<void> {
  await page.goto(`${server.url}/wards/${WARD}/bedside/${bed}`);
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await confirmPerson(page);
  await page.getByRole('button', { name: /^Full under 4 minutes/ }).waitFor();
}
async function as(page: Page, name: RegExp): Promise<void> {
  await page.goto(`${server.url}/wards/${WARD}/bedside/bed-A1`);
  await page.locator('header').getByRole('button').first().click();
  await page.getByRole('button', { name }).click();
}
const goOn = (page: Page) => page.getByRole('button', { name: /^Go on with the check begun \d\d:\d\d$/ });

describe('a half-done check', () => {
  it('BEDSIDE-2 outlives a reload and a killed browser, is offered for its person and author alone, and goes when it is sent', async () => {
    let device = await switchedOn(profile);
    let page = await device.newPage();
    await as(page, /Noor Haddad/);
    await toCheck(page, 'bed-A1');
    await page.getByRole('button', { name: /^Full under 4 minutes/ }).click();
    await page.getByRole('button', { name: 'All the rest met' }).click();
    await page.getByRole('button', { name: 'Stage met, go on' }).click();
    await page.getByText('Stage 2 of 6').waitFor();

    await page.reload();
    await toCheck(page, 'bed-A1');
    await goOn(page).waitFor();
    await shoot(page, 'bedside-half-done-390');
    expect(await screenFaults(page)).toEqual([]);
    // Another person is not asked about it.
    await toCheck(page, 'bed-A2');
    expect(await goOn(page).count()).toBe(0);

    // As an empty battery: every process of the browser at once, no handler runs.
    const devtools = await device.newCDPSession(page);
    await expect(devtools.send('Browser.crash' as 'Browser.close')).rejects.toThrow(/closed/);
    await device.close().catch(() => undefined);
    device = await switchedOn(profile);
    page = await device.newPage();
    await as(page, /Ines Amaral/);
    await toCheck(page, 'bed-A1');
    expect(await goOn(page).count()).toBe(0);

    await as(page, /Noor Haddad/);
    await toCheck(page, 'bed-A1');
    await goOn(page).click();
    await page.getByText('Stage 2 of 6').waitFor();
    await page.getByRole('button', { name: 'Stop before this' }).click();
    await page.getByRole('button', { name: 'Record this check' }).click();
    await page.getByText('Recorded: Staged check.').waitFor();
    await toCheck(page, 'bed-A1');
    expect(await goOn(page).count()).toBe(0);
    await device.close();
  });
});
