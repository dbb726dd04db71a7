/** Two aides with a phone each on the round: who goes, who is told so, and a list that stays still. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, hours } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { toIso } from '@footboard/shared/kernel/times';
import { beginStay, openWard, WARD, type Ward } from '../journeys/http-kit.ts';
import { axeFaults, openBrowser, openScreen, PHONE_SIZE, shoot } from './support.ts';

/** Monday 11:00 on the ward's clock. */
const started = Date.now();
const clock = { rate: 1, now: () => hours(40) + (Date.now() - started) };
let ward: Ward;
let browser: Browser;
const envelope = { source: { kind: 'import', serial: 'old-1' } } as const;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('add-staff-member', { staff: 'bea', name: 'Bea Holm', role: 'aide' });
  for (const [stay, bed] of [
    ['stay-1', '1A'],
    ['stay-2', '1B'],
    ['stay-3', '2A'],
  ] as const) {
    const at = toIso(hours(38));
    const early = { ...envelope, occurred: { at }, fromOutbox: false };
    await ward.enter(
      'begin-stay',
      { ...beginStay(stay, bed), identity: { name: `Rosa ${bed}` } },
      'noor',
      early,
    );
    await ward.enter('record-weight', { stay, weight: { kg: 70, how: 'measured' } }, 'noor', early);
    const payload = check('walk', 39).payload as object;
    const checked = { ...envelope, occurred: { at: toIso(hours(39)) } };
    await ward.enter('record-assessment', { stay, ...payload }, 'noor', checked);
  }
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await ward?.footboard.close();
});

async function phone(who: string) {
  const screen = await openScreen(browser, PHONE_SIZE);
  const { page } = screen;
  await page.goto(`${ward.footboard.url}/wards/${WARD}/round`);
  await page.getByRole('button', { name: 'Who are you?' }).click();
  await page.getByRole('button', { name: new RegExp(who) }).click();
  await card(page).waitFor();
  return screen;
}
const card = (page: Page) => page.locator('article.card');
const tap = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const bedOnCard = (page: Page) => card(page).getByRole('heading').innerText();
const rows = (page: Page) => page.locator('.rows strong').allInnerTexts();

describe('the round on two phones', () => {
  it('a visit taken on one shows on the other, whose list stays still and who is refused in words', async () => {
    const ada = await phone('Ada Lund');
    const bea = await phone('Bea Holm');
    expect(await bedOnCard(ada.page)).toBe('Bed 1A');
    await shoot(ada.page, 'round-390');
    expect(await axeFaults(ada.page)).toEqual([]);
    const sizes = await ada.page
      .locator('button, main a, summary')
      .evaluateAll((all) =>
        all
          .map((one) => one.getBoundingClientRect())
          .filter((r) => r.height > 0 && (r.height < 44 || r.width < 44)),
      );
    expect(sizes).toEqual([]);
    expect(await ada.page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);

    const before = await rows(bea.page);
    await tap(ada.page, 'I go');
    await ada.page.getByText(/^Yours, /).waitFor();
    await card(bea.page).getByText('Ada Lund goes until').waitFor();
    expect(await bedOnCard(bea.page)).toBe('Bed 1A');
    expect(await rows(bea.page)).toEqual(before);

    const refused = await ward.send('take-visit', { stay: 'stay-1', visit: 'late' }, 'bea');
    expect(refused.body).toMatchObject({ type: '/problems/visit-taken' });
    expect(String(refused.body['detail'])).toMatch(/^an aide has it until /);

    await tap(bea.page, 'List changed: show it');
    expect(await bedOnCard(bea.page)).toBe('Bed 1B');
    expect(await bea.page.locator('.rows').last().innerText()).toContain('Ada Lund');
    await shoot(bea.page, 'round-taken-390');
    await ada.context.close();
    await bea.context.close();
  });

  it('not now takes two taps and no typing', async () => {
    const { page, context } = await phone('Bea Holm');
    expect(await bedOnCard(page)).toBe('Bed 1B');
    await tap(page, 'Not now');
    await shoot(page, 'round-not-now-390');
    await tap(page, 'Bad moment');
    await expect.poll(() => bedOnCard(page), { timeout: 10_000 }).toBe('Bed 2A');
    expect(await page.locator('.rows').last().innerText()).toContain('bad moment');
    await context.close();
  });

  it('A8: an aide may not lower help, and raises caution by saying that the board is wrong', async () => {
    const lowered = await ward.send('set-on-own', { stay: 'stay-3', where: ['room'], when: ['day'] }, 'bea');
    expect(lowered.body).toMatchObject({ type: '/problems/not-your-role' });
    const { page, context } = await phone('Bea Holm');
    await tap(page, 'THE BOARD IS WRONG');
    await tap(page, 'Yes, it is wrong');
    await page.getByText('Said: the board is wrong.').waitFor();
    await page.getByText(/A nurse checks first/).waitFor();
    await context.close();
  });
});
