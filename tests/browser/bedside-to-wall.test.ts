import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, openScreen, shoot, startBuilt, WALL_SIZE, type RunningServer } from './support.ts';
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

const tile = (page: Page, label: string) =>
  page.locator('article.tile').filter({ has: page.getByRole('heading', { name: label, exact: true }) });

async function wall() {
  const screen = await openScreen(browser, WALL_SIZE);
  await screen.page.goto(`${server.url}/wards/larkfield/wall`);
  await tile(screen.page, 'A1').waitFor();
  return screen;
}

const bedside = (bed: string, who: string) => openBedside(browser, server.url, bed, who);

describe('from the bedside to the wall', () => {
  it('an ordinary session, three taps on the phone, changes the wall in another browser', async () => {
    const screen = await wall();
    const phone = await bedside('lf-a1', 'Tess Applewhite');
    const before = await tile(screen.page, 'A1').innerText();
    expect(before).toContain('not recorded');

    await phone.page.getByRole('button', { name: 'Session', exact: true }).click();
    await confirmPerson(phone.page);
    await phone.page.getByRole('button', { name: 'Lifted to chair', exact: true }).click();
    await shoot(phone.page, 'bedside-session-390');
    await phone.page.getByRole('button', { name: 'Done', exact: true }).click();

    await tile(screen.page, 'A1')
      .getByText(/[123] of 3$/)
      .waitFor({ timeout: 15_000 });
    expect(await tile(screen.page, 'A1').innerText()).not.toContain('not recorded');
    expect(screen.faults).toEqual([]);
    expect(phone.faults).toEqual([]);
    await screen.context.close();
    await phone.context.close();
  });

  it("anyone's hold stands on the wall before anything else of that bed", async () => {
    const screen = await wall();
    const phone = await bedside('lf-a6', 'Dina Rushford');
    expect(await tile(screen.page, 'A6').innerText()).not.toMatch(/HOLD/);

    await phone.page.getByRole('button', { name: 'More' }).click();
    await phone.page.getByRole('menuitem', { name: 'Hold', exact: true }).click();
    await phone.page.getByRole('button', { name: 'Stay in bed', exact: true }).click();
    await phone.page.getByRole('button', { name: 'Unstable', exact: true }).click();
    await phone.page.getByRole('button', { name: /place the hold/i }).click();

    await tile(screen.page, 'A6').getByText(/HOLD/).first().waitFor({ timeout: 15_000 });
    await shoot(screen.page, 'wall-after-hold-1920');
    await screen.context.close();
    await phone.context.close();
  });

  it('an aide cannot make it freer: the server says who can, and the wall keeps the hold', async () => {
    const answer = await fetch(`${server.url}/api/wards/larkfield/commands/end-hold`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-footboard-staff': 'dina' },
      body: JSON.stringify({
        commandId: crypto.randomUUID(),
        occurred: { at: new Date(Date.UTC(2026, 9, 27, 8, 20)).toISOString() },
        entered: { at: new Date(Date.UTC(2026, 9, 27, 8, 20)).toISOString(), offsetMinutes: 0 },
        source: { kind: 'person' },
        expect: 'latest',
        data: { stay: 'st-020', hold: 'hold-e3' },
      }),
    });
    const problem = await answer.json();
    expect(answer.headers.get('content-type')).toContain('application/problem+json');
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(problem.remedy).toMatch(/nurse|therapist|qualified/i);
    const board = await (await fetch(`${server.url}/api/wards/larkfield/board`)).json();
    const bed = board.board.beds.find((one: { label: string }) => one.label === 'E3');
    expect(bed.stay.holds).toHaveLength(1);
  });
});
