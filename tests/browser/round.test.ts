/** Two aides with a phone each on the round: who goes, who is told so, and a list that stays still. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, hours } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { toIso } from '@footboard/shared/kernel/times';
import { beginStay, openWard, WARD, type Ward } from '../journeys/http-kit.ts';
import { sayWho } from './open-kit.ts';
import { screenFaults, openBrowser, openScreen, PHONE_SIZE, shoot } from './support.ts';

/** Monday 11:00 on the ward's clock. */
const started = Date.now();
const clock = { rate: 1, now: () => hours(40) + (Date.now() - started) };
let ward: Ward;
let browser: Browser;
const envelope = { source: { kind: 'import', serial: 'old-1' } } as const;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('add-staff-member', { staff: 'bea', name: 'Bea Holm', role: 'aide' });
  await ward.enter('add-bed', { bed: 'bed-2B', label: '2B', bay: 'Bay 2', ceilingTrack: false });
  // Of yesterday, and gone by now: a whole ward day of somebody.
  const then = (h: number) => ({ ...envelope, occurred: { at: toIso(hours(h)) }, fromOutbox: false });
  await ward.enter('begin-stay', beginStay('stay-0', '2B'), 'noor', then(2));
  await ward.enter('end-stay', { stay: 'stay-0', bed: 'bed-2B', to: 'home' }, 'noor', then(37));
  for (const [stay, bed, upTo] of [
    ['stay-1', '1A', 'walk'],
    ['stay-2', '1B', 'walk'],
    ['stay-3', '2A', 'walk'],
    ['stay-4', '2B', 'edge'],
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
    const payload = check(upTo, 39).payload as object;
    const checked = { ...envelope, occurred: { at: toIso(hours(39)) } };
    await ward.enter('record-assessment', { stay, ...payload }, 'noor', checked);
  }
  // Both aides are on, so that a time for two can be found.
  await ward.enter('name-carers', {
    until: toIso(clock.now() + 6 * 3_600_000),
    beds: [
      { bed: 'bed-1A', nurse: 'noor', aide: 'ada' },
      { bed: 'bed-2A', nurse: null, aide: 'bea' },
    ],
  });
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
  await sayWho(page, new RegExp(who));
  await card(page).waitFor();
  return screen;
}
const card = (page: Page) => page.locator('article.card');
const tap = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
/** Nobody's signs were taken here, so a nurse is asked first. */
async function goesAfterAsking(page: Page, ...more: readonly string[]) {
  await tap(page, 'I go');
  await page.getByText('Ask a nurse first. Who did you ask?').waitFor();
  await tap(page, 'Noor Haddad');
  for (const one of more) await tap(page, one);
}
const bedOnCard = (page: Page) => card(page).getByRole('heading').innerText();
const rows = (page: Page) => page.locator('.rows strong').allInnerTexts();

