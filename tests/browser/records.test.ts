import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stayExport } from '@footboard/shared/wire/stay-export';
import { openBrowser, openScreen, PHONE_SIZE, startBuilt, WALL_SIZE, type RunningServer } from './support.ts';
import { WARD, accept, ask, enter, passwordOf, setUpAlder, whole } from './access-support.ts';

// One story, told in order on one server with sign-in on: each part needs what the one before made.
let server: RunningServer;
let browser: Browser;
let admin: Page;
const DAY_MS = 86_400_000;
const NAMES = {
  noor: ['Noor Haddad', 'nurse'],
  ida: ['Ida Quist', 'nurse'],
  rita: ['Rita Sorel', 'records'],
} as const;
/** Planted: it may stand nowhere once it is erased. */
const PERSON = { name: 'Ottilie Brandvoll', note: 'likes the blue stick best' };

async function screenOf(name: 'rita' | 'noor') {
  const screen = await openScreen(browser, WALL_SIZE);
  await screen.page.goto(`${server.url}/sign-in`);
  await ask(screen.page, 'POST', '/api/session', { signInName: name, password: passwordOf(name) });
  return screen;
}
/** On both sizes, back to the large one afterwards. */
async function both(page: Page, name: string) {
  await whole(page, `${name}-1920`);
  await page.setViewportSize(PHONE_SIZE);
  await whole(page, `${name}-390`);
  await page.setViewportSize(WALL_SIZE);
}
async function handOver(page: Page) {
  const coming = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Hand over everything there is' }).click();
  const file = await coming;
  return {
    name: file.suggestedFilename(),
    text: readFileSync(await file.path(), 'utf8'),
  };
}

