import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  axeFaults,
  openBrowser,
  openScreen,
  PHONE_SIZE,
  shoot,
  startBuilt,
  WALL_SIZE,
  type RunningServer,
} from './support.ts';

// One story, told in order on one server with sign-in on: each part needs what the one before made.
let server: RunningServer;
let browser: Browser;
const WARD = 'alder';
const password = (of: string) => `the ${of} walks past nine lamps`;
const NAMES = {
  ines: ['Ines Amaral', 'charge-nurse'],
  noor: ['Noor Haddad', 'nurse'],
  tamsin: ['Tamsin Roe', 'nurse'],
  rita: ['Rita Sorel', 'records'],
} as const;
type Name = keyof typeof NAMES;
let admin: Page;

/** Asks the server as the page's own script would: its cookies, its origin. */
const ask = (page: Page, method: string, path: string, body?: object, headers: Record<string, string> = {}) =>
  page.evaluate(
    async (one) => {
      const answer = await fetch(one.path, {
        method: one.method,
        headers: { 'content-type': 'application/json', ...one.headers },
        ...(one.body ? { body: JSON.stringify(one.body) } : {}),
      });
      const text = await answer.text();
      if (!answer.ok) throw new Error(`${one.path}: ${text}`);
      return (text === '' ? {} : JSON.parse(text)) as Record<string, unknown>;
    },
    { method, path, body, headers },
  );
const enter = (page: Page, name: string, data: object, headers?: Record<string, string>) => {
  const now = new Date().toISOString();
  const envelope = {
    commandId: crypto.randomUUID(),
    occurred: { at: now },
    entered: { at: now, offsetMinutes: 0 },
    source: { kind: 'person' },
    expect: 'latest',
  };
  return ask(page, 'POST', `/api/wards/${WARD}/commands/${name}`, { ...envelope, data }, headers);
};
const entries = async (page: Page, stay: string, type: string) => {
  const { timeline } = (await ask(page, 'GET', `/api/wards/${WARD}/stays/${stay}`)) as {
    timeline: { type: string; author: { staff: string } }[];
  };
  return timeline.filter((entry) => entry.type === type).map(({ author }) => author.staff);
};
async function accept(page: Page, path: string, signInName: string, code?: string) {
  const token = path.split('#')[1];
  await ask(page, 'POST', '/api/invitations/accept', {
    token,
    name: signInName,
    signInName,
    password: password(signInName),
    ...(code ? { code } : {}),
  });
}
async function signInHere(page: Page, name: Name) {
  const dialog = page.getByRole('dialog').filter({ hasText: 'Sign-in name' });
  await dialog.getByLabel('Sign-in name').fill(name);
  await dialog.getByLabel('Password', { exact: true }).fill(password(name));
  await dialog.getByRole('button', { name: 'Sign in', exact: true }).click();
  await dialog.waitFor({ state: 'detached' });
}
async function screenOf(name: Name, size = WALL_SIZE) {
  const { page, context, faults } = await openScreen(browser, size);
  await page.goto(`${server.url}/sign-in`);
  await ask(page, 'POST', '/api/session', { signInName: name, password: password(name) });
  return { page, context, faults };
}
async function whole(page: Page, name: string) {
  await shoot(page, name);
  expect(await axeFaults(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
}

beforeAll(async () => {
  server = await startBuilt('server/dist/main.js');
  browser = await openBrowser();
  ({ page: admin } = await openScreen(browser, WALL_SIZE));
  await admin.goto(server.url);
  await accept(admin, /\S+\/join#\S+/.exec(server.said())![0], 'admin');
  const beds = ['A1', 'A2'].map((label) => ({ bed: `bed-${label}`, label, bay: 'Bay A' }));
  await enter(admin, 'set-up-ward', { name: 'Alder', zone: 'Europe/Lisbon', beds });
  for (const [staff, [name, role]] of Object.entries(NAMES)) {
    await enter(admin, 'add-staff-member', { staff, name, role });
  }
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
      { 'x-footboard-staff': 'noor' },
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
