import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { missedByGloves } from './gloves.ts';

const root = new URL('../..', import.meta.url).pathname;
export const SCREENSHOTS = join(root, 'tests/screenshots');

export const WALL_SIZE = { width: 1920, height: 1080 };
export const PHONE_SIZE = { width: 390, height: 844 };

export async function openBrowser(more: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...more,
    ],
  });
}

export interface RunningServer {
  readonly url: string;
  readonly port: number;
  readonly folder: string;
  /** What it has printed so far. */
  said(): string;
  /** Ends the program and leaves its folder, to be started again on it. */
  halt(): Promise<void>;
  stop(): Promise<void>;
}

/** Starts the built program as a person would, on a free port and a new folder, and waits until screens can be served. */
export async function startBuilt(
  program: 'server/dist/main.js' | 'demo/dist/main.js' | 'tests/support/open-server.mjs',
  env: Record<string, string> = {},
): Promise<RunningServer> {
  const folder = mkdtempSync(join(tmpdir(), 'footboard-browser-'));
  const port = env['PORT'] ? Number(env['PORT']) : await freePort();
  const child = spawn(process.execPath, [program], {
    cwd: root,
    env: {
      ...process.env,
      PORT: String(port),
      HOST: '127.0.0.1',
      DATA_DIR: join(folder, 'data'),
      DEMO_DATA_DIR: join(folder, 'demo'),
      DATABASE_URL: '',
      REDIS_URL: '',
      FOOTBOARD_LOG: 'warn',
      ...env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  child.stdout.on('data', (text: Buffer) => (said += text));
  child.stderr.on('data', (text: Buffer) => (said += text));
  const url = `http://127.0.0.1:${port}`;
  for (const giveUp = Date.now() + 90_000; ;) {
    const answer = await fetch(`${url}/health/ready`).catch(() => null);
    if (answer?.status === 200) break;
    if (child.exitCode !== null || Date.now() > giveUp)
      throw new Error(`${program} did not get ready:\n${said}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return {
    url,
    port,
    folder,
    said: () => said,
    halt: () => stopped(child),
    async stop() {
      await stopped(child);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function stopped(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGTERM');
  const late = setTimeout(() => child.kill('SIGKILL'), 10_000);
  await gone;
  clearTimeout(late);
}

async function freePort(): Promise<number> {
  const probe = createServer();
  probe.listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const address = probe.address();
  probe.close();
  await once(probe, 'close');
  if (address === null || typeof address === 'string') throw new Error('no free port');
  return address.port;
}

/** A screen of its own (its own storage), which collects what a developer would see in the console. */
export async function openScreen(
  browser: Browser,
  viewport: { width: number; height: number },
): Promise<{ page: Page; context: BrowserContext; faults: string[] }> {
  const context = await browser.newContext({ viewport });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  return { page, context, faults };
}

export async function shoot(page: Page, name: string): Promise<void> {
  mkdirSync(SCREENSHOTS, { recursive: true });
  await page.screenshot({ path: join(SCREENSHOTS, `${name}.png`) });
}

/**
 * What stands in a reader's or a thumb's way on the page as it stands, one line a rule: what axe finds against WCAG 2.2
 * A and AA, the contrast in the other theme too, and of what is used in hand what gloves miss on a phone.
 */
export async function screenFaults(page: Page): Promise<string[]> {
  const found = await axeFinds(page, (axe) =>
    axe.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']),
  );
  const shown = await page.evaluate(() => {
    const { dataset } = document.documentElement;
    const now = dataset['theme'] ?? '';
    dataset['theme'] = now === 'night' ? 'day' : 'night';
    return now;
  });
  const turned = await axeFinds(page, (axe) => axe.withRules(['color-contrast']));
  await page.evaluate((theme) => (document.documentElement.dataset['theme'] = theme), shown);
  const onPhone = (page.viewportSize()?.width ?? WALL_SIZE.width) <= PHONE_SIZE.width;
  const inHand = onPhone && USED_IN_HAND.test(new URL(page.url()).pathname);
  return [
    ...found,
    ...turned.map((fault) => `in the other theme: ${fault}`),
    ...(inHand ? await missedByGloves(page) : []),
  ];
}
const USED_IN_HAND = /\/(bedside|round|equipment|stays)\b/;
async function axeFinds(page: Page, rules: (axe: AxeBuilder) => AxeBuilder): Promise<string[]> {
  const { violations } = await rules(new AxeBuilder({ page })).analyze();
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
  );
}
