/** What browser tests do at the bedside before what they are about: open a bed, say who they are, confirm the person. */
import type { Browser, Page } from 'playwright-core';
import { sayWho } from './open-kit.ts';
import { openScreen, PHONE_SIZE } from './support.ts';

export const LARKFIELD = 'larkfield';

/** Where a sheet asks who is in front of you: one tap for each of the two identifiers. */
export async function confirmPerson(page: Page): Promise<void> {
  const asked = page.getByRole('region', { name: 'Who is in front of you?' });
  await asked.waitFor();
  await asked.getByRole('button', { name: /name matches/i }).click();
  await asked.locator('.fact').nth(1).click();
  await asked.waitFor({ state: 'detached' });
}

/** The bedside page of a bed of the demo, on a phone, under a name of its staff. */
export async function openBedside(browser: Browser, url: string, bed: string, who: string) {
  const screen = await openScreen(browser, PHONE_SIZE);
  const { page } = screen;
  await page.goto(`${url}/wards/${LARKFIELD}/bedside/${bed}`);
  await sayWho(page, new RegExp(who));
  await page.getByRole('button', { name: 'Session', exact: true }).waitFor();
  return screen;
}
