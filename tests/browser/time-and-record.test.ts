import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardPage } from '@footboard/shared/wire/http';
import { StillClock, WARD, asProblem, aSession, beginStay, openWard } from '../journeys/http-kit.ts';
import type { Ward } from '../journeys/http-kit.ts';
import { openBrowser, openScreen, shoot, WALL_SIZE } from './support.ts';

/** One ward in Lisbon on a clock that the test moves: the autumn change, then a working day. */
const clock = new StillClock(Date.parse('2026-10-24T20:00:00Z'));
let ward: Ward;
let browser: Browser;
let page: Page;
let context: BrowserContext;
let faults: string[];

beforeAll(async () => {
  ward = await openWard(clock);
  browser = await openBrowser();
  ({ page, context, faults } = await openScreen(browser, WALL_SIZE));
});
afterAll(async () => {
  await context?.close();
  await browser?.close();
  await ward?.footboard.close();
});

const stayPage = (stay: string) => page.goto(`${ward.footboard.url}/wards/${WARD}/stays/${stay}`);
const entries = () => page.locator('li.entry').filter({ hasText: 'Session done' });

describe('A4 the hour that a clock change repeats, and the one it skips', () => {
  // Lisbon: on 25 October 2026 02:00 becomes 01:00, on 29 March 02:00 comes after 00:59 (IANA time zone database).
  it('given a walk at 01:40 in each of the two hours, both stand as their own, with offset and right age', async () => {
    await ward.enter('begin-stay', beginStay('stay-1'));
    clock.at = Date.parse('2026-10-25T03:10:00Z');
    for (const [repeated, startedAt] of [
      ['first', '2026-10-25T00:40:00Z'],
      ['second', '2026-10-25T01:40:00Z'],
    ] as const) {
      const occurred = { local: '2026-10-25T01:40', repeated };
      await ward.enter('record-session', aSession('stay-1', startedAt), 'ada', { occurred });
    }
    await stayPage('stay-1');
    await entries().first().waitFor();
    const times = await entries().locator('.when').allTextContents();
    expect(times.map((one) => one.trim())).toEqual(['01:40 (UTC+0)', '01:40 (UTC+1)']);
    // 1 h 30 min after the later of the two, rounded down; the earlier one is an hour older.
    await page.getByText('1 h ago').first().waitFor();
    const picture = page.getByRole('figure', { name: 'How this stay went' });
    const rows = picture.getByRole('row').filter({ hasText: 'Walk: done' });
    await rows.first().waitFor();
    expect((await rows.allTextContents()).map((one) => one.trim())).toEqual([
      '01:40 (UTC+1)Walk: done',
      '01:40 (UTC+0)Walk: done',
    ]);
    await shoot(page, 'clock-change-stay-1920');
  });

  it('given 01:40 without saying which, or a time that was skipped, it is refused with an explanation', async () => {
    const walk = aSession('stay-1', '2026-10-25T01:40:00Z');
    const at = async (local: string, of = WARD) =>
      asProblem(await ward.send('record-session', walk, 'ada', { occurred: { local } }, of));
    const twice = await at('2026-10-25T01:40');
    expect(twice.detail).toContain('01:40 happened twice');
    expect(twice.remedy).toContain('say which');
    const skipped = await at('2026-03-29T01:30');
    expect(skipped.detail).toContain('01:30');
    expect(skipped.remedy).toMatch(/enter the time after the change/);
  });

  it('given a correction to a skipped time, the form says so before anything is sent; 02:30 in Berlin as well', async () => {
    await page.getByRole('button', { name: /^Who are you/ }).click();
    await page.getByRole('button', { name: /Noor Haddad/ }).click();
    await entries()
      .first()
      .getByRole('button', { name: /Change/ })
      .click();
    await page.getByRole('menuitem', { name: /Correct/ }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByRole('button', { name: 'The time is wrong' }).click();
    const time = sheet.getByLabel("When it happened, on the ward's clock");
    await time.fill('2026-03-29T01:30');
    await sheet.getByText(/time after the change/).waitFor();
    await time.fill('2026-10-25T01:40');
    await sheet.getByRole('button', { name: 'The second' }).waitFor();
    await sheet.getByRole('button', { name: 'Close' }).click();

    const beds = [{ bed: 'bed-9', label: '9', bay: 'Bay 9' }];
    await ward.enter('set-up-ward', { name: 'Birke', zone: 'Europe/Berlin', beds }, null, {}, 'birke');
    await ward.enter(
      'add-staff-member',
      { staff: 'ola', name: 'Ola Kern', role: 'nurse' },
      null,
      {},
      'birke',
    );
    await ward.enter('begin-stay', { ...beginStay('stay-9'), bed: 'bed-9' }, 'ola', {}, 'birke');
    const sent = await ward.send(
      'record-session',
      aSession('stay-9', '2026-03-29T01:30:00Z'),
      'ola',
      { occurred: { local: '2026-03-29T02:30' } },
      'birke',
    );
    expect(asProblem(sent)).toMatchObject({ detail: expect.stringContaining('02:30') as string });
    expect(asProblem(sent).remedy).toContain('03:30');
  });
});

describe('A7 an entry about the wrong person', () => {
  it('given one withdrawn 3 h later, the screens follow, and the board as of the first hour shows what staff saw', async () => {
    clock.at = Date.parse('2026-10-26T10:00:00Z');
    await ward.enter('begin-stay', beginStay('stay-2', '1B'));
    const wall = await openScreen(browser, WALL_SIZE);
    await wall.page.goto(`${ward.footboard.url}/wards/${WARD}/wall`);
    const tile = wall.page.getByRole('article', { name: /^Bed 1B/ });
    await tile.waitFor();

    const placed = await ward.enter(
      'place-hold',
      {
        stay: 'stay-2',
        hold: 'hold-wrong',
        scope: 'out-of-bed',
        reason: 'after-fall',
        owner: 'noor',
        reviewAt: '2026-10-26T20:00:00Z',
      },
      'noor',
    );
    const wrong = placed.events[0]!.id;
    await tile.getByText(/HOLD/).first().waitFor();
    const known = placed.position;

    clock.at = Date.parse('2026-10-26T13:00:00Z');
    await ward.enter('make-retraction', { stay: 'stay-2', target: wrong, reason: 'wrong-person' }, 'noor');
    await tile.getByText(/HOLD/).first().waitFor({ state: 'detached' });

    const holds = async (query: string) => {
      const { body } = await ward.get(`/api/wards/${WARD}/board${query}`);
      const bed = boardPage.parse(body).board.beds.find((one) => one.label === '1B')!;
      return bed.stay!.holds.map((hold) => hold.scope);
    };
    expect(await holds('')).toEqual([]);
    expect(await holds(`?at=2026-10-26T11:00:00Z&p=${known}`)).toEqual(['out-of-bed']);
    // Asked by what is known now, the same hour is without it.
    expect(await holds('?at=2026-10-26T11:00:00Z')).toEqual([]);

    await stayPage('stay-2');
    const entry = page.locator(`#entry-${wrong}`);
    await entry.getByText('Hold on out of bed').waitFor();
    expect(await entry.locator('del').count()).toBe(1);
    await entry.getByText('withdrawn: see').waitFor();
    const picture = page.getByRole('figure', { name: 'How this stay went' });
    await picture.getByRole('row').first().waitFor();
    expect(await picture.getByRole('row').filter({ hasText: 'Hold:' }).count()).toBe(0);
    await shoot(page, 'withdrawn-stay-1920');
    expect([...faults, ...wall.faults]).toEqual([]);
    await wall.context.close();
  });
});
