import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sendCommand } from './open-kit.ts';
import {
  screenFaults,
  openBrowser,
  openScreen,
  PHONE_SIZE,
  shoot,
  startBuilt,
  type RunningServer,
} from './support.ts';

let server: RunningServer;
let browser: Browser;
let page: Page;
let faults: string[];

const WARD = 'willow';
const enter = (name: string, data: object, by: string | null = 'hana') =>
  sendCommand(server, WARD, name, data, { by });

beforeAll(async () => {
  server = await startBuilt('tests/support/open-server.mjs');
  browser = await openBrowser();
  const beds = ['1', '2'].map((label) => ({ bed: `b${label}`, label, bay: 'Bay 1' }));
  await enter('set-up-ward', { name: 'Willow', zone: 'Europe/Lisbon', beds }, null);
  await enter('add-staff-member', { staff: 'hana', name: 'Hana Weiss', role: 'handling-coordinator' }, null);
  await enter('add-staff-member', { staff: 'ada', name: 'Ada Lund', role: 'aide' }, null);
  ({ page, faults } = await openScreen(browser, PHONE_SIZE));
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

async function idOf(label: string): Promise<string> {
  const answer = await fetch(`${server.url}/api/wards/${WARD}/items`);
  const { items } = (await answer.json()) as { items: { item: string; is: { label: string } }[] };
  return items.find(({ is }) => is.label === label)!.item;
}
async function iAm(name: RegExp): Promise<void> {
  await page.goto(`${server.url}/wards/${WARD}/equipment`);
  await page.getByRole('banner').getByRole('button').first().click();
  await page.getByRole('button', { name }).first().click();
}

describe('the equipment page on a phone', () => {
  it('the coordinator adds a lift; nobody having spoken of it, it reads unknown', async () => {
    await iAm(/Hana Weiss/);
    await page.getByText('Nothing is on the list yet.').waitFor();
    await page.getByRole('button', { name: 'Add a piece' }).click();
    await page.getByRole('button', { name: 'Save' }).click();
    // Empty fields are named, and nothing is sent.
    await page.getByText('give it a name').first().waitFor();
    await page.getByLabel('Name, as written on it').fill('Lift 1');
    await page.getByLabel('Maker’s model').fill('A');
    await page.getByLabel('Safe working load').fill('200');
    await page.getByLabel('Next examination due').fill('2099-01-01');
    await page.getByLabel('Where it stands or hangs').fill('Store');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('0 of 1 lifts usable now').waitFor();
    await page.getByText('nobody has said that it is clean').waitFor();
    await shoot(page, 'equipment-390');
    expect(await screenFaults(page)).toEqual([]);
  });

  it('an aide says in three taps each where it is, that it is clean and charged; then it counts', async () => {
    await iAm(/Ada Lund/);
    for (const tap of ['Store', 'Clean', 'full']) {
      await page.getByRole('button', { name: /Lift 1/ }).click();
      await page.getByRole('dialog').getByRole('button', { name: tap, exact: true }).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
    }
    await page.getByText('1 of 1 lifts usable now').waitFor();
    expect(await page.getByRole('button', { name: /Lift 1/ }).innerText()).toContain('usable now');
  });

  it('an aide takes it out of service, and it counts no more until the coordinator returns it', async () => {
    await page.getByRole('button', { name: /Lift 1/ }).click();
    expect(await screenFaults(page)).toEqual([]);
    await shoot(page, 'equipment-taps-390');
    await page.getByRole('button', { name: 'Broken or not safe' }).click();
    await page.getByRole('button', { name: 'brake or wheel' }).click();
    await page.getByText('out of service (brake or wheel)').waitFor();
    await page.getByText('0 of 1 lifts usable now').waitFor();
    await iAm(/Hana Weiss/);
    await page.getByRole('button', { name: /Lift 1/ }).click();
    await page.getByRole('button', { name: 'Looked at: return to service' }).click();
    await page.getByText('1 of 1 lifts usable now').waitFor();
    expect(faults).toEqual([]);
  });

  it('a code scanned from the piece opens its taps; one of another list says so', async () => {
    await page.goto(`${server.url}/wards/${WARD}/equipment/${await idOf('Lift 1')}`);
    const dialog = page.getByRole('dialog', { name: 'What is it with Lift 1?' });
    await dialog.getByRole('button', { name: 'Dirty' }).click();
    await dialog.waitFor({ state: 'detached' });
    await page.getByText('0 of 1 lifts usable now').waitFor();
    await page.goto(`${server.url}/wards/${WARD}/equipment/nothing-here`);
    await page.getByText('The code names a piece that is not on this ward’s list.').waitFor();
    await page.getByRole('button', { name: /Lift 1/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Clean', exact: true }).click();
    await page.getByText('1 of 1 lifts usable now').waitFor();
    expect(await page.getByRole('link', { name: 'Labels to print' }).getAttribute('href')).toBe(
      `/api/wards/${WARD}/labels`,
    );
    expect(faults).toEqual([]);
  });

  it('COORD-2 the coordinator sees what nobody can count on, and gets to the piece in one tap', async () => {
    await iAm(/Hana Weiss/);
    await page.getByRole('link', { name: /For the handling coordinator/ }).click();
    await page.getByText('Nothing to see to').waitFor();
    await enter('miss-item', { item: await idOf('Lift 1') });
    await page.reload();
    await page.getByText('Closes it:').waitFor();
    await shoot(page, 'coordinator-390');
    expect(await screenFaults(page)).toEqual([]);
    await page.getByRole('link', { name: 'Lift 1: Not there when looked for' }).click();
    const dialog = page.getByRole('dialog', { name: 'What is it with Lift 1?' });
    await dialog.getByRole('button', { name: 'Store', exact: true }).click();
    await dialog.waitFor({ state: 'detached' });
    await page.getByText('1 of 1 lifts usable now').waitFor();
    expect(faults).toEqual([]);
  });

  it('LEND-1 the coordinator lends it to another ward until a time; there it is given back, and is here again', async () => {
    const beds = [{ bed: 'b9', label: '9', bay: 'Bay 9' }];
    await sendCommand(
      server,
      'rowan',
      'set-up-ward',
      { name: 'Rowan', zone: 'Europe/Lisbon', beds },
      { by: null },
    );
    const ole = { staff: 'ole', name: 'Ole Brandt', role: 'aide' };
    await sendCommand(server, 'rowan', 'add-staff-member', ole, { by: null });
    await iAm(/Hana Weiss/);
    await page.getByRole('button', { name: /Lift 1/ }).click();
    await page.getByRole('button', { name: 'Lend to another ward' }).click();
    const lend = page.getByRole('button', { name: 'Lend it' });
    await page.getByRole('dialog').getByRole('button', { name: 'Rowan' }).click();
    await page.getByLabel('Back by (optional)').fill('2098-12-31T14:00');
    await shoot(page, 'equipment-lend-390');
    expect(await screenFaults(page)).toEqual([]);
    await lend.click();
    const lent = page.getByRole('region', { name: 'Lent to other wards' });
    await lent.getByText(/lent to Rowan just now, to be back by/).waitFor();
    expect(await page.getByText('lifts usable now').count()).toBe(0);
    await shoot(page, 'equipment-lent-390');
    expect(await screenFaults(page)).toEqual([]);

    const there = await openScreen(browser, PHONE_SIZE);
    await there.page.goto(`${server.url}/wards/rowan/equipment`);
    await there.page.getByText('0 of 1 lifts usable now').waitFor();
    await there.page.getByRole('banner').getByRole('button').first().click();
    await there.page
      .getByRole('button', { name: /Ole Brandt/ })
      .first()
      .click();
    const piece = there.page.getByRole('button', { name: /Lift 1 \(Willow\)/ });
    await piece.getByText(/lent by Willow/).waitFor();
    await piece.click();
    await there.page.getByRole('button', { name: 'Bay 9', exact: true }).click();
    await there.page.getByText('1 of 1 lifts usable now').waitFor();
    await piece.click();
    await there.page.getByText('Belongs to Willow').waitFor();
    await shoot(there.page, 'equipment-borrowed-390');
    expect(await screenFaults(there.page)).toEqual([]);
    await there.page.getByRole('button', { name: 'Given back to Willow' }).click();
    await there.page.getByText('Nothing is on the list yet.').waitFor();
    expect(there.faults).toEqual([]);
    await there.page.context().close();

    await page.reload();
    await page.getByText('0 of 1 lifts usable now').waitFor();
    await page.getByRole('button', { name: /Lift 1/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Store', exact: true }).click();
    await page.getByText('1 of 1 lifts usable now').waitFor();
    expect(await lent.count()).toBe(0);
    expect(faults).toEqual([]);
  });

  it('somebody tells of a near miss in one tap, without a name, and may add why', async () => {
    await page.getByRole('link', { name: 'Tell of a near miss or strain' }).click();
    await page.getByRole('button', { name: 'It nearly went wrong' }).click();
    await page.getByText('Taken down, without a name.').waitFor();
    await page.getByRole('button', { name: 'no room to work' }).click();
    await page.getByRole('button', { name: 'Add this' }).click();
    await page.getByRole('status').filter({ hasText: 'Added.' }).waitFor();
    await page.getByText('Near miss: no room to work').waitFor();
    await page.getByText('no name put to it').waitFor();
    await shoot(page, 'concerns-390');
    expect(await screenFaults(page)).toEqual([]);
    await page.goto(`${server.url}/wards/${WARD}/equipment`);
    expect(faults).toEqual([]);
  });

  it('the list goes out as a table and comes back, each row first shown with what it would do', async () => {
    const going = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Take the list home as a table' }).click();
    const file = await readFile(await (await going).path(), 'utf8');
    expect(file).toContain('Lift 1');
    await page.getByRole('button', { name: 'Fill the list from a table' }).click();
    const more = `${file.trimEnd()}\nSling 1,sling,B,no,227,,,,whole-body,50,100,A,,,,Hook 3\nTrack,ceiling-lift,A,yes,,,,,,,,,,,,Bay 1\n`;
    await page
      .getByLabel('The file')
      .setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(more) });
    const dialog = page.getByRole('dialog');
    await dialog.getByText('track reaches: say which bays the track covers').waitFor();
    await dialog.getByText('as it is').waitFor();
    await shoot(page, 'equipment-table-390');
    expect(await screenFaults(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Take over 1 row' }).click();
    await page.getByRole('button', { name: /Sling 1/ }).waitFor();
    expect(await page.getByRole('button', { name: /Track/ }).count()).toBe(0);
    expect(faults).toEqual([]);
  });
});
