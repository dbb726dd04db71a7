import { PNG } from 'pngjs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, hours } from '../../shared/capabilities/board/rules/history.testkit.ts';
import { StillClock, WARD, aSession, beginStay, openWard } from '../journeys/http-kit.ts';
import type { Ward } from '../journeys/http-kit.ts';
import { against, compare, tolerance } from './snapshots.ts';
import { openBrowser, openScreen, PHONE_SIZE } from './support.ts';

/**
 * A picture is kept of every screen, by day and by night: what changes how a screen looks changes a
 * file that somebody looks at. The ward, its people and the clock stand still.
 */
const clock = new StillClock(hours(38));
const DESK = { width: 1280, height: 720 };
let ward: Ward;
let browser: Browser;
let page: Page;
let allowed: number;

const iso = (at: number) => new Date(at).toISOString();
/** Imported entries are never late: the database's own clock, which stands in no picture, goes on. */
const imported = { source: { kind: 'import' } };
async function plant(): Promise<void> {
  const begin = async (stay: string, bed: string, name: string) =>
    ward.enter(
      'begin-stay',
      { ...beginStay(stay, bed), identity: { name, born: '1941-03-09' } },
      'ines',
      imported,
    );
  await begin('stay-1', '1A', 'Rosa Pinto');
  await begin('stay-2', '1B', 'Bruno Reis');
  clock.at = hours(41);
  const payload = check('stand', 41).payload as object;
  await ward.enter('record-assessment', { stay: 'stay-1', ...payload }, 'noor', imported);
  await ward.enter(
    'record-weight',
    { stay: 'stay-1', weight: { kg: 70, how: 'measured' } },
    'noor',
    imported,
  );
  const hold = { hold: 'hold-1', scope: 'out-of-bed', reason: 'unstable', owner: 'noor' };
  await ward.enter('place-hold', { stay: 'stay-2', ...hold, reviewAt: iso(hours(45)) }, 'noor', imported);
  clock.at = hours(42);
  const chair = { activities: ['chair'], metres: undefined };
  await ward.enter('record-session', aSession('stay-1', iso(hours(41.5)), chair), 'ada', imported);
  const refused = { outcome: 'not-done', activities: [], notDone: { group: 'said-no' }, metres: undefined };
  await ward.enter('record-session', aSession('stay-1', iso(hours(41.9)), refused), 'ada', imported);
  clock.at = hours(43);
}

beforeAll(async () => {
  ward = await openWard(clock);
  await plant();
  browser = await openBrowser();
  ({ page } = await openScreen(browser, DESK));
  await page.clock.setFixedTime(clock.at);
  allowed = tolerance(browser);
});
afterAll(async () => {
  await browser?.close();
  await ward?.footboard.close();
});

const of = (path: string) => `/wards/${WARD}/${path}`;
/** What is waited for is the last thing that the screen draws. */
const SCREENS = [
  ['parts', '/parts', 'Asking for the list.', 'desk'],
  ['home', '/', 'Alder', 'both'],
  ['set-up', '/set-up', 'Set up a ward', 'desk'],
  ['wall', of('wall'), '1B', 'desk'],
  ['huddle', of('huddle'), 'A forecast, not a plan', 'desk'],
  ['charge', of('charge'), 'Alder', 'desk'],
  ['day', of('day'), 'The person said no', 'both'],
  ['bedside', of('bedside'), '1A', 'phone'],
  ['bedside-bed', of('bedside/bed-1A'), 'Rosa Pinto', 'phone'],
  ['stay', of('stays/stay-1'), 'As a table', 'both'],
  ['settings', of('settings'), 'Noor Haddad', 'desk'],
  ['day-plan', of('day-plan'), 'Day plan', 'desk'],
  ['equipment', of('equipment'), 'Equipment', 'desk'],
  ['coordinator', of('coordinator'), 'No weight', 'both'],
  ['paper', of('paper'), 'No sheet was printed', 'both'],
  ['round', of('round'), 'Not on the list, and why', 'both'],
  ['round-acts', of('round/acts'), 'Nobody has acted', 'desk'],
  ['fairness', of('fairness'), /By bay|No whole ward day/, 'both'],
] as const;
const SIZES = { desk: [['desk', DESK]], phone: [['phone', PHONE_SIZE]] } as const;
const VIEWS = SCREENS.flatMap(([name, path, holds, on]) =>
  (on === 'both' ? [...SIZES.desk, ...SIZES.phone] : SIZES[on]).map(
    ([size, viewport]) => [`${name}-${size}`, path, holds, viewport] as const,
  ),
);

describe('SCREEN-21 a screen looks as it did', () => {
  it.each(VIEWS)('%s', async (name, path, holds, viewport) => {
    await page.setViewportSize(viewport);
    await page.goto(`${ward.footboard.url}${path}`);
    await page.getByText(holds).first().waitFor();
    await page.evaluate(() => document.fonts.ready);
    const faults: string[] = [];
    for (const theme of ['day', 'night'] as const) {
      await page.evaluate((to) => (document.documentElement.dataset['theme'] = to), theme);
      // Once more for what follows a size or a theme: the picture is taken of the frame after.
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
      faults.push((await compare(page, `${name}-${theme}`, allowed)).says);
    }
    expect(faults.filter(Boolean)).toEqual([]);
  });
});

describe('the comparison itself', () => {
  const sheet = (ink: number, marks = 0): Buffer => {
    const png = new PNG({ width: 100, height: 100 });
    png.data.fill(ink);
    for (let i = 0; i < marks; i++) png.data.set([255, 0, 0, 255], i * 4);
    return PNG.sync.write(png);
  };
  it('takes the same, and tells what differs by more than is allowed, also another size', () => {
    expect(against(sheet(255), sheet(255), 'same', 0.005)).toEqual({ differs: 0, says: '' });
    expect(against(sheet(255), sheet(255, 40), 'few', 0.005).says).toBe('');
    expect(against(sheet(255), sheet(255, 400), 'many', 0.005)).toMatchObject({ differs: 0.04 });
    expect(against(sheet(255), sheet(255, 400), 'many', 0.005).says).toContain('many differs in 4.00 %');
    const small = PNG.sync.write(new PNG({ width: 50, height: 100 }));
    expect(against(sheet(255), small, 'small', 0.005).says).toContain('50 x 100, not 100 x 100');
  });
});
