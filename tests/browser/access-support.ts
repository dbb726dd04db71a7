/** What browser tests of sign-in ask of the server beside the screens: the way there, not what is tested. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { screenFaults, shoot } from './support.ts';

export const WARD = 'alder';
export const passwordOf = (signInName: string): string => `the ${signInName} walks past nine lamps`;

/** Asks the server as the page's own script would: its cookies, its origin. */
export const ask = (
  page: Page,
  method: string,
  path: string,
  body?: object,
  headers: Record<string, string> = {},
): Promise<Record<string, unknown>> =>
  page.evaluate(
    async (one) => {
      const answer = await fetch(one.path, {
        method: one.method,
        headers: { 'content-type': 'application/json', ...one.headers },
        ...(one.body ? { body: JSON.stringify(one.body) } : {}),
      });
      const text = await answer.text();
      if (!answer.ok) throw new Error(`${one.path}: ${text}`);
      return (text === '' ? {} : JSON.parse(text)) as Record<string, unknown>;
    },
    { method, path, body, headers },
  );

/** A command that must be taken. */
export function enter(
  page: Page,
  name: string,
  data: object,
  { at = Date.now(), headers = {} }: { at?: number; headers?: Record<string, string> } = {},
): Promise<Record<string, unknown>> {
  const envelope = {
    commandId: crypto.randomUUID(),
    occurred: { at: new Date(at).toISOString() },
    entered: { at: new Date().toISOString(), offsetMinutes: 0 },
    source: { kind: 'person' },
    expect: 'latest',
  };
  return ask(page, 'POST', `/api/wards/${WARD}/commands/${name}`, { ...envelope, data }, headers);
}

/** Uses a one-time link; the page's browser is signed in from then on. */
export async function accept(page: Page, path: string, signInName: string, code?: string): Promise<void> {
  await ask(page, 'POST', '/api/invitations/accept', {
    token: path.split('#')[1],
    name: signInName,
    signInName,
    password: passwordOf(signInName),
    ...(code ? { code } : {}),
  });
}

/** The first administrator by the printed link, ward Alder with two beds, and its staff list. */
export async function setUpAlder(
  page: Page,
  server: { readonly url: string; said(): string },
  staff: Readonly<Record<string, readonly [name: string, role: string]>>,
): Promise<void> {
  await page.goto(server.url);
  await accept(page, /\S+\/join#\S+/.exec(server.said())![0], 'admin');
  const beds = ['A1', 'A2'].map((label) => ({ bed: `bed-${label}`, label, bay: 'Bay A' }));
  await enter(page, 'set-up-ward', { name: 'Alder', zone: 'Europe/Lisbon', beds });
  for (const [id, [name, role]] of Object.entries(staff)) {
    await enter(page, 'add-staff-member', { staff: id, name, role });
  }
}

export async function whole(page: Page, name: string): Promise<void> {
  await shoot(page, name);
  expect(await screenFaults(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
}
