import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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

// One story, told in order on one server with sign-in on: each part needs what the one before made.
let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  server = await startBuilt('server/dist/main.js');
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const ADMIN = { name: 'Ines Calder', signInName: 'ines', password: 'copper kettle on a slow tram' };
const NURSE = {
  name: 'Noor Winfield',
  signInName: 'noor',
  password: 'nine green umbrellas later',
  code: '407318',
};
const path = (page: Page) => new URL(page.url()).pathname;
const noSideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
/** Small targets are for no gloved thumb: every button, link and field that stands alone. */
const smallTargets = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('button, input:not([type=radio]), select, main a, header a')]
      .map((one) => ({ words: one.textContent || one.id, box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.height > 0 && box.height < 44)
      .map(({ words }) => words),
  );
async function whole(page: Page, name: string): Promise<void> {
  await shoot(page, name);
  expect(await screenFaults(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await noSideways(page)).toBe(0);
}

let ward = '';
let desk: Awaited<ReturnType<typeof openScreen>>;
let invitation = '';

describe('signing in, from the first start on', () => {
  it('given nobody who could sign in, names no ward and says where the link is', async () => {
    const { page, faults } = await openScreen(browser, PHONE_SIZE);
    await page.goto(server.url);
    await page.getByText('Nobody can sign in yet').waitFor();
    await whole(page, 'home-first-run-390');
    await page.goto(`${server.url}/wards/somewhere/bedside`);
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect(path(page)).toBe('/sign-in');
    await page.getByLabel('Sign-in name').fill('nobody');
    await page.getByLabel('Password', { exact: true }).fill('not the password');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await page.getByText('Name and password do not belong together').first().waitFor();
    await whole(page, 'sign-in-refused-390');
    // The browser's own line for the 401 is no fault of the page.
    expect(faults.filter((one) => !one.includes('401'))).toEqual([]);
  });

  it('the printed link makes the first administrator, once, and leaves the address bar', async () => {
    const link = /\S+\/join#\S+/.exec(server.said())?.[0] ?? '';
    expect(link).toMatch(/#[\w-]{43}$/);
    desk = await openScreen(browser, WALL_SIZE);
    const { page } = desk;
    const first = new URL(link);
    await page.goto(`${server.url}${first.pathname}${first.hash}`);
    await page.getByRole('heading', { name: 'The first administrator' }).waitFor();
    expect(page.url()).toBe(`${server.url}/join`);
    await page.getByRole('button', { name: 'Join and sign in' }).click();
    await page.getByText('at least 12 characters', { exact: true }).waitFor();
    await page.getByLabel('Your name').fill(ADMIN.name);
    await page.getByLabel('Sign-in name').fill(ADMIN.signInName);
    await page.getByLabel('Password', { exact: true }).fill(ADMIN.password);
    await whole(page, 'join-first-1920');
    await page.getByRole('button', { name: 'Join and sign in' }).click();
    await page.getByRole('heading', { name: 'Set up a ward' }).waitFor();

    const again = await openScreen(browser, PHONE_SIZE);
    await again.page.goto(`${server.url}${first.pathname}${first.hash}`);
    await again.page.getByText('That link no longer works').waitFor();
    await whole(again.page, 'join-over-390');
  });

  it('the administrator sets up a ward and adds its staff, each with a standing', async () => {
    const { page, faults } = desk;
    await page.getByLabel('Name').fill('Alder Ward');
    await page.getByLabel('Time zone').fill('Europe/Lisbon');
    await page.getByLabel('Bays').fill('1');
    await page.getByLabel('Beds in each').fill('2');
    await page.getByRole('button', { name: /Lay out 2 beds/ }).click();
    await page.getByRole('button', { name: /Set up the ward with 2 beds/ }).click();
    await page.getByRole('heading', { name: 'Who works here' }).waitFor();
    for (const [name, role, standing] of [
      [NURSE.name, 'nurse', "the ward's own"],
      ['Carla Vane', 'charge nurse', "the ward's own"],
      ['Tamsin Roe', 'nurse', 'agency'],
    ] as const) {
      await page.getByLabel('Name').fill(name);
      await page.getByLabel('Role').selectOption({ label: role });
      await page.getByLabel('Standing').selectOption({ label: standing });
      await page.getByRole('button', { name: 'Add', exact: true }).click();
      await page.getByRole('list', { name: 'Staff list' }).getByText(name).waitFor();
    }
    await page.getByText('agency: entries wait for a second signature').waitFor();
    await whole(page, 'set-up-staff-1920');
    ward = new URL(
      (await page.getByRole('link', { name: 'Open the wall' }).getAttribute('href'))!,
      server.url,
    ).pathname.split('/')[2]!;
    expect(faults.filter((one) => !one.includes('401'))).toEqual([]);
  });

  it('an invited nurse joins with a name, a password and a short code', async () => {
    const { page } = desk;
    invitation = await page.evaluate(
      async ({ of, name }) => {
        const ask = async (url: string, body?: object) =>
          (
            await fetch(url, {
              method: body ? 'POST' : 'GET',
              headers: { 'content-type': 'application/json' },
              ...(body ? { body: JSON.stringify(body) } : {}),
            })
          ).json() as Promise<{ staff: { staff: string; name: string }[]; path: string }>;
        const { staff } = await ask(`/api/wards/${of}/staff`);
        const member = staff.find((one) => one.name === name)!;
        return (await ask(`/api/wards/${of}/accounts`, { staff: member.staff, name })).path;
      },
      { of: ward, name: NURSE.name },
    );
    const phone = await openScreen(browser, PHONE_SIZE);
    await phone.page.goto(`${server.url}${invitation}`);
    await phone.page.getByText(NURSE.name).waitFor();
    await phone.page.getByLabel('Sign-in name').fill(NURSE.signInName);
    await phone.page.getByLabel('Password', { exact: true }).fill(NURSE.password);
    await phone.page.getByLabel('Short code', { exact: true }).fill(NURSE.code);
    await whole(phone.page, 'join-390');
    await phone.page.getByRole('button', { name: 'Join and sign in' }).click();
    await phone.page.getByRole('heading', { name: 'Alder Ward' }).waitFor();
    // Nobody's business but an administrator's.
    expect(await phone.page.getByText('Set up another ward').count()).toBe(0);
    await whole(phone.page, 'home-nurse-390');

    await phone.page.getByRole('link', { name: NURSE.name }).click();
    await phone.page.getByRole('heading', { name: 'How you sign in' }).waitFor();
    await whole(phone.page, 'account-390');
    await phone.page.getByRole('button', { name: 'Sign out' }).click();
    await phone.page.getByRole('link', { name: /^Sign in/ }).waitFor();
    // A deep link asks for the sign-in, and goes on from there.
    await phone.page.goto(`${server.url}/wards/${ward}/bedside`);
    await phone.page.getByLabel('Sign-in name').fill(NURSE.signInName);
    await phone.page.getByLabel('Password', { exact: true }).fill(NURSE.password);
    await phone.page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await phone.page.getByRole('heading', { name: 'Which bed?' }).waitFor();
    await phone.context.close();
  });

  /** The administrator types the code that the screen shows. */
  async function approve(screen: Page, kind: 'wall' | 'shared', place: string): Promise<void> {
    const shown = (await screen.locator('p.code').getAttribute('aria-label'))!;
    const code = shown.replace('The code is ', '').replaceAll(' ', '');
    const status = await desk.page.evaluate(
      async ({ of, body }) =>
        (
          await fetch(`/api/wards/${of}/devices`, {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify(body),
          })
        ).status,
      { of: ward, body: { code, kind, level: kind === 'wall' ? 'bed-only' : 'whole', place } },
    );
    expect(status).toBe(200);
  }

  it('a phone of the ward is paired, and asks for name and code before an entry goes out', async () => {
    const { page, faults } = await openScreen(browser, PHONE_SIZE);
    await page.goto(server.url);
    await page.getByRole('link', { name: /Pair this screen/ }).click();
    await page.getByRole('button', { name: /A shared device/ }).waitFor();
    await whole(page, 'pair-choose-390');
    await page.getByRole('button', { name: /A shared device/ }).click();
    await page.locator('p.code').waitFor();
    await whole(page, 'pair-code-390');
    await approve(page, 'shared', 'phone 1');
    await page.getByRole('heading', { name: 'Which bed?' }).waitFor();
    expect(path(page)).toBe(`/wards/${ward}/bedside`);

    await page.getByRole('link', { name: /^A1/ }).click();
    await page.getByRole('button', { name: 'A person arrives here' }).click();
    await page.getByLabel('Name, as on the wristband').fill('Invented Person');
    await page.getByLabel('Date of birth').fill('1941-03-09');
    await page.getByRole('group', { name: 'Comes from' }).getByRole('button', { name: /home/i }).click();
    await page.getByRole('button', { name: 'Record the arrival' }).click();

    const ask = page.getByRole('dialog', { name: 'Who are you?' });
    await ask.getByText(NURSE.name).waitFor();
    await whole(page, 'sign-name-390');
    await ask.getByRole('button', { name: new RegExp(NURSE.name) }).click();
    await ask.getByLabel(`Code of ${NURSE.name}`).waitFor();
    for (const digit of '111111') await ask.getByRole('button', { name: digit, exact: true }).click();
    await ask.getByRole('button', { name: 'Sign', exact: true }).click();
    await ask.getByText(/4 tries are left/).waitFor();
    await whole(page, 'sign-wrong-code-390');
    // By keys alone, as at a workstation.
    await ask.getByLabel(`Code of ${NURSE.name}`).focus();
    await page.keyboard.type(NURSE.code);
    await page.keyboard.press('Enter');
    await page.getByText('Recorded: ').waitFor();
    await page.getByText(`signing as ${NURSE.name} until`).waitFor();
    await whole(page, 'signing-390');
    const board = await desk.page.evaluate(
      async (of) =>
        (await (await fetch(`/api/wards/${of}/board`)).json()) as { board: { beds: { state: string }[] } },
      ward,
    );
    expect(board.board.beds[0]!.state).toBe('occupied');

    await page.getByRole('button', { name: 'Sign off' }).click();
    await page.getByRole('button', { name: 'Who are you?' }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Who are you?' }).waitFor();
    // No name of staff, code or person is left in this browser.
    const kept = await page.evaluate(() => JSON.stringify({ ...localStorage, ...sessionStorage }));
    expect(kept).not.toMatch(/Winfield|407318|Invented/);
    expect(faults.filter((one) => !/40[13]/.test(one))).toEqual([]);
  });

  it('a wall is paired, goes to its ward by itself after a reload, and is nothing but that wall', async () => {
    const { page, faults } = await openScreen(browser, WALL_SIZE);
    await page.goto(`${server.url}/pair`);
    await page.getByRole('button', { name: /A wall/ }).click();
    await page.locator('p.code').waitFor();
    await whole(page, 'pair-code-1920');
    await approve(page, 'wall', 'corridor');
    await page.locator('article.tile').first().waitFor();
    expect(path(page)).toBe(`/wards/${ward}/wall`);
    await page
      .getByText(/CHECK BEFORE/)
      .first()
      .waitFor();
    await shoot(page, 'wall-paired-1920');
    expect(await page.content()).not.toContain('Invented');

    await page.goto(server.url);
    await page.locator('article.tile').first().waitFor();
    await page.goto(`${server.url}/wards/${ward}/bedside`);
    await page.locator('article.tile').first().waitFor();
    expect(path(page)).toBe(`/wards/${ward}/wall`);

    // What it has painted, and by which version of the program, stands on the list of devices.
    const line = () =>
      desk.page.evaluate(async (of) => {
        const { devices } = (await (await fetch(`/api/wards/${of}/devices`)).json()) as {
          devices: { device: string; kind: string; painted: number | null; page: string | null }[];
        };
        return devices.find((one) => one.kind === 'wall')!;
      }, ward);
    await expect.poll(async () => (await line()).painted, { timeout: 20_000 }).not.toBeNull();
    expect((await line()).page).toMatch(/^\d+\.\d+\.\d+$/);

    // Taken off the ward, it shows nothing of it at once.
    await desk.page.evaluate(
      async ({ of, device }) =>
        void (await fetch(`/api/wards/${of}/devices/${device}`, {
          method: 'DELETE',
          headers: { 'content-type': 'application/json' },
        })),
      { of: ward, device: (await line()).device },
    );
    await page.getByText('This screen was taken off the ward').waitFor();
    expect(await page.locator('article.tile').count()).toBe(0);
    await whole(page, 'wall-revoked-1920');
    expect(faults.filter((one) => !one.includes('401'))).toEqual([]);
  });

  it('given a sign-in that ended, keeps the half-written entry, asks again over it, and sends it', async () => {
    const { page, faults } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${server.url}/wards/${ward}/bedside`);
    const signIn = async (within: Page | ReturnType<Page['getByRole']>) => {
      await within.getByLabel('Sign-in name').fill(NURSE.signInName);
      await within.getByLabel('Password', { exact: true }).fill(NURSE.password);
      await within.getByRole('button', { name: 'Sign in', exact: true }).click();
    };
    await signIn(page);
    await page.getByRole('link', { name: /^A1/ }).click();
    await page.getByRole('button', { name: 'Something happened' }).click();
    const sheet = page.getByRole('dialog', { name: /Something happened/ });
    await sheet.getByText('Add a few words first').click();
    await sheet.getByLabel('In a few words').fill('went pale at the edge of the bed');

    await page.evaluate(async () => {
      await fetch('/api/session', { method: 'DELETE', headers: { 'content-type': 'application/json' } });
    });
    await page.getByText('Sign in to see this ward').waitFor({ state: 'attached', timeout: 30_000 });
    expect(await page.getByText('Invented Person').count()).toBe(0);
    expect(await page.getByText('person in this bed has changed').count()).toBe(0);
    await shoot(page, 'signed-out-390');
    expect(await sheet.getByLabel('In a few words').inputValue()).toContain('went pale');
    await sheet.getByRole('button', { name: 'Faint', exact: true }).click();
    const ask = page.getByRole('dialog', { name: 'Sign in' });
    await ask.getByText('What you entered is kept').waitFor();
    await whole(page, 'sign-in-again-390');
    await signIn(ask);
    await page.getByText(/^Recorded: /).waitFor();
    await page.getByText('Invented Person').waitFor();
    expect(faults.filter((one) => !one.includes('401'))).toEqual([]);
  });
});
