// A wall before a played ward: the same invented ward as the tests of the wall in the browser.
import { chromium } from 'playwright-core';
import { runnerImport } from 'vite';

const root = new URL('../..', import.meta.url).pathname;
const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The kit is TypeScript, and the least Node that runs the bench reads none. */
export async function wallKit() {
  const { module } = await runnerImport('./tests/browser/wall-kit.ts', { root, logLevel: 'error' });
  return module;
}

export const openChromium = () =>
  chromium.launch({ executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium', args: ARGS });

/** A panel of 55 inches read from 5 m, with every bed drawn. */
export async function openWall(browser, ward, beds) {
  ward.show({
    beds,
    panel: { inches: 55, metres: 5 },
    peopleOn: 9,
    lifts: { usable: 2, inUse: 1, unknown: 0, all: 3 },
  });
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  const page = await context.newPage();
  page.on('pageerror', (error) => {
    throw error;
  });
  await page.goto(`${ward.url}/wards/w1/wall`);
  await page.waitForFunction(
    (count) => document.querySelectorAll('article.tile').length === count,
    beds.length,
  );
  return { page, context };
}

/** One bed's row as another bed has it: what a wall draws changes, the bed and its stay do not. */
export const dressed = (bed, as, version) => ({
  ...as,
  bed: bed.bed,
  label: bed.label,
  stay: as.stay && { ...as.stay, stay: bed.stay?.stay ?? `of-${bed.bed}`, version },
});

/** The same with every instant moved on by so many milliseconds. */
export function moved(value, by) {
  if (typeof value === 'number') return value > 1e12 ? value + by : value;
  if (Array.isArray(value)) return value.map((one) => moved(one, by));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, moved(part, by)]));
}

export const pause = (ms) => new Promise((done) => setTimeout(done, ms));
