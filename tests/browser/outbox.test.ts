import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Cable } from '../support/cable.ts';
import { peopleAlder, timeline, WARD } from './offline-support.ts';
import { sayWho } from './open-kit.ts';
import { screenFaults, openBrowser, PHONE_SIZE, shoot, startBuilt, type RunningServer } from './support.ts';
import { confirmPerson } from './bedside-support.ts';

let server: RunningServer;
let browser: Browser;
let cable: Cable;

const entries = async (stay: string, type: string): Promise<number> =>
  (await timeline(server, stay)).filter((entry) => entry.type === type).length;

beforeAll(async () => {
  server = await startBuilt('tests/support/open-server.mjs');
  browser = await openBrowser();
  cable = await Cable.between(server.port);
  await peopleAlder(server);
});
afterAll(async () => {
  await browser?.close();
  await cable?.close();
  await server?.stop();
});

async function phone(bed: string, who: string, context?: BrowserContext) {
  const mine = context ?? (await browser.newContext({ viewport: PHONE_SIZE }));
  const page = await mine.newPage();
  await page.goto(`http://127.0.0.1:${cable.port}/wards/${WARD}/bedside/${bed}`);
  if (!context) {
    await sayWho(page, new RegExp(who));
  }
  await page.getByRole('button', { name: 'Session', exact: true }).waitFor();
  return { page, context: mine };
}
async function recordSession(page: Page) {
  await page.getByRole('button', { name: 'Session', exact: true }).click();
  await confirmPerson(page);
  await page.getByRole('button', { name: 'Lifted to chair', exact: true }).click();
  await page.getByRole('button', { name: 'Done', exact: true }).click();
}

describe('the outbox of a phone', () => {
  it('an entry made while the cable is pulled outlives its page and arrives once when the cable is back', async () => {
    const { page, context } = await phone('bed-A1', 'Noor Haddad');
    cable.pull();
    await recordSession(page);
    await page.getByText('Not sent yet; try again').waitFor({ timeout: 30_000 });
    await page.getByText('goes out by itself when the network is back').waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByText('1 waits for the network').waitFor();
    await page.getByRole('button', { name: 'Show them' }).click();
    await page.getByRole('dialog').getByText('Session, done').waitFor();
    await page.getByRole('dialog').getByText('What was entered').click();
    await shoot(page, 'outbox-waiting-390');
    expect(await screenFaults(page)).toEqual([]);
    expect(await entries('stay-0', 'session-recorded')).toBe(0);
    // As a crash would: no handler of the page runs, nothing is asked.
    await page.close({ runBeforeUnload: false });

    cable.plugIn();
    const { page: next } = await phone('bed-A1', 'Noor Haddad', context);
    await expect.poll(() => entries('stay-0', 'session-recorded'), { timeout: 20_000 }).toBe(1);
    await next.getByText('Not on the board').waitFor({ state: 'detached' });
    await next.reload();
    await next.getByRole('button', { name: 'Session', exact: true }).waitFor();
    expect(await next.getByText('Not on the board').count()).toBe(0);
    expect(await entries('stay-0', 'session-recorded')).toBe(1);
    await context.close();
  });

  it('goes out by itself on the page it was made on, and two windows do not double it', async () => {
    const { page, context } = await phone('bed-A2', 'Noor Haddad');
    const { page: other } = await phone('bed-A2', 'Noor Haddad', context);
    const sent: string[] = [];
    for (const one of [page, other]) {
      one.on('response', (answer) => {
        if (answer.url().includes('/commands/') && answer.ok()) sent.push(answer.url());
      });
    }
    cable.pull();
    await recordSession(page);
    await page.getByText('Not sent yet; try again').waitFor({ timeout: 30_000 });
    await page.getByRole('button', { name: 'Close' }).click();
    await other.getByText('1 waits for the network').waitFor();
    cable.plugIn();
    const told = [page, other].map((one) =>
      one.getByText('Recorded: Session, done.').waitFor({ timeout: 40_000 }),
    );
    await Promise.any(told);
    for (const one of [page, other]) await one.getByText('Not on the board').waitFor({ state: 'detached' });
    expect(await entries('stay-1', 'session-recorded')).toBe(1);
    expect(sent).toHaveLength(1);
    await context.close();
  });

  it('a refused entry stays over a reload with its words and the remedy, until a person closes it', async () => {
    const { page, context } = await phone('bed-A3', 'Ada Lund');
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('menuitem', { name: 'Order changed', exact: true }).click();
    await page.getByRole('button', { name: 'Edge of bed', exact: true }).click();
    await page.getByRole('button', { name: /order/i }).last().click();
    await page.getByText(/not for the role aide/).waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByText('1 refused').waitFor();

    await page.reload();
    await page.getByText('1 refused').waitFor();
    await page.getByRole('button', { name: 'Show them' }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByText('Order, bed A3').waitFor();
    await sheet.getByText(/not for the role aide.*Place a hold if it is safer/).waitFor();
    await sheet.getByText('What was entered').click();
    await sheet.getByText('To the edge of the bed').waitFor();
    await shoot(page, 'outbox-refused-390');
    expect(await screenFaults(page)).toEqual([]);
    await sheet.getByRole('button', { name: 'I have dealt with it' }).click();
    await page.getByText('1 refused').waitFor({ state: 'detached' });

    await page.reload();
    await page.getByRole('button', { name: 'Session', exact: true }).waitFor();
    expect(await page.getByText('Not on the board').count()).toBe(0);
    await context.close();
  });
});
