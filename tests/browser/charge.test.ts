import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFaults, openBrowser, openScreen, PHONE_SIZE, shoot, startBuilt, WALL_SIZE } from './support.ts';
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

/** Somebody new in bed B6: nobody has checked them here yet. */
async function arrive(): Promise<void> {
  const { staff } = (await (await fetch(`${server.url}/api/wards/larkfield/staff`)).json()) as {
    staff: { staff: string; role: string }[];
  };
  const { at } = (await (await fetch(`${server.url}/api/wards/larkfield/huddle`)).json()) as { at: number };
  const answer = await fetch(`${server.url}/api/wards/larkfield/commands/begin-stay`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'x-footboard-staff': staff.find((one) => one.role === 'nurse')!.staff,
    },
    body: JSON.stringify({
      commandId: crypto.randomUUID(),
      occurred: { at: new Date(at).toISOString() },
      entered: { at: new Date().toISOString(), offsetMinutes: 0 },
      source: { kind: 'person' },
      expect: 'latest',
      data: {
        stay: 'st-new',
        person: 'pe-new',
        bed: 'lf-b6',
        from: 'home',
        identity: { name: 'Maren Holt' },
      },
    }),
  });
  if (!answer.ok) throw new Error(await answer.text());
}

const wardPage = (name: string) => `${server.url}/wards/larkfield/${name}`;
async function charge(size = WALL_SIZE) {
  const screen = await openScreen(browser, size);
  await screen.page.goto(wardPage('charge'));
  await screen.page.getByRole('heading', { name: 'Who looks after whom' }).waitFor();
  await screen.page.getByRole('button', { name: 'Who are you?' }).click();
  await screen.page.getByRole('button', { name: /Ida Merrow/ }).click();
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
    expect(await axeFaults(page)).toEqual([]);
    await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await shoot(page, 'charge-night-1920');
    expect(await axeFaults(page)).toEqual([]);

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
    expect(await axeFaults(page)).toEqual([]);
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

  it('prints the handover of every bed on one page, with its age and the line that paper stays as it is', async () => {
    await arrive();
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
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });
});
