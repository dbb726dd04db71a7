/**
 * The codes on the sheet of labels scan: the pictures are taken out of the real PDF, drawn in Chromium as a
 * phone's camera sees them, and read with the library that the bedside scanner falls back to.
 */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sendCommand } from './open-kit.ts';
import { openBrowser, openScreen, PHONE_SIZE, startBuilt, type RunningServer } from './support.ts';

const WARD = 'willow';
const LABELS = ['Lift 1', 'Sling ä 2', 'Frame 3'] as const;
let server: RunningServer;
let browser: Browser;
let reader: Page;

interface Code {
  readonly width: number;
  readonly height: number;
  /** One byte a pixel. */
  readonly grey: readonly number[];
}

/** The codes of a PDF, in the order of its pages: pictures in shades or colours of 8 bits, deflated. */
function picturesIn(pdf: Buffer): Code[] {
  const text = pdf.toString('latin1');
  return [...text.matchAll(/<<([^<>]*\/Subtype \/Image[^<>]*)>>\s*stream\r?\n/g)].flatMap((found) => {
    const said = (name: string) => Number(new RegExp(`/${name} (\\d+)`).exec(found[1]!)?.[1] ?? 0);
    const [width, height] = [said('Width'), said('Height')];
    const from = found.index + found[0].length;
    const bytes = inflateSync(pdf.subarray(from, from + said('Length')));
    const channels = bytes.length / (width * height);
    if (!Number.isInteger(channels)) throw new Error('a picture that this test cannot read');
    // What says how much each pixel covers is a picture too: all of it covers.
    if (bytes.every((byte) => byte === 255)) return [];
    return [{ width, height, grey: Array.from({ length: width * height }, (_, i) => bytes[i * channels]!) }];
  });
}

/** As a phone sees it: the label on grey, a little turned, no larger than `side` pixels, in dim light. */
async function scan(code: Code, side: number, turned: number): Promise<string[]> {
  return reader.evaluate(
    async ({ width, height, grey, side: to, turned: by }) => {
      const flat = new OffscreenCanvas(width, height);
      const pixels = new ImageData(width, height);
      grey.forEach((shade, i) => pixels.data.set([shade, shade, shade, 255], i * 4));
      flat.getContext('2d')!.putImageData(pixels, 0, 0);
      const view = new OffscreenCanvas(to * 2, to * 2);
      const draw = view.getContext('2d')!;
      draw.fillStyle = '#8a8a86';
      draw.fillRect(0, 0, to * 2, to * 2);
      draw.translate(to, to);
      draw.rotate((by * Math.PI) / 180);
      draw.fillStyle = '#fff';
      draw.fillRect(-to * 0.6, -to * 0.6, to * 1.2, to * 1.2);
      draw.drawImage(flat, -to / 2, -to / 2, to, to);
      draw.fillStyle = 'rgb(40 36 20 / 35%)';
      draw.fillRect(-to * 2, -to * 2, to * 4, to * 4);
      interface Api {
        BarcodeDetector: new (o: object) => { detect(of: ImageData): Promise<{ rawValue: string }[]> };
      }
      const { BarcodeDetector } = (globalThis as unknown as { BarcodeDetectionAPI: Api }).BarcodeDetectionAPI;
      const found = await new BarcodeDetector({ formats: ['qr_code'] }).detect(
        draw.getImageData(0, 0, to * 2, to * 2),
      );
      return found.map(({ rawValue }) => rawValue);
    },
    { ...code, side, turned },
  );
}

beforeAll(async () => {
  server = await startBuilt('tests/support/open-server.mjs');
  browser = await openBrowser();
  const enter = (name: string, data: object, by: string | null) =>
    sendCommand(server, WARD, name, data, { by });
  const beds = [{ bed: 'b1', label: '1', bay: 'Bay 1' }];
  await enter('set-up-ward', { name: 'Willow', zone: 'Europe/Lisbon', beds }, null);
  await enter('add-staff-member', { staff: 'hana', name: 'Hana Weiss', role: 'handling-coordinator' }, null);
  for (const [i, label] of LABELS.entries())
    await enter(
      'add-item',
      { item: `piece-${i}`, is: { label, kind: 'walking-aid', model: 'A', home: 'Store' } },
      'hana',
    );
  ({ page: reader } = await openScreen(browser, PHONE_SIZE));
  // Of the version that the screens load: the ponyfill's own WebAssembly.
  const ponyfill = createRequire(import.meta.url).resolve('barcode-detector/ponyfill');
  const wasm = createRequire(ponyfill).resolve('zxing-wasm/reader/zxing_reader.wasm');
  await reader.addScriptTag({ path: ponyfill.replace(/dist\/\w+\/ponyfill/, 'dist/iife/ponyfill') });
  await reader.evaluate(
    (base64) => {
      const wasmBinary = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0)).buffer;
      interface Api {
        prepareZXingModule(o: object): void;
      }
      (globalThis as unknown as { BarcodeDetectionAPI: Api }).BarcodeDetectionAPI.prepareZXingModule({
        overrides: { wasmBinary },
      });
    },
    (await readFile(wasm)).toString('base64'),
  );
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe('LABEL-1 the sheet of labels', () => {
  it('has a code for each piece that scans, turned and in dim light, and opens that piece', async () => {
    const answer = await fetch(`${server.url}/api/wards/${WARD}/labels`);
    const codes = picturesIn(Buffer.from(await answer.arrayBuffer()));
    expect(codes).toHaveLength(LABELS.length);
    const { page, faults } = await openScreen(browser, PHONE_SIZE);
    for (const [i, label] of LABELS.entries()) {
      const address = `${server.url}/wards/${WARD}/equipment/piece-${i}`;
      expect(await scan(codes[i]!, 240, 0)).toEqual([address]);
      expect(await scan(codes[i]!, 150, 17)).toEqual([address]);
      const [scanned] = await scan(codes[i]!, 240, -8);
      await page.goto(scanned!);
      await page.getByRole('dialog', { name: `What is it with ${label}?` }).waitFor();
    }
    expect(faults).toEqual([]);
  });

  it('is not read where there is no code: the reading itself can fail', async () => {
    const blank = { width: 40, height: 40, grey: Array.from({ length: 1_600 }, () => 200) };
    expect(await scan(blank, 240, 0)).toEqual([]);
  });
});
