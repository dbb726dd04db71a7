import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sayWho } from './open-kit.ts';
import {
  openBrowser,
  openScreen,
  PHONE_SIZE,
  shoot,
  startBuilt,
  WALL_SIZE,
  type RunningServer,
} from './support.ts';
import { confirmPerson } from './bedside-support.ts';

let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  server = await startBuilt('tests/support/open-server.mjs');
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** Taps the answer of one question on the open stage. */
const tap = (page: Page, question: string, answer: string) =>
  page.getByRole('group', { name: question }).getByRole('button', { name: answer, exact: true }).click();

describe('a ward from an empty folder', () => {
  it('is set up on the first-run page, takes in a person, and shows a staged check that stopped', async () => {
    const desk = await openScreen(browser, WALL_SIZE);
    await desk.page.goto(server.url);
    await desk.page.getByRole('heading', { name: 'Set up a ward' }).waitFor();
    await desk.page.getByLabel('Name').fill('Test Ward');
    await desk.page.getByLabel('Time zone').fill('Europe/Lisbon');
    await desk.page.getByLabel('Bays').fill('1');
    await desk.page.getByLabel('Beds in each').fill('2');
    await desk.page.getByRole('button', { name: /Lay out 2 beds/ }).click();
    await shoot(desk.page, 'set-up-1920');
    await desk.page.getByRole('button', { name: /Set up the ward with 2 beds/ }).click();
    await desk.page.getByRole('heading', { name: 'Who works here' }).waitFor();
    for (const [name, role] of [
      ['Carla Vane', 'charge nurse'],
      ['Noor Winfield', 'nurse'],
    ]) {
      await desk.page.getByLabel('Name').fill(name!);
      await desk.page.getByLabel('Role').selectOption({ label: role! });
      await desk.page.getByRole('button', { name: 'Add', exact: true }).click();
      await desk.page.getByRole('list', { name: 'Staff list' }).getByText(name!).waitFor();
    }
    await desk.page.getByRole('link', { name: 'Open the wall' }).click();
    await desk.page.locator('article.tile').first().waitFor();

    const phone = await openScreen(browser, PHONE_SIZE);
    const { page } = phone;
    const wards = (await (await fetch(`${server.url}/api/wards`)).json()) as { wards: { ward: string }[] };
    await page.goto(`${server.url}/wards/${wards.wards[0]!.ward}/bedside`);
    await sayWho(page, /Noor Winfield/);
    await page.getByRole('link', { name: /^A1/ }).click();
    await page.getByRole('button', { name: 'A person arrives here' }).click();
    await page.getByLabel('Name, as on the wristband').fill('Invented Person');
    await page.getByLabel('Date of birth').fill('1941-03-09');
    await page.getByRole('group', { name: 'Comes from' }).getByRole('button', { name: /home/i }).click();
    await page.getByRole('button', { name: 'Record the arrival' }).click();

    const tile = desk.page
      .locator('article.tile')
      .filter({ has: desk.page.getByRole('heading', { name: 'A1' }) });
    await tile
      .getByText(/CHECK BEFORE/i)
      .first()
      .waitFor({ timeout: 15_000 });
    await shoot(desk.page, 'wall-new-person-1920');

    await page.getByRole('button', { name: 'Check', exact: true }).click();
    await confirmPerson(page);
    await page.getByRole('button', { name: /^Full under 4 minutes/ }).click();
    await tap(page, 'Waits and asks for help', 'Yes');
    await tap(page, 'Follows instructions (own language or gesture)', 'Yes');
    await page.getByRole('button', { name: 'All the rest met' }).click();
    await shoot(page, 'bedside-check-clear-390');
    await page.getByRole('button', { name: 'Stage met, go on' }).click();
    await page.getByText('Stage 2 of 6').waitFor();
    await page
      .getByRole('group', { name: /back raised for 3 minutes/ })
      .getByRole('button', { name: 'Not met', exact: true })
      .click();
    await page.getByRole('heading', { name: 'Make safe first' }).waitFor();
    await shoot(page, 'bedside-make-safe-390');
    await page.getByRole('button', { name: 'The person is safe, go on' }).click();
    await page.getByRole('button', { name: 'No symptom', exact: true }).click();
    await page.getByRole('button', { name: 'Go on to record' }).click();
    await page.getByText('Preview, not recorded').waitFor();
    await page.getByRole('button', { name: 'Record this check' }).click();

    await tile.getByText('Supported', { exact: true }).waitFor({ timeout: 15_000 });
    await tile.getByText(/lift/).first().waitFor();
    expect(await tile.innerText()).not.toMatch(/CHECK BEFORE/i);
    await shoot(desk.page, 'wall-first-check-1920');
    expect(await tile.innerText()).not.toContain('Invented');
    expect(desk.faults).toEqual([]);
    expect(phone.faults).toEqual([]);
  });
});
