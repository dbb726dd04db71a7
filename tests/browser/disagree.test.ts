/** A5: two qualified people disagree, one of them late. The safer stands, the screens show it, and both are told. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check } from '@footboard/server/capabilities/given.testkit';
import { asksMore } from '@footboard/shared/capabilities/handling/rules/join-plans';
import { boardPage } from '@footboard/shared/wire/http';
import { accept, ask, enter, setUpAlder, WARD, whole } from './access-support.ts';
import { openBrowser, openScreen, PHONE_SIZE, startBuilt, WALL_SIZE, type RunningServer } from './support.ts';

let server: RunningServer;
let browser: Browser;
const NAMES = { noor: ['Noor Haddad', 'nurse'], theo: ['Theo Brandt', 'therapist'] } as const;
type Screen = Awaited<ReturnType<typeof openScreen>>;
/** A phone each, signed in. */
let noor: Screen;
let theo: Screen;
const MINUTE = 60_000;
/** Ten o'clock of the story. */
const ten = Date.now() - 5 * MINUTE;

beforeAll(async () => {
  server = await startBuilt('server/dist/main.js');
  browser = await openBrowser();
  const { page: admin, context } = await openScreen(browser, WALL_SIZE);
  await setUpAlder(admin, server, NAMES);
  const phoneOf = async (staff: keyof typeof NAMES): Promise<Screen> => {
    const name = NAMES[staff][0];
    const { path } = await ask(admin, 'POST', `/api/wards/${WARD}/accounts`, { staff, name });
    const screen = await openScreen(browser, PHONE_SIZE);
    await screen.page.goto(`${server.url}/sign-in`);
    await accept(screen.page, String(path), staff);
    await screen.page.goto(`${server.url}/wards/${WARD}/bedside`);
    return screen;
  };
  noor = await phoneOf('noor');
  theo = await phoneOf('theo');
  await context.close();
}, 400_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const rowOf = async ({ page }: Screen) => {
  const { board } = boardPage.parse(await ask(page, 'GET', `/api/wards/${WARD}/board`));
  return board.beds.find((bed) => bed.label === 'A1')!.stay!;
};

/** What waits for whoever holds this phone: both entries, the order as the one that stands. */
async function isTold({ page }: Screen, name: string) {
  await page.getByText('1 entry of yours disagrees with another: the safer stands').waitFor();
  await page.getByRole('button', { name: 'Look at them' }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByText('Two entries disagree; the safer stands').waitFor();
  const sides = await sheet.locator('.pair p:not(.soft)').allInnerTexts();
  expect(sides).toHaveLength(2);
  expect(sides[0]).toMatch(/weight bearing left leg none.*Noor Haddad/is);
  expect(sides[1]).toMatch(/cleared up to walk.*Theo Brandt/is);
  expect(await sheet.locator('.stands').allInnerTexts()).toEqual([sides[0]]);
  await whole(page, `disagree-${name}-390`);
  await sheet.getByRole('link', { name: 'The stay' }).click();
  await page.getByText('The check shows more than the order in force allowed').first().waitFor();
}

describe('A5 a therapist clears walking at 10:00, an order from 09:55 for no weight on a leg arrives at 10:05', () => {
  it('SCREEN-16 given both stand on the log, then the safer stands, the screens show it, and both authors are told', async () => {
    const wall = await noor.context.newPage();
    await wall.setViewportSize(WALL_SIZE);
    await wall.goto(`${server.url}/wards/${WARD}/wall`);
    const person = { person: 'of-stay-1', bed: 'bed-A1', from: 'home', identity: { name: 'Rosa Pinto' } };
    await enter(noor.page, 'begin-stay', { stay: 'stay-1', ...person }, { at: ten - 120 * MINUTE });
    await enter(noor.page, 'record-weight', { stay: 'stay-1', weight: { kg: 70, how: 'measured' } });
    await enter(theo.page, 'record-assessment', check('stay-1', 'walk', ten), { at: ten });
    const tile = wall.getByRole('article', { name: /^Bed A1/ });
    await tile.getByText('Walk').first().waitFor();
    const before = await rowOf(noor);
    expect([before.tier.word, before.trust.conflicts]).toEqual(['Walk', []]);
    const told = await tile.innerText();

    const order = { about: 'weight-bearing', limb: 'left-leg', bears: 'none' };
    await enter(noor.page, 'change-order', { stay: 'stay-1', order }, { at: ten - 5 * MINUTE });

    await tile
      .getByText(/disagree/)
      .first()
      .waitFor();
    expect(await tile.innerText()).not.toBe(told);
    await whole(wall, 'disagree-wall-1920');
    const after = await rowOf(noor);
    expect(after.trust).toMatchObject({ state: 're-check', conflicts: [{ question: 'order and check' }] });
    expect(after.orders.map((one) => one.order)).toEqual([order]);
    for (const part of ['day', 'night'] as const) {
      const [was, now] = [before.plan![part], after.plan![part]];
      expect(was.filter((task, i) => asksMore(task, now[i]!))).toEqual([]);
      expect(was.filter((task, i) => asksMore(now[i]!, task)).length).toBeGreaterThan(0);
    }

    await isTold(noor, 'order');
    await isTold(theo, 'check');
    await theo.page.setViewportSize(WALL_SIZE);
    await whole(theo.page, 'disagree-stay-1920');
    expect([...noor.faults, ...theo.faults]).toEqual([]);
  });
});
