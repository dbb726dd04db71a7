import type { Browser, Page } from 'playwright-core';
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
import { confirmPerson } from './bedside-support.ts';
import { WARD, accept, ask, enter, passwordOf, setUpAlder, whole } from './access-support.ts';

// One story, told in order on one server with sign-in on: each part needs what the one before made.
let server: RunningServer;
let browser: Browser;
const NAMES = {
  ines: ['Ines Amaral', 'charge-nurse'],
  noor: ['Noor Haddad', 'nurse'],
  tamsin: ['Tamsin Roe', 'nurse'],
  rita: ['Rita Sorel', 'records'],
} as const;
type Name = keyof typeof NAMES;
let admin: Page;

const entries = async (page: Page, stay: string, type: string) => {
  const { timeline } = (await ask(page, 'GET', `/api/wards/${WARD}/stays/${stay}`)) as {
    timeline: { type: string; author: { staff: string } }[];
  };
  return timeline.filter((entry) => entry.type === type).map(({ author }) => author.staff);
};
async function signInHere(page: Page, name: Name) {
  const dialog = page.getByRole('dialog').filter({ hasText: 'Sign-in name' });
  await dialog.getByLabel('Sign-in name').fill(name);
  await dialog.getByLabel('Password', { exact: true }).fill(passwordOf(name));
  await dialog.getByRole('button', { name: 'Sign in', exact: true }).click();
  await dialog.waitFor({ state: 'detached' });
}
async function screenOf(name: Name, size = WALL_SIZE) {
  const { page, context, faults } = await openScreen(browser, size);
  await page.goto(`${server.url}/sign-in`);
  await ask(page, 'POST', '/api/session', { signInName: name, password: passwordOf(name) });
  return { page, context, faults };
}
beforeAll(async () => {
  server = await startBuilt('server/dist/main.js');
  browser = await openBrowser();
  ({ page: admin } = await openScreen(browser, WALL_SIZE));
  await setUpAlder(admin, server, NAMES);
  for (const staff of ['ines', 'tamsin', 'rita'] as const) {
    const { path } = await ask(admin, 'POST', `/api/wards/${WARD}/accounts`, {
      staff,
      name: NAMES[staff][0],
    });
    const { page, context } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${server.url}/sign-in`);
    await accept(page, String(path), staff, '482617');
    await context.close();
  }
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe('the pages of those who look after a ward', () => {
  it('accounts: a charge nurse invites a nurse; the link is shown once and works once', async () => {
    const { page, context } = await screenOf('ines');
    await page.goto(`${server.url}/wards/${WARD}/settings`);
    await page.getByRole('link', { name: 'Accounts' }).click();
    await page.getByRole('button', { name: 'Invite Noor Haddad' }).click();
    const link = await page.getByLabel('The link').inputValue();
    expect(link).toMatch(new RegExp(`^${server.url}/join#[\\w-]{43}$`));
    await page.getByText('Link for Noor Haddad: shown once').waitFor();
    await whole(page, 'accounts-1920');
    await page.getByRole('button', { name: 'I have handed it over' }).click();
    expect(await page.content()).not.toContain(link.split('#')[1]);
    await page.getByRole('listitem').filter({ hasText: 'Noor Haddad' }).getByText('a link is out').waitFor();

    const phone = await openScreen(browser, PHONE_SIZE);
    await phone.page.goto(`${server.url}/sign-in`);
    await accept(phone.page, link, 'noor', '482617');
    await phone.context.close();
    await page.reload();
    await page.getByRole('listitem').filter({ hasText: 'Noor Haddad' }).getByText('can sign in').waitFor();
    await page.setViewportSize(PHONE_SIZE);
    await whole(page, 'accounts-390');
    await context.close();
  });

  it('devices: a screen is approved by its code, listed with what it paints, and taken off at once', async () => {
    const { page, context } = await screenOf('ines');
    const wall = await openScreen(browser, WALL_SIZE);
    await wall.page.goto(`${server.url}/pair`);
    await wall.page.getByRole('button', { name: /wall/i }).first().click();
    const code = wall.page.getByText(/^[0-9A-Z]{4}\s?[0-9A-Z]{4}$/).first();
    await code.waitFor();
    await page.goto(`${server.url}/wards/${WARD}/devices`);
    await page.getByLabel('Code on the screen').fill((await code.innerText()).replaceAll(/\s/g, ' '));
    await page.getByLabel('Where it is').fill('station north');
    await page.getByRole('button', { name: 'Approve' }).click();
    await page.getByText('Approved: station north').waitFor();
    await wall.page.locator('article.tile').first().waitFor({ timeout: 20_000 });
    const list = page.getByRole('list', { name: 'Devices of the ward' });
    await list.getByText('connected').waitFor({ timeout: 20_000 });
    await list.getByText('shows the newest').waitFor({ timeout: 40_000 });
    await whole(page, 'devices-1920');
    await page.setViewportSize(PHONE_SIZE);
    await whole(page, 'devices-390');
    await page.getByRole('button', { name: 'Take station north off the ward' }).click();
    await page.getByRole('button', { name: 'Take it off', exact: true }).click();
    await page.getByText('No screen is paired with this ward').waitFor();
    await wall.page.getByText('This screen was taken off the ward').waitFor();
    expect(await wall.page.locator('article.tile').count()).toBe(0);
    await wall.context.close();
    await context.close();
  });

  it('a nurse is told that these pages are not for the role, and whom to ask', async () => {
    const { page, context } = await screenOf('noor');
    for (const path of ['accounts', 'devices', 'access-log', 'glass']) {
      await page.goto(`${server.url}/wards/${WARD}/${path}`);
      await page.getByText('This page is not for your role').waitFor();
      expect(await page.locator('main').getByRole('button').count()).toBe(0);
    }
    await context.close();
  });
});

