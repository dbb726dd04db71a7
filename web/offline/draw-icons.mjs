/**
 * Draws web/public/mark.svg as the PNG files that the manifest names. Run after the mark has changed:
 * `node web/offline/draw-icons.mjs`. Needs Chromium, as the browser tests do.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from 'playwright-core';

const open = new URL('../public/', import.meta.url);
const mark = readFileSync(new URL('mark.svg', open), 'utf8');
/** A launcher may cut the outer tenth away: there the mark keeps clear of it and the ground goes to the edge. */
const whole = mark.replace('rx="4"', '').replace('<path ', '<path transform="translate(5 5) scale(0.6875)" ');

const browser = await chromium.launch({
  executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
for (const [name, svg, size] of [
  ['mark-192', mark, 192],
  ['mark-512', mark, 512],
  ['mark-whole-512', whole, 512],
]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    svg.replace('<svg ', `<svg style="position:fixed;inset:0" width="${size}" height="${size}" `),
  );
  writeFileSync(new URL(`${name}.png`, open), await page.screenshot({ omitBackground: true }));
}
await browser.close();
