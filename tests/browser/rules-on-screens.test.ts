import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sayWho } from './open-kit.ts';
import {
  screenFaults,
  openBrowser,
  openScreen,
  shoot,
  startBuilt,
  WALL_SIZE,
  type RunningServer,
} from './support.ts';
import { confirmPerson, openBedside } from './bedside-support.ts';

let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  // Real speed, so that the ward stands still enough to look at one bed.
  server = await startBuilt('demo/dist/main.js', { DEMO_SPEED: '1' });
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const bedside = (bed: string, who: string) => openBedside(browser, server.url, bed, who);
const stayOf = async (label: string) => {
  const { board } = await (await fetch(`${server.url}/api/wards/larkfield/board`)).json();
  return board.beds.find((one: { label: string }) => one.label === label).stay;
};
const notSideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
const choose = (page: Page, group: string, option: string | RegExp) =>
  page.getByRole('group', { name: group, exact: true }).getByRole('button', { name: option }).click();

describe('the rules on the screens', () => {
  it('a NEWS2 worked out from its parts at the bedside stands on the stay page', async () => {
    const { page, faults } = await bedside('lf-a6', 'Nuri Halvard');
    await page.getByRole('heading', { name: 'May we start?' }).waitFor();
    expect(await screenFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('menuitem', { name: 'NEWS2', exact: true }).click();
    await confirmPerson(page);
    await page.getByRole('button', { name: 'Work it out from its parts' }).click();
    await page.getByLabel('Breathing rate').fill('22');
    await page.getByLabel('Oxygen saturation').fill('94');
    await page.getByLabel('Systolic pressure').fill('105');
    await page.getByLabel('Pulse').fill('112');
    await page.getByLabel('Temperature').fill('38.5');
    await choose(page, 'Oxygen scale', /Scale 1/);
    await choose(page, 'Air or oxygen', 'On oxygen');
    await page.getByText('No number yet.').waitFor();
    await choose(page, 'Consciousness', 'Alert');
    // Royal College of Physicians 2017, chart 1: 2 + 1 + 2 + 1 + 2 + 0 + 1 = 9.
    await page.getByText('NEWS2 9', { exact: true }).waitFor();
    expect(await screenFaults(page)).toEqual([]);
    expect(await notSideways(page)).toBeLessThanOrEqual(0);
    await shoot(page, 'score-parts-390');
    await page.getByRole('button', { name: 'Use this number' }).click();
    await shoot(page, 'score-entry-390');
    await page.getByRole('button', { name: 'Record this score' }).click();
    await page.getByText('Recorded: NEWS2 9.').waitFor();

    await page.getByRole('link', { name: 'The whole stay, entry by entry' }).click();
    await page.getByText('Score 9').waitFor();
    await page.getByText('Early-warning score (NEWS2) 9, oxygen scale 1').waitFor();
    await page.setViewportSize(WALL_SIZE);
    await page.getByRole('button', { name: 'Why: early-warning score' }).click();
    await page.getByText('Royal College of Physicians').waitFor();
    expect(await screenFaults(page)).toEqual([]);
    await shoot(page, 'stay-score-1920');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a session beyond a stop limit says stop, and the plan then asks for a look', async () => {
    expect((await stayOf('A4')).trust.state).toBe('current');
    const { page, faults } = await bedside('lf-a4', 'Tess Applewhite');
    await page.getByText('Stop if:').first().waitFor();
    await page.getByRole('button', { name: 'Session', exact: true }).click();
    await confirmPerson(page);
    await page.getByText('Add details').click();
    await page.getByRole('dialog').getByLabel('Heart rate', { exact: true }).fill('131');
    await page.keyboard.press('Tab');
    await page.getByText('Stop now').waitFor();
    await page.getByText('Heart rate 131 is above 130').waitFor();
    expect(await screenFaults(page)).toEqual([]);
    await shoot(page, 'session-stop-390');
    // Whatever the outcome says: the reading alone is enough.
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByText('Recorded: Session, done.').waitFor();

    await page.getByText('A stop limit was passed: heart rate 131 is above 130').first().waitFor();
    const stay = await stayOf('A4');
    expect(stay.trust.state).toBe('re-check');
    expect(stay.trust.openTriggers.map((one: { kind: string }) => one.kind)).toContain('failed-attempt');
    expect(stay.mayStart.word).not.toBe('may-start');
    await shoot(page, 'bedside-after-stop-390');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a nurse accepts a proposed step of the goal on the stay page, and it is no proposal any more', async () => {
    const before = await stayOf('A4');
    const waiting = before.proposal ? before : await stayOf('C4');
    expect(waiting.proposal).not.toBeNull();
    const { page, context, faults } = await openScreen(browser, WALL_SIZE);
    await page.goto(`${server.url}/wards/larkfield/stays/${waiting.stay}`);
    await sayWho(page, /Tess Applewhite/);
    await page.getByText('A nurse or therapist accepts it').waitFor();
    await page.getByRole('button', { name: /Tess Applewhite/ }).click();
    await page.getByRole('button', { name: /Nuri Halvard/ }).click();
    await shoot(page, 'stay-proposal-1920');
    await page.getByRole('button', { name: 'Accept as the goal' }).click();
    await page.getByText('Goal (proposal accepted)').first().waitFor();
    await page.getByText('is proposed').waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
    await context.close();
  });
});