describe('the outbox and who is signed in', () => {
  it('keeps an entry whose sign-in is gone, never gives it to the next person, and sends it as its author’s', async () => {
    const { page, context } = await screenOf('noor', PHONE_SIZE);
    await page.goto(`${server.url}/wards/${WARD}/bedside/bed-A1`);
    await page.getByText('Nobody is recorded in this bed').waitFor();
    await enter(page, 'begin-stay', {
      stay: 'stay-1',
      person: 'person-1',
      bed: 'bed-A1',
      from: 'home',
      identity: { name: 'Rosa Pinto' },
    });
    await page.getByRole('button', { name: 'Session', exact: true }).click();
    await confirmPerson(page);
    await page.getByRole('button', { name: 'Lifted to chair', exact: true }).click();
    await context.clearCookies();
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    const dialog = page.getByRole('dialog').filter({ hasText: 'Sign-in name' });
    await dialog.waitFor();
    await shoot(page, 'outbox-sign-in-390');
    // Somebody else signs in on this phone.
    await signInHere(page, 'tamsin');
    await page.getByText('Kept until you sign in').waitFor();
    await page.getByText(/made by somebody else than the person who is signed in/).waitFor();
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).last().click();
    await page.reload();
    await page.getByText('1 needs sign-in').waitFor();
    expect(await entries(page, 'stay-1', 'session-recorded')).toEqual([]);

    await page.getByRole('button', { name: 'Show them' }).click();
    await page.getByRole('button', { name: 'Sign in as Noor Haddad' }).click();
    await signInHere(page, 'noor');
    await page.getByText('Not on the board').first().waitFor({ state: 'detached' });
    expect(await entries(page, 'stay-1', 'session-recorded')).toEqual(['noor']);
    await context.close();
  });

  it('an entry made under a name on a shared phone waits for that person to confirm it', async () => {
    const { page: desk, context } = await screenOf('ines');
    await desk.goto(`${server.url}/wards/${WARD}/devices`);
    const phone = await openScreen(browser, PHONE_SIZE);
    await phone.page.goto(`${server.url}/pair`);
    const begun = await ask(phone.page, 'POST', '/api/pairings', { kind: 'shared' });
    await ask(desk, 'POST', `/api/wards/${WARD}/devices`, {
      code: begun['code'] as string,
      kind: 'shared',
      level: 'whole',
      place: 'phone 1',
    });
    await ask(phone.page, 'POST', '/api/pairings/claim', { poll: begun['poll'] as string });
    await enter(
      phone.page,
      'place-hold',
      { stay: 'stay-1', hold: 'hold-1', scope: 'walking', reason: 'unstable' },
      { headers: { 'x-footboard-staff': 'noor' } },
    );
    await phone.context.close();
    await context.close();

    const { page, context: own } = await screenOf('noor', PHONE_SIZE);
    await page.goto(`${server.url}/wards/${WARD}/stays/stay-1`);
    await page.getByText(/Unconfirmed: the name was not checked/).waitFor();
    await whole(page, 'stay-unconfirmed-390');
    await page.goto(`${server.url}/wards/${WARD}/bedside/bed-A1`);
    await page.getByText('1 entry of yours waits for you: confirm').waitFor();
    await page.getByRole('button', { name: 'Look at them' }).click();
    await page.getByRole('button', { name: /^Confirm: / }).click();
    await whole(page, 'own-entries-390');
    await page.getByRole('button', { name: 'It is mine, as it stands' }).click();
    await page.getByText('1 entry of yours waits for you: confirm').waitFor({ state: 'detached' });
    await page.goto(`${server.url}/wards/${WARD}/stays/stay-1`);
    await page.getByText(/confirmed by Noor Haddad, nurse/).waitFor();
    expect(await page.getByText(/Unconfirmed: the name was not checked/).count()).toBe(0);
    await own.close();
  });
});

