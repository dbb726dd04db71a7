import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sayWho } from './open-kit.ts';
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

/** The settings of the demo's small ward, used by somebody of its staff list. */
async function settingsAs(person: RegExp): Promise<{ page: Page; faults: string[] }> {
  const screen = await openScreen(browser, WALL_SIZE);
  await screen.page.goto(`${server.url}/wards/millbrook/settings`);
  await sayWho(screen.page, person);
  return screen;
}
const asked = async (path: string) => (await fetch(`${server.url}/api/wards/millbrook/${path}`)).json();

describe('ward settings in a browser', () => {
  it('a charge nurse renames the ward, moves its night, adds a bed and closes it', async () => {
    const { page, faults } = await settingsAs(/charge nurse/);
    await page.getByLabel('Name of the ward').fill('Mill Ward');
    await page.getByLabel('Night begins').fill('22:00');
    await page.getByRole('button', { name: 'Save name and clock' }).click();
    await page.getByText('Saved.').waitFor();
    await page.getByRole('heading', { name: 'Mill Ward: settings' }).waitFor();
    expect(await asked('board')).toMatchObject({ board: { name: 'Mill Ward', nightFrom: '22:00' } });

    await page.getByRole('button', { name: 'Add a bed' }).click();
    await page.getByLabel('Label').fill('Z9');
    await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
    const beds = page.getByRole('list', { name: 'Beds of the ward' });
    await beds.getByText('Z9').waitFor();
    await page.getByRole('button', { name: 'Close bed Z9' }).click();
    await page.getByRole('button', { name: 'Close this bed' }).click();
    await beds.getByText('Z9').waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });

  it('a faulty document is refused with its place; a whole one is in force at once', async () => {
    const { page } = await settingsAs(/charge nurse/);
    const { document } = (await asked('rules')) as { document: RulesDocument };
    const card = page.getByRole('region', { name: 'Rules: limits and validities' });
    await card.getByText('Publish a new version').click();
    const faulty = {
      ...document,
      version: 2,
      start: { ...document.start, systolicBelow: { value: 'low' } },
    };
    await card.getByLabel('Or the text of it').fill(JSON.stringify(faulty));
    await card.getByRole('button', { name: 'Check this document' }).click();
    await card.getByText('/start/systolicBelow/value').waitFor();
    await shoot(page, 'settings-faulty-document-1920');
    expect(await asked('rules')).toMatchObject({ published: false });

    const stale = { ...document };
    await card.getByLabel('Or the text of it').fill(JSON.stringify(stale));
    await card.getByRole('button', { name: 'Check this document' }).click();
    await card.getByRole('button', { name: 'Publish it for this ward' }).click();
    await card
      .getByText(/the next version of .* is 2/)
      .first()
      .waitFor();

    const whole = structuredClone({ ...document, version: 2 });
    whole.start.systolicBelow = { ...whole.start.systolicBelow, value: 95, owner: 'test clinician' };
    await card.getByLabel('A JSON file').setInputFiles({
      name: 'rules.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(whole)),
    });
    await card.getByText('Whole and well formed').waitFor();
    await shoot(page, 'settings-document-1920');
    await card.getByRole('button', { name: 'Publish it for this ward' }).click();
    await card.getByText('Published. It is in force now.').waitFor();
    expect(await asked('rules')).toMatchObject({
      published: true,
      document: { version: 2, start: { systolicBelow: { value: 95 } } },
    });

    await card.getByText('Every limit with its source').click();
    expect(await screenFaults(page)).toEqual([]);
    await page.setViewportSize(PHONE_SIZE);
    expect(await page.evaluate(() => window.document.documentElement.scrollWidth - window.innerWidth)).toBe(
      0,
    );
    expect(await screenFaults(page)).toEqual([]);
  });

  it('an aide is told that it is not for the role, and whom to ask', async () => {
    const { page } = await settingsAs(/aide/);
    await page.getByLabel('Name of the ward').fill('Other name');
    await page.getByRole('button', { name: 'Save name and clock' }).click();
    await page.getByText(/not for the role aide.*Ask an administrator/).waitFor();
    expect(await asked('board')).not.toMatchObject({ board: { name: 'Other name' } });
  });

  it('works without a mouse: a bed is added by keys alone', async () => {
    const { page } = await settingsAs(/charge nurse/);
    const add = page.getByRole('button', { name: 'Add a bed' });
    await add.focus();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Tab');
    expect(await add.evaluate((e) => getComputedStyle(e).outlineStyle)).toBe('solid');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.getByRole('dialog').getByLabel('Label').focus();
    await page.keyboard.type('Y1');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByRole('list', { name: 'Beds of the ward' }).getByText('Y1').waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toBe('Add a bed');
  });
});
