/** The day plan from who is on to the bedside: named, proposed, changed by hand, accepted, seen elsewhere, held. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, hours } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { toIso } from '@footboard/shared/kernel/times';
import { beginStay, openWard, WARD, type Ward } from '../journeys/http-kit.ts';
import { screenFaults, openBrowser, openScreen, PHONE_SIZE, shoot, WALL_SIZE } from './support.ts';

/** 10:00 on the ward's clock. */
const started = Date.now();
const clock = { rate: 1, now: () => hours(42) + (Date.now() - started) };
let ward: Ward;
let browser: Browser;
let charge: Page;

beforeAll(async () => {
  ward = await openWard(clock);
  for (const [stay, bed] of [
    ['stay-1', '1A'],
    ['stay-2', '1B'],
  ] as const) {
    const of = (h: number) => ({
      source: { kind: 'import', serial: 'old-1' },
      occurred: { at: toIso(hours(h)) },
      fromOutbox: false,
    });
    await ward.enter('begin-stay', beginStay(stay, bed), 'noor', of(38));
    await ward.enter('record-weight', { stay, weight: { kg: 70, how: 'measured' } }, 'noor', of(38));
    const payload = check('walk', 39).payload as object;
    await ward.enter('record-assessment', { stay, ...payload }, 'noor', of(39));
    await ward.enter('set-goal', { stay, goal: { activity: 'walk', timesUp: 1 } }, 'noor');
  }
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await ward?.footboard.close();
});

async function screen(path: string, who: string | null, size = PHONE_SIZE): Promise<Page> {
  const { page } = await openScreen(browser, size);
  await page.goto(`${ward.footboard.url}/wards/${WARD}/${path}`);
  if (who !== null) {
    await page.getByRole('button', { name: 'Who are you?' }).click();
    await page.getByRole('button', { name: new RegExp(who) }).click();
  }
  return page;
}
const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
const sheet = (page: Page) => page.getByRole('dialog');
/** Fills the sheet of one visit and sends it to the checker. */
async function says(page: Page, time: string, who: string, does: string): Promise<void> {
  const open = sheet(page);
  await open.getByLabel('Begins at').fill(time);
  for (const one of await open.getByRole('button', { pressed: true }).all()) await one.click();
  await open.getByRole('button', { name: who }).click();
  await open.getByRole('button', { name: does }).click();
}
const line = (page: Page, visit: string) => page.locator(`[data-visit="${visit}"]`);
const tile = (page: Page, label: string) => page.locator('article.tile').filter({ hasText: label });

