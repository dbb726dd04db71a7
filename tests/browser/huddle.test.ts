import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sayWho, sendCommand } from './open-kit.ts';
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

const WARD = 'larkfield';
const HOUR = 3_600_000;
let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  // Real speed, so that the ward stands still enough to be spoken through.
  server = await startBuilt('demo/dist/main.js', { DEMO_SPEED: '1' });
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** The server's own clock: the demo's is not this machine's. */
async function clock(): Promise<number> {
  const { at } = (await (await fetch(`${server.url}/api/wards/${WARD}/huddle`)).json()) as { at: number };
  return at;
}
/** A command of the charge nurse, at a time of the ward. */
async function enter(name: string, data: object, at: number): Promise<void> {
  const { staff } = (await (await fetch(`${server.url}/api/wards/${WARD}/staff`)).json()) as {
    staff: { staff: string; role: string }[];
  };
  const charge = staff.find((one) => one.role === 'charge-nurse')!.staff;
  await sendCommand(server, WARD, name, data, { by: charge, at });
}

async function huddle(size = WALL_SIZE) {
  const screen = await openScreen(browser, size);
  const { page } = screen;
  await page.goto(`${server.url}/wards/${WARD}/huddle`);
  await page.locator('#question-5').waitFor();
  return screen;
}
async function iAm(page: Page, who: RegExp): Promise<void> {
  await sayWho(page, who);
  await page.getByRole('button', { name: who }).waitFor();
}
/** As much as a forecast can have to say. */
function aTightDay(at: number) {
  const clash = { chance: 0.62, low: 0.5, high: 0.71, short: 'item', late: 2 };
  const tried = { from: at, to: at + HOUR, before: 9.2, after: 4.1 };
  const bed = (i: number) => ({ bed: `bed-${i}`, label: `A${i + 1}` });
  return {
    clashes: Array.from({ length: 4 }, (_, i) => ({
      ...clash,
      group: i % 2 === 0 ? 'lift' : 'hands',
      from: at + 3 * i * HOUR,
      to: at + (3 * i + 1) * HOUR,
    })),
    waits: Array.from({ length: 12 }, (_, i) => ({ ...bed(i), stay: `st-${i}`, chance: 0.8, about: at })),
    helps: [
      { kind: 'borrow', group: 'lift', ...tried },
      { kind: 'pair-of-aides', ...tried },
      { kind: 'swap-to-track', ...tried, who: bed(1), with: bed(2) },
      { kind: 'move-session', ...tried, who: bed(3), what: 'visit', was: at, becomes: at + HOUR },
    ],
    leftOut: [{ ...bed(4), why: 'nothing-fits' }],
  };
}
const sideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
/** The line that has the focus, in words. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const line = document.activeElement?.closest<HTMLElement>('[data-line]');
    return line ? `${line.closest('section')!.id} ${line.dataset['line']}` : document.activeElement!.id;
  });

describe('the huddle', () => {
  it('is one page of A4 on paper, also on a morning with a change in each of 24 beds', async () => {
    const { page, context } = await openScreen(browser, WALL_SIZE);
    await page.route('**/huddle', async (route) => {
      if (!route.request().url().includes('/api/')) return route.continue();
      const answer = await route.fetch();
      const real = (await answer.json()) as Record<string, unknown> & Record<'changes' | 'actions', object[]>;
      const { board } = (await (await fetch(`${server.url}/api/wards/${WARD}/board`)).json()) as {
        board: { beds: { bed: string; label: string }[] };
      };
      const lines = (count: number, words: string, more: object = {}) =>
        board.beds.slice(0, count).map(({ bed, label }, i) => ({
          bed,
          label,
          stay: `st-${i}`,
          owner: 'nuri',
          words,
          because: [],
          ...more,
        }));
      const long =
        'More help: bed to chair now 2 people, sling lift (was 1 person, belt); also toilet, stand';
      const checks = lines(12, 'Check overdue since 27 Oct 07:54, by 26 min (Sedated, 26 Oct 21:40)');
      return route.fulfill({
        json: {
          ...real,
          changes: lines(24, long, { kind: 'more-help' }),
          overdue: checks,
          notUp: lines(8, 'Not up since 25 Oct 18:30 (chair)'),
          holdsToday: lines(5, 'Hold on walking (clot suspected), HOLD REVIEW DUE since 27 Oct 08:00'),
          needLift: lines(12, 'sling lift for every move out of bed'),
          twoPeople: lines(12, 'two people for every move out of bed, turn or move up in bed'),
          leavingShort: lines(5, 'Leaves 28 Oct 10:30: 1 of 3 today; below the usual way'),
          actions: Array.from({ length: 8 }, (_, i) => ({ ...real.actions[0], action: `many-${i}` })),
        },
      });
    });
    await page.route('**/forecast', async (route) => {
      const answer = await route.fetch();
      return route.fulfill({ json: { ...(await answer.json()), ...aTightDay(await clock()) } });
    });
    await page.goto(`${server.url}/wards/${WARD}/huddle`);
    await page.locator('#question-5').waitFor();
    await page.getByText('Bed A12, about').waitFor();
    expect(await page.locator('#question-1 [data-line]').count()).toBe(24);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 726, height: 1054 });
    await shoot(page, 'huddle-print');
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
    expect(await page.locator('.does:visible').count()).toBe(0);
    await context.close();
  });

  it('speaks German where the ward does', async () => {
    const { page, context, faults } = await openScreen(browser, WALL_SIZE);
    await page.addInitScript(() => localStorage.setItem('footboard-language', 'de'));
    await page.goto(`${server.url}/wards/${WARD}/huddle`);
    await page.getByRole('heading', { name: 'Kurzbesprechung, Larkfield Ward' }).waitFor();
    await page.getByRole('heading', { name: /^Was ist anders/ }).waitFor();
    await shoot(page, 'huddle-de-1920');
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await page.goto(`${server.url}/wards/${WARD}/charge`);
    await page.getByRole('heading', { name: 'Wer betreut wen' }).waitFor();
    await shoot(page, 'charge-de-1920');
    expect(await screenFaults(page)).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('shows lifts and hands by the quarter hour, in words, as a picture and as its table', async () => {
    const { page, context, faults } = await huddle();
    const forecast = page.locator('#question-4 .forecast').first();
    await forecast.locator('svg.forecast').first().waitFor();
    expect(await forecast.innerText()).toContain('A forecast, not a plan');
    expect(await forecast.innerText()).toMatch(/simulated days/);
    await shoot(page, 'huddle-forecast-1920');
    await forecast.getByRole('button', { name: 'As a table: Lifts' }).click();
    const table = forecast.getByRole('region', { name: 'Lifts' });
    expect(await table.getByRole('columnheader').allInnerTexts()).toContain('Wanted at once (mean)');
    expect(await table.getByRole('row').count()).toBeGreaterThan(20);
    expect(await screenFaults(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('says that the forecast failed and asks again, and keeps the rest of the question', async () => {
    const { page, context } = await openScreen(browser, WALL_SIZE);
    let failing = true;
    await page.route('**/forecast', (route) => (failing ? route.abort() : route.continue()));
    await page.goto(`${server.url}/wards/${WARD}/huddle`);
    const again = page.locator('#question-4').getByRole('button', { name: 'Ask again' });
    await again.waitFor();
    expect(await page.locator('#question-4 [data-line]').count()).toBeGreaterThan(0);
    failing = false;
    await again.click();
    await page.locator('#question-4 svg.forecast').first().waitFor();
    await context.close();
  });

  it('by keys alone: to a question, from line to line, why, an action in three keys, and closed', async () => {
    const { page, context, faults } = await huddle();
    await iAm(page, /Ida Merrow/);
    await page.keyboard.press('2');
    const first = await focused(page);
    expect(first).toMatch(/^question-2 /);
    await page.keyboard.press('ArrowDown');
    const second = await focused(page);
    expect(second).not.toBe(first);
    await page.keyboard.press('ArrowUp');
    expect(await focused(page)).toBe(first);

    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    expect(await page.getByRole('dialog').innerText()).toContain('rule ');
    await shoot(page, 'huddle-why-1920');
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await focused(page)).toBe(first);

    await page.keyboard.press('a');
    await page.getByRole('heading', { name: /^Agree an action for bed/ }).waitFor();
    await page.keyboard.press('1');
    await page.keyboard.press('1');
    await page.getByRole('heading', { name: 'By when' }).waitFor();
    await shoot(page, 'huddle-action-1920');
    expect(await screenFaults(page)).toEqual([]);
    await page.keyboard.press('1');
    const agreed = page.locator('#question-5 [data-line^="action-"]').filter({ hasText: 'Check again' });
    await agreed.waitFor();
    expect(await agreed.innerText()).toContain('Check again');
    expect(await page.locator('#question-2 .agreed').first().innerText()).toContain('Agreed: Check again');

    await page.reload();
    await agreed.waitFor();
    await page.keyboard.press('5');
    expect(await focused(page)).toMatch(/^question-5 action-/);
    while (!(await agreed.evaluate((line) => line.contains(document.activeElement)))) {
      await page.keyboard.press('ArrowDown');
    }
    await page.keyboard.press('c');
    await page.getByRole('heading', { name: /^Close: Check again/ }).waitFor();
    await page.keyboard.press('1');
    await agreed.waitFor({ state: 'detached' });
    await page.reload();
    await page.locator('#question-5').waitFor();
    expect(await agreed.count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('what was agreed yesterday comes back today, overdue, until it is closed', async () => {
    const now = await clock();
    const action = crypto.randomUUID();
    const by = new Date(now - 20 * HOUR).toISOString();
    await enter(
      'agree-action',
      { action, kind: 'bring-or-mend-equipment', owner: 'cleo', by },
      now - 26 * HOUR,
    );
    await enter('hold-huddle', {}, now - 25 * HOUR);

    const { page, context, faults } = await huddle();
    await iAm(page, /Ida Merrow/);
    const line = page.locator('#question-5 [data-line^="action-"]').filter({ hasText: 'Cleo Marchbank' });
    expect(await line.innerText()).toMatch(/Ward[\s\S]*Bring or mend equipment, Cleo Marchbank, was due/);
    await page.getByRole('button', { name: 'Huddle held' }).click();
    await page.getByText('Changes are counted from then on.').waitFor();
    await page.getByText('Nothing has changed.').waitFor();
    expect(await line.innerText()).toContain('Bring or mend equipment');
    await line.getByRole('button', { name: /^Close/ }).click();
    await page.getByRole('button', { name: 'Not possible' }).click();
    await line.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
    await context.close();
  });

  it('what changes after a huddle is the first question of the next', async () => {
    const { page, context } = await huddle();
    await enter('hold-huddle', {}, await clock());
    const { board } = (await (await fetch(`${server.url}/api/wards/${WARD}/board`)).json()) as {
      board: { beds: { label: string; stay: { stay: string; holds: unknown[] } | null }[] };
    };
    const bed = board.beds.find(({ stay }) => stay && stay.holds.length === 0)!;
    const hold = { stay: bed.stay!.stay, hold: crypto.randomUUID(), scope: 'out-of-bed', reason: 'unstable' };
    await enter('place-hold', hold, await clock());
    const line = page.locator('#question-1 [data-line]').filter({ hasText: 'Hold placed on out of bed' });
    await line.waitFor();
    expect(await line.innerText()).toContain(bed.label);
    await context.close();
  });

  it('can be read from the back of the room, by day and by night, and by anybody', async () => {
    const { page, context, faults } = await huddle();
    await shoot(page, 'huddle-1920');
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.huddle *')]
        .filter(
          (one) =>
            one.getClientRects().length > 0 &&
            !one.closest('.only-read-aloud') &&
            [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== ''),
        )
        .filter((one) => parseFloat(getComputedStyle(one).fontSize) < 24)
        .map((one) => `${one.className || one.tagName}: ${one.textContent!.trim().slice(0, 30)}`),
    );
    expect(small).toEqual([]);
    expect(await screenFaults(page)).toEqual([]);
    await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await shoot(page, 'huddle-night-1920');
    expect(await screenFaults(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await page.getByText('All lists').click();
    await page.getByText(/^Below the usual way of moving \(\d+\)$/).waitFor();
    expect(faults).toEqual([]);
    await context.close();

    const phone = await huddle(PHONE_SIZE);
    await shoot(phone.page, 'huddle-390');
    expect(await sideways(phone.page)).toBeLessThanOrEqual(0);
    expect(await screenFaults(phone.page)).toEqual([]);
    await phone.context.close();
  });
});