beforeAll(async () => {
  server = await startBuilt('server/dist/main.js', { KEEP_DAYS: '1' });
  browser = await openBrowser();
  ({ page: admin } = await openScreen(browser, WALL_SIZE));
  await setUpAlder(admin, server, NAMES);
  for (const staff of ['noor', 'rita'] as const) {
    const { path } = await ask(admin, 'POST', `/api/wards/${WARD}/accounts`, {
      staff,
      name: NAMES[staff][0],
    });
    const { page, context } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${server.url}/sign-in`);
    await accept(page, String(path), staff);
    await context.close();
  }
  await enter(admin, 'change-staff-member', { staff: 'ida', active: false });
  const { page: noor, context } = await screenOf('noor');
  const began = Date.now() - 3 * DAY_MS;
  const begin = (stay: string, bed: string, name: string, at: number) =>
    enter(noor, 'begin-stay', { stay, person: `of-${stay}`, bed, from: 'home', identity: { name } }, { at });
  await begin('stay-old', 'bed-A1', PERSON.name, began);
  await enter(
    noor,
    'record-trigger',
    { stay: 'stay-old', kind: 'faint', note: PERSON.note },
    { at: began + 60_000 },
  );
  await enter(
    noor,
    'end-stay',
    { stay: 'stay-old', bed: 'bed-A1', to: 'home' },
    { at: Date.now() - 2 * DAY_MS },
  );
  await begin('stay-now', 'bed-A2', 'Rosa Pinto', Date.now());
  await context.close();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe('PRIVACY-5 whoever keeps the records', () => {
  it('hands over a stay as a file, erases its names and texts after a second tap, and the page reads so', async () => {
    const { page, context, faults } = await screenOf('rita');
    await page.goto(`${server.url}/wards/${WARD}/settings`);
    await page.getByRole('link', { name: 'What is kept' }).click();
    const open = page.getByRole('link', { name: /^Open the stay that ended / });
    await open.waitFor();
    await page.getByRole('button', { name: 'Erase the name of Ida Quist' }).waitFor();
    await both(page, 'records-kept');

    await open.click();
    await page.getByText(PERSON.name).waitFor();
    await page.getByText(PERSON.note).first().waitFor();
    await page.getByRole('button', { name: 'Erase names and texts', exact: true }).scrollIntoViewIfNeeded();
    await both(page, 'records-stay');
    const file = await handOver(page);
    expect(file.name).toBe('footboard-stay-old.json');
    const handed = stayExport.parse(JSON.parse(file.text));
    expect([handed.identity?.name, handed.erased]).toEqual([PERSON.name, false]);
    expect(file.text).toContain(PERSON.note);

    await page.getByRole('button', { name: 'Erase names and texts', exact: true }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByRole('radio', { name: 'Kept long enough' }).check();
    await sheet.getByLabel('In a few words').fill('a day over its time');
    await both(page, 'records-erase');
    await page.setViewportSize(PHONE_SIZE);
    await sheet.getByRole('button', { name: 'Erase the names and texts' }).click();
    await sheet.getByText('This cannot be undone').waitFor();
    // What asks a second time is before one's eyes, without scrolling.
    const sure = (await sheet.getByRole('button', { name: 'Yes, erase for good' }).boundingBox())!;
    expect(sure.y + sure.height).toBeLessThanOrEqual(PHONE_SIZE.height);
    await whole(page, 'records-sure-390');
    await page.setViewportSize(WALL_SIZE);
    await whole(page, 'records-sure-1920');
    await sheet.getByRole('button', { name: 'Yes, erase for good' }).click();
    await sheet.waitFor({ state: 'detached' });
    await page.getByText('The name and the texts of this stay were erased.').waitFor();
    await page.getByText('Trigger: faint. (text removed)').waitFor();
    await both(page, 'records-erased');
    await page.reload();
    await page.getByText('Trigger: faint. (text removed)').waitFor();
    const left = await page.content();
    for (const gone of [PERSON.name, PERSON.note]) expect(left).not.toContain(gone);

    const after = await handOver(page);
    expect(stayExport.parse(JSON.parse(after.text))).toMatchObject({ erased: true, identity: null });
    for (const gone of [PERSON.name, PERSON.note]) expect(after.text).not.toContain(gone);
    await page.goto(`${server.url}/wards/${WARD}/records`);
    await page.getByText('No stay is kept longer than that.').waitFor();
    await page.getByText('Erased already: 1').waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('given a person in a bed, when their stay is open, then it can be handed over and not erased', async () => {
    const { page, context } = await screenOf('rita');
    await page.goto(`${server.url}/wards/${WARD}/stays/stay-now`);
    await page.getByText('Names and texts can be erased once the stay has ended.').waitFor();
    expect(await page.getByRole('button', { name: 'Erase names and texts' }).count()).toBe(0);
    await page.getByRole('link', { name: 'Hand over everything there is' }).waitFor();
    await context.close();
  });

  it('given a nurse, when a stay or the page of what is kept is open, then none of this is offered', async () => {
    const { page, context } = await screenOf('noor');
    await page.goto(`${server.url}/wards/${WARD}/stays/stay-now`);
    await page.getByText('Rosa Pinto').waitFor();
    expect(await page.getByText('For the records').count()).toBe(0);
    await page.goto(`${server.url}/wards/${WARD}/records`);
    await page.getByText('This page is not for your role').waitFor();
    expect(await page.locator('main').getByRole('button').count()).toBe(0);
    await context.close();
  });

  it('PRIVACY-7 given somebody who has left, when their name is erased, then the list reads so at once', async () => {
    const { page, context } = await screenOf('rita');
    await page.goto(`${server.url}/wards/${WARD}/records`);
    await page.getByRole('button', { name: 'Erase the name of Ida Quist' }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByLabel('In a few words').fill('left in spring');
    await both(page, 'records-staff');
    await sheet.getByRole('button', { name: 'Erase the name', exact: true }).click();
    await sheet.getByRole('button', { name: 'Yes, erase for good' }).click();
    await page.getByText('The name is erased.').waitFor();
    const list = page.getByRole('list', { name: 'No longer active' });
    await list.getByText('(text removed)').waitFor();
    expect(await page.content()).not.toContain('Ida Quist');
    await page.reload();
    await list.getByText('(text removed)').waitFor();
    expect(await page.getByRole('button', { name: /^Erase the name of/ }).count()).toBe(0);
    await context.close();
  });
});