describe('opening a ward from outside', () => {
  it('asks for a reason, opens the ward, is listed, reviewed by somebody else, and stands in the log', async () => {
    const { path } = await ask(admin, 'POST', '/api/accounts', { staff: 'vera', name: 'Vera Quist' });
    const { page, context } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${server.url}/sign-in`);
    await accept(page, String(path), 'vera');
    await page.goto(`${server.url}/wards/${WARD}/bedside/bed-A1`);
    await page.getByText('This ward is not yours to see').waitFor();
    await page.getByRole('button', { name: 'Open it for an emergency' }).click();
    await page.getByRole('button', { name: 'Open it, and record that I did' }).click();
    await page.getByText('Choose the reason.').waitFor();
    await page.getByRole('radio', { name: 'Emergency' }).check();
    await page.getByLabel('In a few words').fill('called to A1, cardiac arrest team');
    await whole(page, 'glass-dialog-390');
    await page.getByRole('button', { name: 'Open it, and record that I did' }).click();
    await page.getByText('Rosa Pinto').waitFor();
    await context.close();

    const { page: desk, context: deskContext } = await screenOf('ines');
    await desk.goto(`${server.url}/wards/${WARD}/glass`);
    await desk.getByText('called to A1, cardiac arrest team').waitFor();
    await desk.getByText('Waits for review').waitFor();
    await whole(desk, 'glass-1920');
    await desk.getByRole('button', { name: /^Review the opening by/ }).click();
    await desk.getByLabel('What you found').fill('the team came as called');
    await desk.getByRole('button', { name: 'Put the review down' }).click();
    await desk.getByText(/Reviewed by .*: the team came as called/).waitFor();
    expect(await desk.getByText('Waits for review').count()).toBe(0);
    await deskContext.close();

    const { page: records, context: recordsContext } = await screenOf('rita');
    await records.goto(`${server.url}/wards/${WARD}/access-log`);
    await records.getByText('Opened the ward for a reason').first().waitFor();
    await records.getByRole('link', { name: 'Only this stay' }).first().click();
    await records.getByText('Only bed A1.').waitFor();
    await records.getByText('Read a stay, bed A1').first().waitFor();
    await whole(records, 'access-log-1920');
    await recordsContext.close();
  });
});
