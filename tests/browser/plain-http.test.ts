/**
 * Over plain http from another machine a browser gives a page no service worker, no camera and no
 * crypto.randomUUID (W3C Secure Contexts; HTML, Service Workers, Media Capture and Streams, Web
 * Cryptography). What works there works, and what does not is said.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, hours } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { toIso } from '@footboard/shared/kernel/times';
import { beginStay, openWard, WARD, type Ward } from '../journeys/http-kit.ts';
import { sayWho } from './open-kit.ts';
import { openBrowser, openScreen, PHONE_SIZE, shoot } from './support.ts';

const started = Date.now();
const clock = { rate: 1, now: () => hours(40) + (Date.now() - started) };
let ward: Ward;
let browser: Browser;
/** The same server under a name that is not this machine's own to the browser. */
const elsewhere = () => ward.footboard.url.replace(/127\.0\.0\.1|localhost/, 'ward.test');

beforeAll(async () => {
  ward = await openWard(clock);
  const old = { source: { kind: 'import', serial: 'old-1' }, fromOutbox: false };
  const early = { ...old, occurred: { at: toIso(hours(38)) } };
  await ward.enter(
    'begin-stay',
    { ...beginStay('stay-1', '1A'), identity: { name: 'Rosa 1A' } },
    'noor',
    early,
  );
  await ward.enter('record-weight', { stay: 'stay-1', weight: { kg: 70, how: 'measured' } }, 'noor', early);
  await ward.enter(
    'record-assessment',
    { stay: 'stay-1', ...(check('walk', 39).payload as object) },
    'noor',
    {
      ...old,
      occurred: { at: toIso(hours(39)) },
    },
  );
  browser = await openBrowser(['--host-resolver-rules=MAP ward.test 127.0.0.1']);
});
afterAll(async () => {
  await browser?.close();
  await ward?.footboard.close();
});

describe('over plain http', () => {
  it('SCREEN-26 a bedside page says what is off, shows the live board, and has a store for entries', async () => {
    const { page, context, faults } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${elsewhere()}/wards/${WARD}/bedside`);
    await page.getByText('Offline entry and the camera are off here').waitFor();
    expect(
      await page.evaluate(() => ({
        secure: isSecureContext,
        worker: 'serviceWorker' in navigator,
        uuid: 'randomUUID' in crypto,
        camera: navigator.mediaDevices !== undefined,
        // The outbox needs IndexedDB alone, which plain http has.
        store: typeof indexedDB,
      })),
    ).toEqual({ secure: false, worker: false, uuid: false, camera: false, store: 'object' });
    expect(await page.getByText(/LAST KNOWN/).count()).toBe(0);
    await shoot(page, 'plain-http-390');
    expect(faults).toEqual([]);
    await context.close();
  });

  it('SCREEN-26 a visit is taken on the round, with an id made without crypto.randomUUID', async () => {
    const { page, context, faults } = await openScreen(browser, PHONE_SIZE);
    await page.goto(`${elsewhere()}/wards/${WARD}/round`);
    await sayWho(page, /Ada Lund/);
    await page.locator('article.card').getByText('Bed 1A').waitFor();
    await page.getByRole('button', { name: 'I go', exact: true }).click();
    // Nobody's signs were taken here, so a nurse is asked first.
    await page.getByText('Ask a nurse first. Who did you ask?').waitFor();
    await page.getByRole('button', { name: 'Noor Haddad', exact: true }).click();
    await expect
      .poll(() =>
        ward.footboard.boards.snapshot(WARD as never)!.board.beds.map(({ stay }) => stay?.visit?.by),
      )
      .toContain('ada');
    expect(faults).toEqual([]);
    await context.close();
  });
});
