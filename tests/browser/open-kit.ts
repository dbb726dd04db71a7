/** What browser tests do on a server with sign-in off, on the way to what they are about. */
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { PHONE_SIZE, type RunningServer } from './support.ts';

/** A command by the API, as another screen would send it; one that is not taken ends the test with the server's words. */
export async function sendCommand(
  server: Pick<RunningServer, 'url'>,
  ward: string,
  name: string,
  data: object,
  { by, at = Date.now(), over = {} }: { by: string | null; at?: number; over?: object },
): Promise<{ events: { id: string; type: string }[] }> {
  const answer = await fetch(`${server.url}/api/wards/${ward}/commands/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(by ? { 'x-footboard-staff': by } : {}) },
    body: JSON.stringify({
      commandId: crypto.randomUUID(),
      occurred: { at: new Date(at).toISOString() },
      entered: { at: new Date().toISOString(), offsetMinutes: 0 },
      source: { kind: 'person' },
      expect: 'latest',
      data,
      ...over,
    }),
  });
  if (!answer.ok) throw new Error(`${name}: ${await answer.text()}`);
  return (await answer.json()) as { events: { id: string; type: string }[] };
}

/** Says whose hands are on this device; nobody was named before. */
export async function sayWho(page: Page, who: RegExp): Promise<void> {
  await page.getByRole('button', { name: 'Who are you?' }).click();
  await page.getByRole('button', { name: who }).first().click();
}

/** A phone that keeps what is on it over being switched off: its storage is the folder `profile`. */
export const switchedOn = (profile: string): Promise<BrowserContext> =>
  chromium.launchPersistentContext(profile, {
    executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
    viewport: PHONE_SIZE,
  });
