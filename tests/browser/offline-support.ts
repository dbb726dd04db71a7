/** A small open ward for tests of what a device does without its server. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { sendCommand } from './open-kit.ts';
import type { RunningServer } from './support.ts';

export const WARD = 'alder';
export const BEDS = ['A1', 'A2', 'A3'].map((label) => ({ bed: `bed-${label}`, label, bay: 'Bay A' }));

export interface TimelineLine {
  readonly event: string;
  readonly type: string;
  readonly words: string;
  readonly occurred: number;
  readonly source: { readonly kind: string; readonly serial?: string };
  readonly counts: boolean;
}

/** A command on this ward; by default the nurse's. */
export const enter = (
  server: Pick<RunningServer, 'url'>,
  name: string,
  data: object,
  by: string | null = 'noor',
  over: object = {},
) => sendCommand(server, WARD, name, data, { by, over });

/** Ward Alder: three beds with a person each, a nurse, an aide, a charge nurse. */
export async function peopleAlder(server: Pick<RunningServer, 'url'>, hoursAgo = 0): Promise<void> {
  const occurred = { at: new Date(Date.now() - hoursAgo * 3_600_000).toISOString() };
  await enter(server, 'set-up-ward', { name: 'Alder', zone: 'Europe/Lisbon', beds: BEDS }, null);
  await enter(server, 'add-staff-member', { staff: 'ines', name: 'Ines Amaral', role: 'charge-nurse' }, null);
  await enter(server, 'add-staff-member', { staff: 'noor', name: 'Noor Haddad', role: 'nurse' }, 'ines');
  await enter(server, 'add-staff-member', { staff: 'ada', name: 'Ada Lund', role: 'aide' }, 'ines');
  for (const [i, { bed }] of BEDS.entries()) {
    const identity = { name: `Rosa Pinto ${i}` };
    const begun = { stay: `stay-${i}`, person: `person-${i}`, bed, from: 'home', identity };
    await enter(server, 'begin-stay', begun, 'noor', hoursAgo === 0 ? {} : { occurred });
  }
}

export async function timeline(server: Pick<RunningServer, 'url'>, stay: string): Promise<TimelineLine[]> {
  const page = await (await fetch(`${server.url}/api/wards/${WARD}/stays/${stay}`)).json();
  return (page as { timeline: TimelineLine[] }).timeline;
}
export const sessionsOf = async (server: Pick<RunningServer, 'url'>, stay: string): Promise<TimelineLine[]> =>
  (await timeline(server, stay)).filter(({ type }) => type === 'session-recorded');

/** Until the program is on the device and would come up without a network. */
export async function onTheDevice(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state !== 'activated') {
      await new Promise((done) => active?.addEventListener('statechange', done, { once: true }));
    }
  });
  // And until the board that is shown has been kept. Looked for first: to open it would make it.
  const kept = () =>
    page.evaluate(async () => {
      const all = await indexedDB.databases();
      if (!all.some(({ name }) => name === 'footboard-last-known')) return 0;
      return new Promise<number>((tell, fail) => {
        const asked = indexedDB.open('footboard-last-known');
        asked.addEventListener('error', () => fail(asked.error!));
        asked.addEventListener('success', () => {
          const count = asked.result.transaction('boards').objectStore('boards').count();
          count.addEventListener('success', () => {
            asked.result.close();
            tell(count.result);
          });
        });
      });
    });
  await expect.poll(kept, { timeout: 30_000 }).toBeGreaterThan(0);
}

/** By the bedside page, as a thumb does it. */
export async function recordSession(page: Page, activity: string): Promise<void> {
  await page.getByRole('button', { name: 'Session', exact: true }).click();
  const asked = page.getByRole('region', { name: 'Who is in front of you?' });
  await asked
    .or(page.getByRole('button', { name: activity, exact: true }))
    .first()
    .waitFor();
  // Without the server no name is shown: both identifiers are read on the wristband.
  if (await asked.isVisible()) {
    await asked.locator('.fact').first().click();
    await asked.locator('.fact').nth(1).click();
  }
  await page.getByRole('button', { name: activity, exact: true }).click();
  await page.getByRole('button', { name: 'Done', exact: true }).click();
  await page.getByRole('button', { name: 'Send now' }).click();
}

export const lastKnown = (page: Page) => page.getByText(/LAST KNOWN .*\d\d:\d\d/);
/** What each tile says of people, aid and stops, without its ages and its word of trust. */
export const helpOf = (page: Page) =>
  page.locator('article.tile').evaluateAll((tiles) =>
    tiles.map((tile) => {
      const text = (tile.textContent ?? '').replaceAll(/\s+/g, ' ');
      const asks =
        /check ?before ?moving|hold|alone|stand by|\b(one|two|three|1|2|3) (or more|people)|3\+|lift|aid|sling|frame|stick|belt|sheet/gi;
      return { text, help: (text.match(asks) ?? []).map((word) => word.toLowerCase()) };
    }),
  );