describe('a day plan, from the charge page to another phone', () => {
  it('PLANNED-9 who is on is named, a plan proposed and changed by hand; what breaks a rule is refused in words', async () => {
    charge = await screen('charge', 'Ines Amaral', WALL_SIZE);
    await charge.getByText('No plan is accepted for this day.').waitFor();
    await tap(charge, 'Name who is on');
    const form = sheet(charge);
    for (const name of [/^Noor Haddad/, /^Ada Lund/, 'other times'])
      await form.getByRole('button', { name }).click();
    await form.getByLabel('From').fill('09:00');
    await form.getByLabel('Until').fill('18:00');
    await form.getByLabel('Break begins (optional)').fill('13:00');
    await form.getByRole('button', { name: 'Name 2 people' }).click();
    await charge.getByText('09:00 to 18:00, break 13:00').first().waitFor();

    // By keyboard alone.
    await charge.locator('.accepted-plan a').focus();
    await charge.keyboard.press('Enter');
    await tap(charge, 'Make a plan');
    await charge.getByRole('button', { name: 'Accept this plan' }).waitFor();

    await line(charge, 'stay-1-g1').getByRole('button').click();
    await says(charge, '13:15', 'Ada Lund', 'Change it so');
    await sheet(charge).getByText('Ada Lund: whoever goes is on a break').waitFor();
    await shoot(charge, 'day-plan-refused-1920');
    expect(await screenFaults(charge)).toEqual([]);
    await says(charge, '14:00', 'Ada Lund', 'Change it so');
    await line(charge, 'stay-1-g1').getByText('14:00').waitFor();

    for (const visit of ['stay-1-c', 'stay-2-c', 'stay-2-g1']) {
      await line(charge, visit).getByRole('button').click();
      await tap(charge, 'Leave out');
      await line(charge, visit).waitFor({ state: 'detached' });
    }
    expect(await charge.getByText('taken out by hand').count()).toBe(3);
    await tap(charge, /^Put in by hand: Bed 1B, walk/);
    await says(charge, '14:00', 'Ada Lund', 'Put in by hand');
    await sheet(charge).getByText('Ada Lund: somebody would be in two places at once').waitFor();
    await says(charge, '15:00', 'Ada Lund', 'Put in by hand');
    await line(charge, 'stay-2-g1').getByText('15:00').waitFor();
    await shoot(charge, 'day-plan-changed-1920');
  });

  it('PLANNED-6 accepted, it stands on the phone of whoever goes and on the wall', async () => {
    await tap(charge, 'Accept this plan');
    await charge.getByText('The plan is accepted.').waitFor();
    const wall = await screen('wall', null, WALL_SIZE);
    await tile(wall, '1A').getByText('next 14:00').waitFor();

    const ada = await screen('round', 'Ada Lund');
    const own = ada.getByRole('region', { name: 'Planned for you' });
    await own.getByText('Bed 1A: 14:00, you alone').waitFor();
    await own.getByText('Bed 1B: 15:00, you alone').waitFor();
    await ada.locator('article.card').getByText('14:00, you alone').first().waitFor();
    await ada.locator('.rows').first().getByText('planned 15:00, you alone').waitFor();
    await shoot(ada, 'round-planned-390');
    await shoot(wall, 'wall-planned-1920');
    expect(await screenFaults(ada)).toEqual([]);

    // Taken as planned it is a booking like any other.
    await own.getByRole('button', { name: /^Bed 1B/ }).click();
    await tap(ada, 'I go as planned, 15:00, you alone');
    await ada.getByText('Ask a nurse first. Who did you ask?').waitFor();
    await tap(ada, 'Noor Haddad');
    await ada.getByRole('region', { name: 'You are booked' }).getByText('15:00, bed 1B').waitFor();
    expect(await own.getByText('Bed 1B').count()).toBe(0);
    await tile(wall, '1B').getByText('next 15:00').waitFor();
    const { events } = await ward.footboard.log.readStream(WARD as never, 'stay/stay-2');
    expect(events.find(({ type }) => type === 'visit-taken')!.payload).toMatchObject({
      by: 'ada',
      from: toIso(hours(47)),
    });
    expect(events.find(({ type }) => type === 'list-acted-on')!.payload).toMatchObject({
      instead: 'as-planned',
    });
  });

  it('PLANNED-7 a hold then placed shows: on phone, bedside, wall and charge page the visit is held', async () => {
    const hold = { hold: 'hold-1', scope: 'out-of-bed', reason: 'unstable', owner: 'noor' };
    await ward.enter('place-hold', { stay: 'stay-1', ...hold, reviewAt: toIso(hours(50)) }, 'noor');
    const ada = await screen('round', 'Ada Lund');
    const held = /HELD, not to be done: 14:00, you alone\. Hold on out of bed since/;
    await ada.getByRole('region', { name: 'Planned for you' }).getByText(held).waitFor();
    await shoot(ada, 'round-held-390');
    expect(await ada.getByRole('button', { name: /^I go as planned/ }).count()).toBe(0);

    const bedside = await screen('bedside/bed-1A', 'Ada Lund');
    await bedside.getByText(held).waitFor();
    await shoot(bedside, 'bedside-held-390');
    const wall = await screen('wall', null, WALL_SIZE);
    await tile(wall, '1A').getByText('held 14:00').waitFor();
    await shoot(wall, 'wall-held-1920');

    await ada.evaluate(() => localStorage.setItem('footboard-language', 'de'));
    await ada.reload();
    await ada
      .getByRole('region', { name: 'Für dich geplant' })
      .getByText(/GESTOPPT, nicht zu machen: 14:00, allein\. Stopp für/)
      .waitFor();
    await ada.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await shoot(ada, 'round-held-german-night-390');

    await charge.getByText('HELD: Hold on out of bed').waitFor();
    await charge.goto(`${ward.footboard.url}/wards/${WARD}/charge`);
    await charge
      .locator('.accepted-plan')
      .getByText(/by Ines Amaral\. \d visits still ahead, 1 of them held/)
      .waitFor();
    await shoot(charge, 'charge-plan-1920');
    await charge.goto(`${ward.footboard.url}/wards/${WARD}/huddle`);
    await charge
      .locator('.accepted-plan')
      .getByText(/1 of them held/)
      .waitFor();
    await shoot(charge, 'huddle-plan-1920');
  });
});
