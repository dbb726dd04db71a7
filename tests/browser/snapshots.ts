/** Comparing a screen with the picture that is kept of it. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import type { Browser, Page } from 'playwright-core';
import { SCREENSHOTS } from './support.ts';

const KEPT = new URL('pictures/', import.meta.url).pathname;
const ABOUT = join(KEPT, 'about.json');
const WRITES = process.env['FOOTBOARD_PICTURES'] === 'write';
/** Share of pixels that may differ: with the browser the pictures were taken with, and with another. */
const SAME_BROWSER = 0.005;
const ANOTHER = 0.02;

/** Which browser the pictures are of; noted anew when they are written. */
export function tolerance(browser: Browser): number {
  const version = browser.version();
  if (WRITES) {
    mkdirSync(KEPT, { recursive: true });
    writeFileSync(ABOUT, `${JSON.stringify({ chromium: version }, null, 2)}\n`);
  }
  const about = JSON.parse(readFileSync(ABOUT, 'utf8')) as { chromium: string };
  return about.chromium === version ? SAME_BROWSER : ANOTHER;
}

export interface Compared {
  /** Share of pixels that differ, 0 to 1. */
  readonly differs: number;
  /** What to look at and what to do; empty where nothing is to be done. */
  readonly says: string;
}

/** With FOOTBOARD_PICTURES=write the picture is taken anew instead. */
export async function compare(page: Page, name: string, allowed: number): Promise<Compared> {
  const bytes = await page.screenshot({ animations: 'disabled', caret: 'hide' });
  const path = join(KEPT, `${name}.png`);
  if (WRITES) writeFileSync(path, bytes);
  if (!existsSync(path)) return { differs: 1, says: `No picture ${name} is kept. ${HOW}` };
  return against(readFileSync(path), bytes, name, allowed);
}
const HOW = 'Look at it, and run this test with FOOTBOARD_PICTURES=write to keep it.';

export function against(kept: Buffer, taken: Buffer, name: string, allowed: number): Compared {
  const [before, now] = [PNG.sync.read(kept), PNG.sync.read(taken)];
  const { width, height } = before;
  const leave = (as: string, png: Buffer): void => {
    mkdirSync(SCREENSHOTS, { recursive: true });
    writeFileSync(join(SCREENSHOTS, `${name}.${as}.png`), png);
  };
  if (now.width !== width || now.height !== height) {
    leave('actual', taken);
    return { differs: 1, says: `${name} is ${now.width} x ${now.height}, not ${width} x ${height}. ${HOW}` };
  }
  const diff = new PNG({ width, height });
  const differs = pixelmatch(before.data, now.data, diff.data, width, height) / (width * height);
  if (differs <= allowed) return { differs, says: '' };
  leave('actual', taken);
  leave('diff', PNG.sync.write(diff));
  const share = `${(differs * 100).toFixed(2)} %`;
  return { differs, says: `${name} differs in ${share}: tests/screenshots/${name}.diff.png. ${HOW}` };
}
