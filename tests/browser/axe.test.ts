import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WARD, accept, ask, enter, setUpAlder } from './access-support.ts';
import {
  screenFaults,
  openBrowser,
  openScreen,
  PHONE_SIZE,
  startBuilt,
  type RunningServer,
} from './support.ts';

/**
 * Every screen there is, signed in as somebody who may see it, by day on a desk and by night on a
 * phone: axe finds nothing against WCAG 2.2 A and AA, the Tab key reaches every control with its focus
 * to be seen, nothing moves for whoever asks for less motion, and 200 % zoom needs no sideways scroll.
 */
let server: RunningServer;
let browser: Browser;
let page: Page;
let faults: string[];
const DESK = { width: 1280, height: 800 };
/** 1280 pixels at 200 %, as a browser's own zoom lays them out (WCAG 2.2, 1.4.4 and 1.4.10). */
const ZOOMED = { width: 640, height: 400 };
const STAFF = { noor: ['Noor Haddad', 'charge-nurse'], rita: ['Rita Sorel', 'records'] } as const;

beforeAll(async () => {
  server = await startBuilt('server/dist/main.js');
  browser = await openBrowser();
  ({ page, faults } = await openScreen(browser, DESK));
  await setUpAlder(page, server, STAFF);
  const links: Record<string, string> = {};
  for (const staff of ['noor', 'rita'] as const) {
    const asked = { staff, name: STAFF[staff][0] };
    links[staff] = String((await ask(page, 'POST', `/api/wards/${WARD}/accounts`, asked))['path']);
  }
  for (const staff of ['rita', 'noor'] as const) {
    const screen = await openScreen(browser, DESK);
    await screen.page.goto(`${server.url}/sign-in`);
    await accept(screen.page, links[staff]!, staff);
    people[staff] = screen;
  }
  const noor = people['noor']!.page;
  const person = { person: 'of-stay-1', bed: 'bed-A1', from: 'home', identity: { name: 'Rosa Pinto' } };
  const hours = (n: number) => Date.now() - n * 3_600_000;
  await enter(noor, 'begin-stay', { stay: 'stay-1', ...person }, { at: hours(20) });
  await enter(noor, 'record-trigger', { stay: 'stay-1', kind: 'sedation' }, { at: hours(3) });
  const session = {
    outcome: 'done',
    occasion: 'planned',
    activities: ['chair'],
    startedAt: new Date(hours(2)).toISOString(),
    events: [],
  };
  await enter(noor, 'record-session', { stay: 'stay-1', session }, { at: hours(2) });
});
const people: Record<string, { page: Page; context: BrowserContext; faults: string[] }> = {};
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