describe('the round on two phones', () => {
  it('a visit taken on one shows on the other, whose list stays still and who is refused in words', async () => {
    const ada = await phone('Ada Lund');
    const bea = await phone('Bea Holm');
    expect(await bedOnCard(ada.page)).toBe('Bed 1A');
    await shoot(ada.page, 'round-390');
    expect(await screenFaults(ada.page)).toEqual([]);
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
    await goesAfterAsking(ada.page);
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
    const [taken] = (await ward.footboard.log.readStream(WARD as never, 'stay/stay-1')).events.filter(
      (e) => e.type === 'visit-taken',
    );
    expect(taken!.payload).toMatchObject({ by: 'ada', asked: 'noor' });
  });

  it('a swap and giving back show on the other phone', async () => {
    const ada = await phone('Ada Lund');
    const bea = await phone('Bea Holm');
    await tap(ada.page, 'Swap');
    await tap(ada.page, 'Bea Holm');
    await tap(bea.page, 'List changed: show it');
    await card(bea.page)
      .getByText(/^Yours, /)
      .waitFor();
    expect(await bedOnCard(bea.page)).toBe('Bed 1A');
    await tap(bea.page, 'Give back');
    await tap(bea.page, 'Called away');
    await tap(ada.page, 'List changed: show it');
    await expect.poll(() => bedOnCard(ada.page)).toBe('Bed 1A');
    await card(ada.page).getByRole('button', { name: 'I go', exact: true }).waitFor();
    await ada.context.close();
    await bea.context.close();
  });

  it('another than the first asks why, and the list as it was can be looked at without a name', async () => {
    const { page, context } = await phone('Ada Lund');
    await page.getByRole('button', { name: 'Show bed 1B' }).click();
    await goesAfterAsking(page, 'A nurse asks');
    await page.getByText(/^Yours, /).waitFor();
    await page.goto(`${ward.footboard.url}/wards/${WARD}/round/acts`);
    await page.getByText('2 of ').first().waitFor();
    await page.getByRole('button', { name: /^Show the list of .*bed 1B$/ }).click();
    await page.getByText('the same to the last sign').waitFor();
    expect(await page.locator('.then').innerText()).not.toMatch(/Ada|Bea|Noor/);
    await shoot(page, 'round-then-390');
    expect(await screenFaults(page)).toEqual([]);
    await page.goto(`${ward.footboard.url}/wards/${WARD}/round`);
    await tap(page, 'Give back');
    await tap(page, 'By mistake');
    await expect.poll(() => bedOnCard(page), { timeout: 10_000 }).toBe('Bed 1A');
    await context.close();
  });

  it('ROUND-5 two are booked on both phones; the second cannot in one tap, and another is looked for', async () => {
    const ada = await phone('Ada Lund');
    const bea = await phone('Bea Holm');
    await ada.page.getByRole('button', { name: 'Show bed 2B' }).click();
    await tap(ada.page, 'I go with…');
    await shoot(ada.page, 'round-pairs-390');
    await ada.page.getByRole('button', { name: /^\d\d:\d\d with Bea Holm$/ }).click();
    await tap(ada.page, 'Noor Haddad');
    await tap(ada.page, 'Second person is free now');
    await ada.page.getByRole('button', { name: /^\d\d:\d\d with Bea Holm, bed 2B$/ }).waitFor();
    await bea.page.getByRole('button', { name: /^\d\d:\d\d with Ada Lund, bed 2B$/ }).waitFor();
    await shoot(bea.page, 'round-booked-390');
    const busy = await ward.send('take-visit', { stay: 'stay-2', visit: 'v-b', second: 'bea' }, 'noor');
    expect(busy.body).toMatchObject({ type: '/problems/booked-then' });
    await tap(bea.page, 'I cannot go along to bed 2B');
    await bea.page.getByText('A second person is looked for again.').waitFor();
    await ada.page.getByRole('button', { name: /^\d\d:\d\d, bed 2B$/ }).click();
    await card(ada.page).getByText('A second person is needed: nobody is named.').waitFor();
    await tap(ada.page, 'Give back');
    await tap(ada.page, 'Needs a second person');
    await expect.poll(() => bedOnCard(ada.page), { timeout: 10_000 }).toBe('Bed 1A');
    await ada.context.close();
    await bea.context.close();
  });

  it('a change is marked once it is shown, and moves nothing before', async () => {
    const { page, context } = await phone('Ada Lund');
    const before = await rows(page);
    const leaving = { stay: 'stay-3', at: toIso(clock.now() + 3_600_000) };
    await ward.enter('expect-leaving', leaving, 'noor');
    await page.getByRole('button', { name: 'List changed: show it' }).waitFor();
    expect(await rows(page)).toEqual(before);
    expect(await bedOnCard(page)).toBe('Bed 1A');
    await tap(page, 'List changed: show it');
    expect(await bedOnCard(page)).toBe('Bed 2A');
    await page.getByText('was number 1').waitFor();
    await ward.enter('expect-leaving', { ...leaving, at: null }, 'noor');
    await context.close();
  });

  it('not now without a network is kept on the phone and goes out by itself', async () => {
    const { page, context } = await phone('Ada Lund');
    await page.getByRole('button', { name: 'Show bed 2A' }).click();
    await context.setOffline(true);
    await tap(page, 'Not now');
    await tap(page, 'Bad moment');
    await page.getByText('Kept on this phone.').waitFor({ timeout: 30_000 });
    await context.setOffline(false);
    const notDone = async () =>
      (await ward.footboard.log.readStream(WARD as never, 'stay/stay-3')).events.filter(
        (e) => e.type === 'session-recorded',
      ).length;
    await expect.poll(notDone, { timeout: 30_000 }).toBe(1);
    await context.close();
  });

  it('who was got up is told with its counts, and looked at by night on a wide screen', async () => {
    const { page, context } = await openScreen(browser, { width: 1920, height: 1080 });
    await page.goto(`${ward.footboard.url}/wards/${WARD}/fairness`);
    await page
      .getByText(/^\s*Too few person-days for a share: 2\s*$/)
      .first()
      .waitFor();
    await shoot(page, 'fairness-1920');
    expect(await screenFaults(page)).toEqual([]);
    await page.goto(`${ward.footboard.url}/wards/${WARD}/round`);
    await card(page).waitFor();
    await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await shoot(page, 'round-1920-night');
    expect(await screenFaults(page)).toEqual([]);
    await context.close();
  });

  it('not now takes two taps and no typing', async () => {
    const { page, context } = await phone('Bea Holm');
    expect(await bedOnCard(page)).toBe('Bed 1A');
    await tap(page, 'Not now');
    await shoot(page, 'round-not-now-390');
    await tap(page, 'Bad moment');
    await expect.poll(() => bedOnCard(page), { timeout: 10_000 }).toBe('Bed 1B');
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
