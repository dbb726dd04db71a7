import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sayWho } from './open-kit.ts';
import { WARD, enter, peopleAlder, sessionsOf } from './offline-support.ts';
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
  server = await startBuilt('tests/support/open-server.mjs');
  browser = await openBrowser();
  await peopleAlder(server, 3);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

async function printed(): Promise<string> {
  const answer = await fetch(`${server.url}/api/wards/${WARD}/paper/sheet`);
  return /filename="(.+)\.pdf"/.exec(answer.headers.get('content-disposition') ?? '')![1]!;
}
/** The ward's clock a few minutes ago, as a hand writes it. */
const ago = (minutes: number): string =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: 'Europe/Lisbon',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(Date.now() - minutes * 60_000);

describe('a downtime sheet is keyed in', () => {
  it('PAPER-5 for whoever lay in the bed when it was printed, with its serial, after the beds were swapped', async () => {
    const serial = await printed();
    await enter(server, 'swap-stays', {
      first: { stay: 'stay-0', bed: 'bed-A1' },
      second: { stay: 'stay-1', bed: 'bed-A2' },
    });
    const { page, context, faults } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${server.url}/wards/${WARD}/paper/${serial}/bed-A1`);
    await sayWho(page, /Noor Haddad/);
    await page.getByText('They are now in bed A2.').waitFor();
    await page.getByRole('button', { name: 'Session', exact: true }).click();
    await page.getByText('Write the time first').waitFor();
    await page.getByLabel('Time on the paper').fill(ago(20));
    await shoot(page, 'paper-entry-390');
    expect(await screenFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Session', exact: true }).click();
    await page.getByRole('button', { name: 'Lifted to chair', exact: true }).click();
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByText('Recorded: Session, done.').waitFor();
    const [one] = await sessionsOf(server, 'stay-0');
    expect(one).toMatchObject({ source: { kind: 'paper', serial }, precision: 'about' });
    expect(await sessionsOf(server, 'stay-1')).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('PAPER-6 (A12) the same session by a phone is offered to a person, and both count until one is withdrawn', async () => {
    await enter(server, 'record-session', {
      stay: 'stay-0',
      session: {
        outcome: 'done',
        occasion: 'planned',
        activities: ['lifted-to-chair'],
        startedAt: new Date(Date.now() - 10 * 60_000).toISOString(),
        events: [],
      },
    });
    const { page, context } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${server.url}/wards/${WARD}/stays/stay-0`);
    await page.getByText('May be the same').waitFor();
    await page.getByText('May be the same').scrollIntoViewIfNeeded();
    await shoot(page, 'paper-twins-390');
    expect(await screenFaults(page)).toEqual([]);
    const [first, second] = await sessionsOf(server, 'stay-0');
    expect([first!.counts, second!.counts]).toEqual([true, true]);
    await enter(server, 'make-retraction', {
      stay: 'stay-0',
      target: second!.event,
      reason: 'never-happened',
    });
    await page.getByText('May be the same').waitFor({ state: 'detached' });
    await context.close();
  });

  it('lists its sheets, and says which bed of one was changed since', async () => {
    const { page, context, faults } = await openScreen(browser, PHONE_SIZE);
    const serial = await printed();
    const one = (await sessionsOf(server, 'stay-0')).find(({ counts }) => counts)!;
    await enter(server, 'make-retraction', { stay: 'stay-0', target: one.event, reason: 'wrong-person' });
    await page.goto(`${server.url}/wards/${WARD}/paper`);
    await page.getByText(serial).waitFor();
    await page
      .getByText(/Superseded: an entry behind bed A2 was changed/)
      .first()
      .waitFor();
    await shoot(page, 'paper-sheets-390');
    expect(await screenFaults(page)).toEqual([]);
    await page.setViewportSize(WALL_SIZE);
    await shoot(page, 'paper-sheets-1920');
    expect(faults).toEqual([]);
    await context.close();
  });
});