type Who = 'admin' | 'noor' | 'rita' | 'nobody';
/** Path, what to wait for, who looks. Every route of web/router.ts is here: a test below counts them. */
const SCREENS: readonly (readonly [route: string, path: string, holds: string | RegExp, who: Who])[] = [
  ['/', '/', 'Alder', 'noor'],
  ['/', '/', /Sign in/, 'nobody'],
  ['/sign-in', '/sign-in', 'Sign-in name', 'nobody'],
  ['/join', '/join', /link/i, 'nobody'],
  ['/pair', '/pair', /Pair/, 'nobody'],
  ['/parts', '/parts', 'Every part of the screens', 'nobody'],
  ['/account', '/account', 'Noor Haddad', 'noor'],
  ['/set-up', '/set-up', 'Set up a ward', 'admin'],
  ['/wards/:ward/wall', `/wards/${WARD}/wall`, 'A1', 'noor'],
  ['/wards/:ward/huddle', `/wards/${WARD}/huddle`, 'Alder', 'noor'],
  ['/wards/:ward/charge', `/wards/${WARD}/charge`, 'Alder', 'noor'],
  ['/wards/:ward/day', `/wards/${WARD}/day`, 'Sessions by the hour', 'noor'],
  ['/wards/:ward/bedside/:bed?', `/wards/${WARD}/bedside`, 'A1', 'noor'],
  ['/wards/:ward/bedside/:bed?', `/wards/${WARD}/bedside/bed-A1`, 'Rosa Pinto', 'noor'],
  ['/wards/:ward/bedside/:bed?', `/wards/${WARD}/bedside/bed-A2`, /arrives/, 'noor'],
  ['/wards/:ward/stays/:stay', `/wards/${WARD}/stays/stay-1`, 'How this stay went', 'noor'],
  ['/wards/:ward/stays/:stay', `/wards/${WARD}/stays/nobody`, 'Ask again', 'noor'],
  ['/wards/:ward/day-plan', `/wards/${WARD}/day-plan`, 'Alder', 'noor'],
  ['/wards/:ward/equipment/:item?', `/wards/${WARD}/equipment`, 'Alder', 'noor'],
  ['/wards/:ward/coordinator', `/wards/${WARD}/coordinator`, 'No weight', 'noor'],
  ['/wards/:ward/coordinator', `/wards/${WARD}/coordinator`, /Ask the handling coordinator/, 'rita'],
  ['/wards/:ward/concerns', `/wards/${WARD}/concerns`, 'It nearly went wrong', 'noor'],
  ['/wards/:ward/round', `/wards/${WARD}/round`, /Next|on the list/, 'noor'],
  ['/wards/:ward/round/acts', `/wards/${WARD}/round/acts`, /has acted/, 'noor'],
  ['/wards/:ward/fairness', `/wards/${WARD}/fairness`, /By bay|No whole ward day/, 'noor'],
  ['/wards/:ward/paper/:serial?/:bed?', `/wards/${WARD}/paper`, /paper/i, 'noor'],
  ['/wards/:ward/settings', `/wards/${WARD}/settings`, 'Noor Haddad', 'noor'],
  ['/wards/:ward/accounts', `/wards/${WARD}/accounts`, 'Rita Sorel', 'admin'],
  ['/wards/:ward/devices', `/wards/${WARD}/devices`, 'Alder', 'admin'],
  ['/wards/:ward/access-log', `/wards/${WARD}/access-log`, 'Noor Haddad', 'rita'],
  ['/wards/:ward/access-log', `/wards/${WARD}/access-log`, /not for your role/, 'noor'],
  ['/wards/:ward/records', `/wards/${WARD}/records`, 'Staff who have left', 'rita'],
  ['/wards/:ward/glass', `/wards/${WARD}/glass`, 'Alder', 'rita'],
  ['/wards/:ward/wall', '/wards/elsewhere/wall', /ward/i, 'noor'],
  ['/:rest(.*)*', '/nothing/here', /./, 'nobody'],
];

async function open(who: Who, path: string, holds: string | RegExp): Promise<Page> {
  if (who === 'nobody' && !people['nobody']) people['nobody'] = await openScreen(browser, DESK);
  const at = who === 'admin' ? page : people[who]!.page;
  await at.setViewportSize(DESK);
  await at.goto(`${server.url}${path}`);
  await at
    .locator('main')
    .getByText(holds)
    .or(at.locator('h1', { hasText: holds }))
    .first()
    .waitFor();
  return at;
}

