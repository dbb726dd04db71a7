/** A7: an entry about the wrong person is withdrawn three hours later; every screen says that it shows it, and paper is told to be old. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Cable } from '../support/cable.ts';
import { accept, ask, enter, setUpAlder, WARD } from './access-support.ts';
import { screenFaults, openBrowser, openScreen, shoot, startBuilt, WALL_SIZE } from './support.ts';
import type { RunningServer } from './support.ts';

type Screen = Awaited<ReturnType<typeof openScreen>>;
let server: RunningServer;
let browser: Browser;
/** The charge nurse at a desk. */
let ines: Page;
let north: Screen;
let corridor: Screen;
/** Between the corridor's wall and the server. */
let cable: Cable;
const HOUR = 3_600_000;

/** A wall of the ward with a place of its own, as somebody in front of it pairs it. */
async function wallAt(place: string, shows: string, port = server.port): Promise<Screen> {
  const screen = await openScreen(browser, WALL_SIZE);
  const { page } = screen;
  await page.goto(`http://127.0.0.1:${port}/pair`);
  await page.getByRole('button', { name: /wall/i }).first().click();
  const code = page.getByText(/^[0-9A-Z]{4}\s?[0-9A-Z]{4}$/).first();
  await code.waitFor();
  await ines.goto(`${server.url}/wards/${WARD}/devices`);
  await ines.getByLabel('Code on the screen').fill((await code.innerText()).replaceAll(/\s/g, ' '));
  await ines.getByLabel('Where it is').fill(place);
  await ines.getByRole('radio', { name: shows }).check();
  await ines.getByRole('button', { name: 'Approve' }).click();
  await ines.getByText(`Approved: ${place}`).waitFor();
  await page.locator('article.tile').first().waitFor({ timeout: 60_000 });
  return screen;
}
const hold = ({ page }: Screen) => page.getByRole('article', { name: /^Bed A1/ }).getByText(/HOLD/);

beforeAll(async () => {
  server = await startBuilt('server/dist/main.js');
  browser = await openBrowser();
  const { page: admin, context } = await openScreen(browser, WALL_SIZE);
  await setUpAlder(admin, server, { ines: ['Ines Amaral', 'charge-nurse'] });
  const asked = { staff: 'ines', name: 'Ines Amaral' };
  const { path } = await ask(admin, 'POST', `/api/wards/${WARD}/accounts`, asked);
  ({ page: ines } = await openScreen(browser, WALL_SIZE));
  await ines.goto(`${server.url}/sign-in`);
  await accept(ines, String(path), 'ines');
  await context.close();
  north = await wallAt('station north', 'Beds with initials');
  cable = await Cable.between(server.port);
  corridor = await wallAt('corridor east', 'Beds, no initials', cable.port);
}, 400_000);
afterAll(async () => {
  await browser?.close();
  await cable?.close();
  await server?.stop();
});

describe('A7 an entry about the wrong person, withdrawn 3 h later', () => {
  it('SCREEN-29 given a wall that is cut off meanwhile, it is named until it shows the withdrawal too, and the sheet is superseded', async () => {
    const began = Date.now() - 4 * HOUR;
    const person = { person: 'of-stay-1', bed: 'bed-A1', from: 'home', identity: { name: 'Rosa Pinto' } };
    await enter(ines, 'begin-stay', { stay: 'stay-1', ...person }, { at: began });
    const wrong = { hold: 'hold-1', scope: 'out-of-bed', reason: 'after-fall' };
    const reviewAt = new Date(Date.now() + 4 * HOUR).toISOString();
    const placed = await enter(
      ines,
      'place-hold',
      { stay: 'stay-1', ...wrong, owner: 'ines', reviewAt },
      { at: Date.now() - 3 * HOUR },
    );
    await hold(north).first().waitFor();
    await hold(corridor).first().waitFor();
    await north.page.locator('.initials').first().waitFor();
    expect(await corridor.page.locator('.initials').count()).toBe(0);
    for (const theme of ['day', 'night']) {
      await north.page.evaluate((to) => (document.documentElement.dataset['theme'] = to), theme);
      await shoot(north.page, `wall-initials-${theme}-1920`);
      expect(await screenFaults(north.page)).toEqual([]);
    }
    await ines.evaluate((path) => fetch(path), `/api/wards/${WARD}/paper/sheet`);

    cable.pull();
    const [{ id }] = placed['events'] as [{ id: string }];
    await enter(ines, 'make-retraction', { stay: 'stay-1', target: id, reason: 'wrong-person' });
    await hold(north).first().waitFor({ state: 'detached' });

    await ines.goto(`${server.url}/wards/${WARD}/stays/stay-1`);
    const withdrawn = ines.locator(`#entry-${id}`);
    await withdrawn.getByText('withdrawn: see').waitFor();
    await ines.getByText('Seen by 1 of 2 screens; not yet: corridor east').waitFor({ timeout: 90_000 });
    await shoot(ines, 'corrected-not-seen-1920');
    expect(await screenFaults(ines)).toEqual([]);
    await ines.goto(`${server.url}/wards/${WARD}/devices`);
    await ines.getByText('Corrections of the last day that a screen has not shown yet').waitFor();
    await shoot(ines, 'corrected-devices-1920');

    cable.plugIn();
    await hold(corridor).first().waitFor({ state: 'detached', timeout: 90_000 });
    await ines.getByRole('link', { name: 'Open the entry' }).click();
    await ines.getByText('Seen by 2 of 2 screens').waitFor({ timeout: 90_000 });
    expect(await withdrawn.locator('del').count()).toBe(1);

    await ines.goto(`${server.url}/wards/${WARD}/paper`);
    await ines.getByText(/Superseded: an entry behind bed A1 was changed/).waitFor();
    await shoot(ines, 'corrected-paper-1920');
    expect(north.faults).toEqual([]);
  });
});
