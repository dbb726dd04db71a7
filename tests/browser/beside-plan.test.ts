/** The small facts beside a plan, from the phone at the bed to the stay page, in the units and the language of the ward. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sayWho } from './open-kit.ts';
import { confirmPerson } from './bedside-support.ts';
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

async function bedside(bed: string, who: string) {
  const screen = await openScreen(browser, PHONE_SIZE);
  const { page } = screen;
  await page.goto(`${server.url}/wards/larkfield/bedside/${bed}`);
  await sayWho(page, new RegExp(who));
  const open = async (sheet: string) => {
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name: sheet, exact: true }).click();
  };
  return { ...screen, open };
}

describe('what stands beside a plan', () => {
  const line = 'Let him look at the frame before he rises';

  it('is entered in a few taps and stands at the bedside and on the stay page', async () => {
    const { page, faults, open } = await bedside('lf-a4', 'Nuri Halvard');
    await open('Infection steps');
    await page.getByRole('button', { name: 'Record the infection steps' }).click();
    await page.getByText('apply in the room').waitFor();

    await open('Line for the bedside');
    await page.getByLabel('One line for whoever moves the person').fill(line);
    await page.getByText('19 signs left').waitFor();
    expect(await screenFaults(page)).toEqual([]);
    await shoot(page, 'line-390');
    await page.getByRole('button', { name: 'Show this line' }).click();
    await page.getByText(line).waitFor();

    await open('Expected to leave');
    await page.getByRole('button', { name: 'Tomorrow, 11:00' }).click();
    expect(await screenFaults(page)).toEqual([]);
    await shoot(page, 'leaving-390');
    await page.getByRole('button', { name: 'Record the expected time' }).click();
    await page.getByText('Recorded: Expected to leave.').waitFor();
    await shoot(page, 'beside-plan-390');

    await page.getByRole('link', { name: 'The whole stay, entry by entry' }).click();
    await page.getByText(`Line for the bedside: ${line}`).waitFor();
    await page.setViewportSize(WALL_SIZE);
    expect(await screenFaults(page)).toEqual([]);
    await shoot(page, 'beside-plan-1920');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('the words of the line come to no wall', async () => {
    const { page, faults } = await openScreen(browser, WALL_SIZE);
    const heard: string[] = [];
    page.on('websocket', (socket) =>
      socket.on('framereceived', ({ payload }) => heard.push(String(payload))),
    );
    await page.goto(`${server.url}/wards/larkfield/wall`);
    await page.getByText('A4', { exact: true }).first().waitFor();
    expect(await page.locator('body').innerText()).not.toContain(line);
    expect(heard.join()).toContain('lf-a4');
    expect(heard.join()).not.toContain(line);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a weight is typed in pounds and kept in kilograms once the ward says so, and the forms speak German', async () => {
    const { page, faults } = await openScreen(browser, WALL_SIZE);
    await page.goto(`${server.url}/wards/larkfield/settings`);
    await sayWho(page, /Ida Merrow/);
    const screens = page.getByRole('region', { name: 'Screens' });
    await screens.getByRole('radio', { name: 'Pounds' }).check();
    await screens.getByRole('radio', { name: 'Feet' }).check();
    await screens.getByText('Read from 5 m, capitals must be 29.1 mm high').waitFor();
    expect(await screenFaults(page)).toEqual([]);
    await shoot(page, 'settings-screens-1920');
    await screens.getByRole('button', { name: 'Save the screens' }).click();
    await screens.getByText('Saved.').waitFor();

    const weighing = await bedside('lf-a6', 'Nuri Halvard');
    await weighing.open('Weight');
    await confirmPerson(weighing.page);
    await weighing.page.getByLabel('Body weight').fill('198');
    await weighing.page.getByLabel('Body weight').blur();
    await weighing.page.getByText('That is 89.8 kg, or 14 st 2 lb.').waitFor();
    await shoot(weighing.page, 'weight-in-pounds-390');
    await weighing.page.getByRole('button', { name: 'Record the weight' }).click();
    await weighing.page.getByText('Recorded: Weight.').waitFor();
    await weighing.page.getByRole('link', { name: 'The whole stay, entry by entry' }).click();
    // 198 lb of 0.45359237 kg each (exact), to the gram.
    await weighing.page.getByText('Weight 89.811 kg (measured)').waitFor();
    expect(weighing.faults).toEqual([]);
    await weighing.page.context().close();

    await screens.getByRole('radio', { name: 'Deutsch' }).check();
    await screens.getByRole('button', { name: 'Save the screens' }).click();
    await page.getByRole('button', { name: 'Bildschirme sichern' }).waitFor();
    await page.getByText('Aus 16 ft gelesen').waitFor();
    await page.context().close();
    expect(faults).toEqual([]);

    const phone = await openScreen(browser, PHONE_SIZE);
    await phone.page.goto(`${server.url}/wards/larkfield/bedside/lf-c6`);
    await phone.page.getByText('Hygienemaßnahmen').waitFor();
    expect(await phone.page.locator('html').getAttribute('lang')).toBe('de');
    await shoot(phone.page, 'beside-plan-de-390');
    expect(phone.faults).toEqual([]);
    await phone.page.context().close();
  });
});