/** Marks every control that a hand can use, walks by Tab until nothing new comes, and names what was missed. */
async function walk(at: Page): Promise<{ missed: string[]; unseen: string[] }> {
  const count = await at.evaluate(() => {
    const seen = new Set<string>();
    let n = 0;
    const all = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
    for (const one of document.querySelectorAll<HTMLElement>(all)) {
      const off = one.matches(':disabled') || one.closest('[inert], fieldset:disabled') !== null;
      if (off || one.tabIndex < 0 || !one.checkVisibility({ visibilityProperty: true })) continue;
      // Of a row of radio buttons Tab stops at one.
      const group = one instanceof HTMLInputElement && one.type === 'radio' ? one.name : '';
      if (group !== '' && seen.has(group)) continue;
      seen.add(group);
      one.dataset['walk'] = group === '' ? String(n) : `radio ${group}`;
      n++;
    }
    (document.activeElement as HTMLElement | null)?.blur();
    return n;
  });
  const reached = new Set<string>();
  // A field of a date has stops of its own within: one of them shows the focus of the field.
  const seen = new Set<string>();
  const focused = new Map<string, string>();
  for (let presses = 0; presses < count * 3 + 20; presses++) {
    await at.keyboard.press('Tab');
    const now = await at.evaluate(() => {
      const one = document.activeElement as HTMLElement | null;
      if (!one || one === document.body) return null;
      const style = getComputedStyle(one);
      const label = one.closest('label') ? getComputedStyle(one.closest('label')!) : null;
      const drawn = (s: CSSStyleDeclaration) =>
        (s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) > 0) || s.boxShadow !== 'none';
      const group = one instanceof HTMLInputElement && one.type === 'radio' ? `radio ${one.name}` : null;
      return {
        id: group ?? one.dataset['walk'] ?? '',
        shown: drawn(style) || (label !== null && drawn(label)),
        html: one.outerHTML.slice(0, 100),
      };
    });
    if (!now) continue;
    const which = now.id || now.html;
    focused.set(which, now.html);
    if (now.shown) seen.add(which);
    if (now.id) reached.add(now.id);
    if (reached.size >= count) break;
  }
  const missed = await at.evaluate(
    (ids) =>
      [...document.querySelectorAll<HTMLElement>('[data-walk]')]
        .filter((one) => !ids.includes(one.dataset['walk']!))
        .map((one) => one.outerHTML.slice(0, 100)),
    [...reached],
  );
  const unseen = [...focused].filter(([which]) => !seen.has(which)).map(([, html]) => html);
  return { missed, unseen };
}

/** What sticks out sideways; nothing where the page needs no sideways scroll. */
const overflow = (at: Page) =>
  at.evaluate(() => {
    if (document.documentElement.scrollWidth <= window.innerWidth) return [];
    return [...document.querySelectorAll('main *')]
      .filter((one) => one.getBoundingClientRect().right > window.innerWidth)
      .map((one) => one.outerHTML.slice(0, 120))
      .slice(0, 5);
  });

describe('SCREEN-20 every screen', () => {
  it('is in the table, once or more', () => {
    const router = readFileSync(new URL('../../web/router.ts', import.meta.url), 'utf8');
    const routes = [...router.matchAll(/path: '([^']+)'/g)].map((match) => match[1]!);
    expect(routes.length).toBeGreaterThan(10);
    const covered = new Set(SCREENS.map(([route]) => route));
    expect(routes.filter((route) => !covered.has(route))).toEqual([]);
  });

  it.each(SCREENS)('%s at %s', async (_route, path, holds, who) => {
    const at = await open(who, path, holds);
    expect(await screenFaults(at), 'by day on a desk').toEqual([]);

    await at.emulateMedia({ reducedMotion: 'reduce' });
    expect(await at.evaluate(() => document.getAnimations().length)).toBe(0);
    expect(await walk(at)).toEqual({ missed: [], unseen: [] });

    await at.setViewportSize(ZOOMED);
    // A wall lays itself out anew in the next frame.
    await expect.poll(() => overflow(at), { message: 'at 200 %', timeout: 5_000 }).toEqual([]);

    await at.setViewportSize(PHONE_SIZE);
    await at.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    expect(await screenFaults(at), 'by night on a phone').toEqual([]);
    expect(await overflow(at), 'on a phone').toEqual([]);
  });

  it('writes nothing to the console that a developer would have to look at', () => {
    const all = [...faults, ...Object.values(people).flatMap((one) => one.faults)];
    // The browser itself tells of answers that are a refusal; the screens asked for those on purpose.
    expect(all.filter((text) => !/Failed to load resource/.test(text))).toEqual([]);
  });
});
