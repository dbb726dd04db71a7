import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { create } from 'qrcode';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { confirmPerson, openBedside } from './bedside-support.ts';
import { missedByGloves } from './gloves.ts';
import { screenFaults, openBrowser, shoot, startBuilt, type RunningServer } from './support.ts';

/** One still picture of a code, as the camera's film: YUV4MPEG2, which Chromium plays as a fake camera. */
function filmOf(text: string): Buffer {
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules;
  const [width, height, module] = [640, 480, Math.floor(400 / size)];
  const from = { x: Math.floor((width - size * module) / 2), y: Math.floor((height - size * module) / 2) };
  const luma = Buffer.alloc(width * height, 235);
  for (let y = 0; y < size * module; y += 1) {
    for (let x = 0; x < size * module; x += 1) {
      const dark = data[Math.floor(y / module) * size + Math.floor(x / module)];
      if (dark) luma[(from.y + y) * width + from.x + x] = 16;
    }
  }
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, Buffer.alloc((width * height) / 2, 128)]);
  return Buffer.concat([
    Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`),
    frame,
    frame,
  ]);
}

/** On the invented wristband. */
const RECORD_NUMBER = 'DEMO-004';
let server: RunningServer;
let browser: Browser;
let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'footboard-film-'));
  const film = join(folder, 'wristband.y4m');
  writeFileSync(film, filmOf(RECORD_NUMBER));
  server = await startBuilt('demo/dist/main.js', { DEMO_SPEED: '1' });
  browser = await openBrowser([
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-video-capture=${film}`,
  ]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function whole(page: Page, name: string) {
  await shoot(page, name);
  expect({ name, gloves: await missedByGloves(page), axe: await screenFaults(page) }).toEqual({
    name,
    gloves: [],
    axe: [],
  });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
}

describe('entering at the bedside with one hand', () => {
  it('takes three taps for a session once the person is confirmed, and can be undone before it is sent', async () => {
    const { page, faults } = await openBedside(browser, server.url, 'lf-a4', 'Nuri Halvard');
    const sent: string[] = [];
    page.on('request', (one) => one.url().includes('/commands/') && sent.push(one.url()));
    await whole(page, 'bedside-page-390');
    await page.getByRole('button', { name: 'Confirm the person' }).click();
    await whole(page, 'bedside-confirm-390');
    await confirmPerson(page);
    await page.getByText('By two identifiers.').waitFor();

    let taps = 0;
    const tap = async (name: string) => {
      taps += 1;
      await page.getByRole('button', { name, exact: true }).click();
    };
    await tap('Session');
    await page.getByText('What was done?').waitFor();
    await whole(page, 'bedside-session-sheet-390');
    await tap('Stand');
    await tap('Done');
    expect(taps).toBe(3);
    await page.getByText(/^Session, done: recorded in \d s$/).waitFor();
    await whole(page, 'bedside-undo-390');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('What was done?').waitFor();
    expect(sent).toEqual([]);
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByRole('button', { name: 'Send now' }).click();
    await page.getByText('Recorded: Session, done.').waitFor();
    expect(sent).toHaveLength(1);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('stops a check at once where a part is not met, and its timer runs on over a reload', async () => {
    const { page, faults } = await openBedside(browser, server.url, 'lf-a6', 'Nuri Halvard');
    const commands: string[] = [];
    page.on('request', (one) => one.url().includes('/commands/') && commands.push(one.url()));
    const toUpright = async () => {
      await page.getByRole('button', { name: 'Check', exact: true }).click();
      await page.getByRole('button', { name: /^Full under 4 minutes/ }).click();
      await page.getByRole('button', { name: 'All the rest met' }).click();
      await page.getByRole('button', { name: 'Stage met, go on' }).click();
      await page.getByText('Stage 2 of 6').waitFor();
    };
    await page.getByRole('button', { name: 'Confirm the person' }).click();
    await confirmPerson(page);
    await toUpright();
    await page.getByRole('button', { name: '3 min', exact: true }).click();
    await page.getByRole('timer').waitFor();
    await whole(page, 'bedside-upright-390');
    await page.reload();
    await page.getByRole('button', { name: 'Confirm the person' }).click();
    await confirmPerson(page);
    await toUpright();
    expect(await page.getByRole('timer').innerText()).toMatch(/^[012]:\d\d$/);

    await page
      .getByRole('group', { name: /back raised for 3 minutes/ })
      .getByRole('button', { name: 'Not met', exact: true })
      .click();
    await page.getByRole('heading', { name: 'Make safe first' }).waitFor();
    expect(await page.getByText('Symptom during this stage').count()).toBe(0);
    await whole(page, 'bedside-make-safe-390');
    await page.getByRole('button', { name: 'The person is safe, go on' }).click();
    await page.getByRole('button', { name: 'No symptom' }).click();
    await page.getByRole('button', { name: 'Go on to record' }).click();
    // BEDSIDE-1: every task by day and by night, before anything is sent.
    const plan = page.getByRole('region', { name: 'The plan that would follow' });
    await plan.getByRole('heading', { name: 'Bed to chair' }).waitFor();
    expect(await plan.getByRole('heading', { level: 4 }).count()).toBeGreaterThan(5);
    expect(await plan.getByText('At night').count()).toBe(
      await plan.getByRole('heading', { level: 4 }).count(),
    );
    await whole(page, 'bedside-plan-preview-390');
    expect(commands).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('knows the wristband before the camera, and stops at somebody else’s', async () => {
    const { page, faults } = await openBedside(browser, server.url, 'lf-a4', 'Nuri Halvard');
    await page.getByRole('button', { name: 'Confirm the person' }).click();
    await page.getByRole('button', { name: 'Scan wristband or bed code' }).click();
    await page.getByText('By the wristband.').waitFor({ timeout: 20_000 });

    await page.goto(`${server.url}/wards/larkfield/bedside/lf-a6`);
    await page.getByRole('button', { name: 'Session', exact: true }).click();
    await page.getByRole('button', { name: 'Scan wristband or bed code' }).click();
    await page.getByText(/This wristband says record DEMO-004\. The page is for .* Do not go on/).waitFor();
    await whole(page, 'bedside-other-wristband-390');
    expect(await page.getByText('What was done?').count()).toBe(0);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
