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
} from './support.ts';
import type { RunningServer } from './support.ts';

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

const wardPage = (name: string) => `${server.url}/wards/larkfield/${name}`;
async function charge(size = WALL_SIZE) {
  const screen = await openScreen(browser, size);
  await screen.page.goto(wardPage('charge'));
  await screen.page.getByRole('heading', { name: 'Who looks after whom' }).waitFor();
  await sayWho(screen.page, /Ida Merrow/);
  return screen;
}
const bed = (page: Page, label: string) => page.locator('.beds .bed').filter({ hasText: label });
const inGroup = (page: Page, group: string, name: string | RegExp) =>
  page.getByRole('group', { name: group, exact: true }).getByRole('button', { name });
const pagesOf = (pdf: Buffer) => pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g);

describe('the charge nurse’s page', () => {
  it('names a nurse and an aide for several beds at once, and the huddle then knows who', async () => {
    const { page, context, faults } = await charge();
    const before = await bed(page, 'A2').innerText();
    await inGroup(page, 'Person', /Cleo Marchbank/).click();
    for (const label of ['A1', 'B2', 'A3']) await bed(page, label).click();
    await inGroup(page, 'Person', /Dina Rushford/).click();
    await bed(page, 'B2').click();
    await shoot(page, 'charge-naming-1920');
    await page.getByRole('button', { name: 'Name for 3 beds' }).click();
    await page.getByText('Named until the end of the shift.').waitFor();
    await page.getByText('8 people are named for beds.').waitFor();
    await page.reload();
    await page.getByText('8 people are named for beds.').waitFor();
    await bed(page, 'A2').getByText('nurse Nuri Halvard').waitFor();
    expect(await bed(page, 'A2').innerText()).toBe(before);
    expect(await bed(page, 'B2').innerText()).toMatch(/nurse Cleo Marchbank\s+aide Dina Rushford/);
    expect(await bed(page, 'A1').innerText()).toMatch(/nurse Cleo Marchbank\s+aide Tess Applewhite/);
    await shoot(page, 'charge-1920');
    expect(await screenFaults(page)).toEqual([]);
    await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await shoot(page, 'charge-night-1920');
    expect(await screenFaults(page)).toEqual([]);

    await page.goto(wardPage('huddle'));
    const line = page.locator('#question-2 [data-line]').filter({ hasText: 'B2' });
    await line.waitFor();
    // Names come with the staff list, a moment after the lines.
    await line.getByText('nurse Cleo Marchbank').waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('says who is expected, with the last plan elsewhere as history that is not confirmed here', async () => {
    const { page, context, faults } = await charge();
    await page.getByRole('button', { name: 'Enter an expected arrival' }).click();
    await inGroup(page, 'Comes from', 'another ward').click();
    await inGroup(page, 'Comes from a ward of this board', /Millbrook/).click();
    await page.getByRole('group', { name: 'Bed there now' }).getByRole('button').first().click();
    await inGroup(page, 'Usual way of moving', 'Walks with a frame').click();
    await inGroup(page, 'Gets in and out of bed and chair', 'Helped').click();
    await shoot(page, 'charge-expected-form-1920');
    expect(await screenFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    // Entered last, and expected first.
    const one = page.locator('.coming').filter({ hasText: '10:30' });
    await one.waitFor();
    const words = await one.innerText();
    expect(words).toContain('History, not confirmed here');
    expect(words).toContain('walks with a frame, transfers helped');
    expect(words).toMatch(/Millbrook.*, as of .*: (Bed to chair: |Comfort plan|Clinician)/);
    await page.reload();
    await one.waitFor();
    await shoot(page, 'charge-expected-1920');
    await one.getByRole('button', { name: 'Does not come' }).click();
    await one.waitFor({ state: 'detached' });
    expect(await page.locator('.coming').count()).toBe(2);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('names until a time of its own, and says until when', async () => {
    const { page, context, faults } = await charge();
    await inGroup(page, 'Person', /Dina Rushford/).click();
    await bed(page, 'A2').click();
    await inGroup(page, 'Until', 'another time').click();
    await page.getByLabel('Day and time').fill('2020-01-01T10:00');
    await page.getByRole('button', { name: 'Name for 1 bed' }).click();
    await page.getByText('That time has passed.').waitFor();
    const today = await page.getByLabel('Day and time').evaluate(() => new Date().getFullYear() + 1);
    await page.getByLabel('Day and time').fill(`${today}-01-01T10:00`);
    await shoot(page, 'charge-until-1920');
    expect(await screenFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Name for 1 bed' }).click();
    await page.getByText(/^Named until 0?1 Jan.* 10:00\.$/).waitFor();
    await bed(page, 'A2').getByText('aide Dina Rushford').waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('ARRIVAL-1 offers at the empty bed whoever is expected; one entry begins the stay and closes the expected arrival', async () => {
    const { page, context, faults } = await charge(PHONE_SIZE);
    const before = await page.locator('.coming').count();
    expect(before).toBeGreaterThan(0);
    await page.goto(wardPage('bedside/lf-b6'));
    await page.getByRole('button', { name: 'A person arrives here' }).click();
    const offered = page.getByRole('region', { name: 'Is it somebody who is expected?' });
    await offered.getByRole('button').first().click();
    await offered.getByText('Recording the arrival closes the expected one').waitFor();
    await shoot(page, 'bedside-arrival-expected-390');
    expect(await screenFaults(page)).toEqual([]);
    await page.getByLabel('Name, as on the wristband').fill('Maren Holt');
    await page.getByRole('button', { name: 'Record the arrival' }).click();
    await page.getByText('CHECK BEFORE MOVING').first().waitFor();
    await page.goto(wardPage('charge'));
    await expect.poll(() => page.locator('.coming').count()).toBe(before - 1);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('prints the handover of every bed on one page, with its age and the line that paper stays as it is', async () => {
    const { page, context } = await charge();
    await bed(page, 'B6').and(page.locator(':not(.empty)')).waitFor();
    const beds = await page.locator('.beds .bed').count();
    await page.emulateMedia({ media: 'print' });
    const sheet = page.locator('.handover');
    const words = await sheet.innerText();
    expect(words).toMatch(/Printed .* 08:\d\d\./);
    expect(words).toContain('Paper does not change.');
    expect(await sheet.locator('tbody tr').count()).toBe(beds);
    expect(words).toContain('HOLD REVIEW DUE since');
    expect(words).toMatch(/\n[A-F]\d\tCHECK BEFORE MOVING; if it cannot wait: .+\tCHECK BEFORE MOVING/);
    await page.setViewportSize({ width: 794, height: 1123 });
    await shoot(page, 'handover-print');
    expect(pagesOf(await page.pdf({ preferCSSPageSize: true }))).toHaveLength(1);
    await context.close();
  });

  it('fits a phone', async () => {
    const { page, context } = await charge(PHONE_SIZE);
    await shoot(page, 'charge-390');
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
    expect(await screenFaults(page)).toEqual([]);
    await context.close();
  });
});
