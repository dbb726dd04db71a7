/**
 * What hangs on the wall, measured in the browser: heights of capitals against the angle the eye needs,
 * nothing clipped, nothing over anything else, the same places for every bed, states told apart without colour.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAP, NEAR_METRES, capitalMm, farArcmin, pixelsPerMm } from '../../web/board/legible.ts';
import { screenFaults, openBrowser, openScreen, shoot, WALL_SIZE } from './support.ts';
import { longestWords, playWard, type PlayedWard } from './wall-kit.ts';

const PANEL = { inches: 55, metres: 5 };
let browser: Browser;
let ward: PlayedWard;
beforeAll(async () => {
  [browser, ward] = await Promise.all([openBrowser(), playWard()]);
});
afterAll(async () => {
  await browser?.close();
  await ward?.close();
});

type Board = Parameters<PlayedWard['show']>[0];
async function wall(board: Board, size = WALL_SIZE) {
  const told = { peopleOn: 9, lifts: { usable: 2, inUse: 1, unknown: 0, all: 3 }, panel: PANEL };
  ward.show({ ...told, ...board });
  const screen = await openScreen(browser, size);
  await screen.page.goto(`${ward.url}/wards/w1/wall`);
  await screen.page.locator('article.tile').first().waitFor();
  return screen;
}

interface Word {
  readonly tile: number;
  readonly place: string;
  readonly words: string;
  /** Font size, and the ink's box: from the cap line to the baseline, and side to side. */
  readonly size: number;
  readonly box: { left: number; right: number; top: number; bottom: number };
}

/** Every drawn word of every tile with its place, and the tile's own box. */
const measure = (page: Page, cap: number) =>
  page.evaluate((share) => {
    const boxOf = ({ left, right, top, bottom }: DOMRect) => ({ left, right, top, bottom });
    const tiles = [...document.querySelectorAll('article.tile')];
    const words = tiles.flatMap((tile, i) =>
      [...tile.querySelectorAll('.fit')].flatMap((fit) => {
        if (!fit.textContent) return [];
        const range = document.createRange();
        range.selectNodeContents(fit);
        const size = parseFloat(getComputedStyle(fit).fontSize);
        const { left, right, top } = range.getBoundingClientRect();
        // A range is as high as the font's ascent and descent: Archivo's are 0.878 and 0.21 em.
        const baseline = top + 0.878 * size;
        const place = fit.parentElement!.className.split(' ')[0]!;
        const box = { left, right, top: baseline - share * size, bottom: baseline };
        return [{ tile: i, place, words: fit.textContent, size, box }];
      }),
    );
    const shapes = tiles.flatMap((tile, i) =>
      [...tile.querySelectorAll('svg')].map((svg) => ({
        tile: i,
        place: svg.classList[0]!,
        box: boxOf(svg.getBoundingClientRect()),
      })),
    );
    return {
      words,
      shapes,
      tiles: tiles.map((tile) => boxOf(tile.getBoundingClientRect())),
      scrolls: [
        document.documentElement.scrollWidth > innerWidth,
        document.documentElement.scrollHeight > innerHeight,
      ],
      head: [...document.querySelectorAll('.head .fit')].map((fit) => ({
        words: fit.textContent,
        size: parseFloat(getComputedStyle(fit).fontSize),
        box: boxOf(fit.getBoundingClientRect()),
      })),
    };
  }, cap);

const FAR = ['label', 'people', 'aid', 'across'];
const NEAR = ['trust-word', 'under', 'tier', 'goal', 'last-up', 'next'];
const round = (n: number) => Math.round(n * 10) / 10;
const apart = (a: Word['box'], b: Word['box']) =>
  a.right <= b.left + 0.6 || b.right <= a.left + 0.6 || a.bottom <= b.top + 0.6 || b.bottom <= a.top + 0.6;

describe('the font', () => {
  it('has capitals of the share of its size that the wall reckons with', async () => {
    const { page, context } = await wall({ beds: longestWords(8) });
    const share = await page.evaluate(() => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [1_000, 1_200];
      const pen = canvas.getContext('2d', { willReadFrequently: true })!;
      pen.font = `700 1000px 'Archivo Variable'`;
      pen.fillText('H', 0, 1_000);
      const { data } = pen.getImageData(0, 0, 1_000, 1_200);
      const inked = (y: number) =>
        data.subarray(y * 4_000, (y + 1) * 4_000).some((v, i) => i % 4 === 3 && v > 127);
      const rows = Array.from({ length: 1_200 }, (_, y) => y).filter(inked);
      return { high: rows.length, loaded: document.fonts.check("700 20px 'Archivo Variable'") };
    });
    expect(share.loaded).toBe(true);
    expect(share.high / 1_000).toBeCloseTo(CAP, 2);
    await context.close();
  });
});

describe.each(['en', 'de'] as const)('a full wall in %s', (language) => {
  it.each([8, 24, 30, 36])('WALL-4 can be read at 5 m and at 3 m with %i beds', async (count) => {
    const { page, context, faults } = await wall({
      beds: longestWords(count),
      language,
      night: count === 36,
    });
    const found = await measure(page, CAP);
    const perMm = pixelsPerMm(PANEL.inches, WALL_SIZE.width, WALL_SIZE.height);
    const far = capitalMm(PANEL.metres, farArcmin(count)) * perMm;
    const near = capitalMm(NEAR_METRES, 16) * perMm;
    await shoot(page, `wall-${count}-${language}-1920`);

    expect(found.tiles).toHaveLength(count);
    expect(found.scrolls).toEqual([false, false]);
    const low = (least: number, places: readonly string[]) =>
      found.words
        .filter(({ place, size }) => places.includes(place) && size * CAP < least * 0.995)
        .map(({ place, words, size }) => `${place} "${words}" ${round(size * CAP)} of ${round(least)} px`);
    expect(low(far, FAR)).toEqual([]);
    expect(low(near, NEAR)).toEqual([]);
    const shapes = found.shapes.filter(({ place }) =>
      ['trust-shape', 'hold-mark', 'figures'].includes(place),
    );
    expect(shapes.length).toBeGreaterThan(count / 2);
    expect(shapes.filter(({ box }) => box.bottom - box.top < far * 0.99).map(({ place }) => place)).toEqual(
      [],
    );
    const inHead = found.head.filter(({ words }) => /\d/.test(words!) && !/Nov/.test(words!));
    expect(inHead).toHaveLength(5);
    expect(inHead.filter(({ size }) => size * CAP < far * 0.995).map(({ words }) => words)).toEqual([]);

    // Nothing is cut off, nothing lies over anything else.
    const out = found.words.filter(({ tile, box }) => {
      const own = found.tiles[tile]!;
      return box.left < own.left || box.right > own.right || box.top < own.top || box.bottom > own.bottom;
    });
    expect(out.map(({ place, words }) => `${place} "${words}"`)).toEqual([]);
    const over = found.tiles.flatMap((_, tile) => {
      const here = [
        ...found.words.filter((one) => one.tile === tile),
        ...found.shapes.filter((one) => one.tile === tile).map((one) => ({ ...one, words: one.place })),
      ];
      return here.flatMap((a, i) =>
        here.slice(i + 1).flatMap((b) => (apart(a.box, b.box) ? [] : [`${a.words} over ${b.words}`])),
      );
    });
    expect(over).toEqual([]);
    const heads = found.head.flatMap((a, i) =>
      found.head.slice(i + 1).flatMap((b) => (apart(a.box, b.box) ? [] : [`${a.words} over ${b.words}`])),
    );
    expect(heads).toEqual([]);

    // Each place is at the same distance from its tile's corner, on every tile.
    for (const place of ['label', 'people', 'aid', 'tier', 'last-up', 'next', 'trust-shape', 'hold-mark']) {
      const at = [...found.words, ...found.shapes]
        .filter((one) => one.place === place)
        .map(({ tile, box }) => round(box.left - found.tiles[tile]!.left));
      expect(at.length).toBeGreaterThan(0);
      expect(Math.max(...at) - Math.min(...at)).toBeLessThan(1);
    }
    expect(faults).toEqual([]);
    expect(await screenFaults(page)).toEqual([]);
    await context.close();
  });
});

describe('a wall', () => {
  it('WALL-4 is as readable on a panel of 3840 by 2160', async () => {
    const size = { width: 3840, height: 2160 };
    const { page, context } = await wall({ beds: longestWords(36) }, size);
    const far = capitalMm(5, 16) * pixelsPerMm(55, size.width, size.height);
    const { words, scrolls } = await measure(page, CAP);
    const small = words.filter((one) => FAR.includes(one.place) && one.size * CAP < far * 0.995);
    expect(small.map((one) => one.words)).toEqual([]);
    expect(scrolls).toEqual([false, false]);
    await context.close();
  });

  it.each([24, 36])(
    'WALL-4 writes what tells long labels apart as high as promised, with %i beds',
    async (count) => {
      const beds = longestWords(count, (i) => `Nordflügel-${String(i + 1).padStart(2, '0')}`);
      const { page, context } = await wall({ beds });
      const { words, tiles } = await measure(page, CAP);
      const far = capitalMm(5, farArcmin(count)) * pixelsPerMm(55, 1920, 1080);
      const labels = words.filter(({ place }) => place === 'label');
      expect(labels.map((one) => one.words)).toEqual(beds.map(({ label }) => label.slice(-2)));
      expect(labels.filter(({ size }) => size * CAP < far * 0.995)).toEqual([]);
      const heads = words.filter(({ place }) => place === 'label-head');
      expect(new Set(heads.map((one) => one.words))).toEqual(new Set(['Nordflügel-']));
      const trust = words.filter(({ place }) => place === 'trust-word');
      const over = [...labels, ...heads].filter((a) =>
        [...trust, ...heads].some((b) => a !== b && a.tile === b.tile && !apart(a.box, b.box)),
      );
      expect(over.map((one) => one.words)).toEqual([]);
      expect(heads.filter(({ tile, box }) => box.left < tiles[tile]!.left)).toEqual([]);
      // A reader hears the label whole.
      const read = await page.locator('article.tile h3').first().textContent();
      expect(read!.replaceAll(/\s/g, '')).toBe('Nordflügel-01');
      expect(await page.locator('.too-small').count()).toBe(0);
      await shoot(page, `wall-${count}-long-labels-1920`);
      await context.close();
    },
  );

  it('WALL-5 says so where labels differ in more signs than fit', async () => {
    const { page, context } = await wall({ beds: longestWords(36, (i) => `${i + 1} Lavendelhof`) });
    expect(await page.locator('.too-small').innerText()).toMatch(/Bed labels too long to be read from 5 m/);
    await context.close();
  });

  it('draws the dots of a capital on the field of a word that stops', async () => {
    const { page, context } = await wall({ beds: longestWords(24), language: 'de' });
    const stop = page.locator('.stops', { hasText: 'PRÜFEN' }).first();
    const high = await stop.evaluate((field) => {
      const fit = field.querySelector('.fit')!;
      const { fontSize, fontWeight, fontFamily } = getComputedStyle(fit);
      const pen = document.createElement('canvas').getContext('2d')!;
      pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      const range = document.createRange();
      range.selectNodeContents(fit);
      // Archivo's ascent is 0.878 em: from the top of the range to the baseline.
      const baseline = range.getBoundingClientRect().top + 0.878 * parseFloat(fontSize);
      const raised = -parseFloat(/ (-[\d.]+)px /.exec(getComputedStyle(field).boxShadow)![1]!);
      return {
        dots: baseline - pen.measureText('Ü').actualBoundingBoxAscent,
        field: field.getBoundingClientRect().top - raised,
        foot: baseline,
        end: field.getBoundingClientRect().bottom,
      };
    });
    expect(high.dots).toBeGreaterThanOrEqual(high.field);
    expect(high.foot).toBeLessThanOrEqual(high.end);
    await context.close();
  });

  it('held in a hand is written in words that can be read, and scrolls one way alone', async () => {
    const { page, context } = await wall(
      { beds: longestWords(24), language: 'de' },
      { width: 390, height: 844 },
    );
    const found = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      head: document.querySelector('.head')!.getBoundingClientRect().height,
      small: [...document.querySelectorAll<HTMLElement>('.line, .goal .fit, .under .fit, .head .fit')]
        .filter((one) => one.textContent !== '' && parseFloat(getComputedStyle(one).fontSize) < 11)
        .map((one) => one.textContent),
      cut: [...document.querySelectorAll('article.tile')].filter(
        (tile) => tile.scrollHeight > tile.clientHeight + 1,
      ).length,
    }));
    expect(found.wide).toBe(390);
    expect(found.head).toBeLessThan(844 / 4);
    expect(found.small).toEqual([]);
    expect(found.cut).toBe(0);
    await shoot(page, 'wall-24-de-phone');
    await context.close();
  });

  it('WALL-5 too small for its beds says so, with what would fit', async () => {
    const { page, context } = await wall({ beds: longestWords(36), panel: { inches: 32, metres: 5 } });
    const said = await page.locator('.too-small').innerText();
    expect(said).toMatch(
      /Too small for 36 beds: made to be read from 5 m, readable from about 2\.\d m\. A panel of 5\d inches would fit/,
    );
    await shoot(page, 'wall-too-small-1920');
    await context.close();
  });

  it('draws one tile anew for one bed’s change, and marks it', async () => {
    const beds = longestWords(30);
    const { page, context } = await wall({ beds });
    await page.evaluate(() => {
      const seen = new Set<number>();
      const tiles = [...document.querySelectorAll('article.tile')];
      const watch = new MutationObserver((all) => {
        for (const { target } of all) {
          const tile = (target instanceof Element ? target : target.parentElement)?.closest('article.tile');
          if (tile) seen.add(tiles.indexOf(tile));
        }
      });
      watch.observe(document.querySelector('.grid')!, { subtree: true, childList: true, attributes: true, characterData: true }); // prettier-ignore
      Object.assign(window, { redrawn: seen });
    });
    const changed = { ...beds[2]!, stay: { ...beds[2]!.stay!, checkBeforeMoving: true, version: 9 } };
    ward.change(changed);
    await page.locator('article.tile').nth(2).getByText('CHECK', { exact: true }).waitFor();
    const redrawn = await page.evaluate(() => [...(window as unknown as { redrawn: Set<number> }).redrawn]);
    expect(redrawn).toEqual([2]);
    expect(await page.locator('article.tile.changed').count()).toBe(1);
    await shoot(page, 'wall-changed-1920');
    await context.close();
  });

  it('A13 tells people and trust of 30 of 30 beds apart in grey', async () => {
    const { page, context } = await wall({ beds: longestWords(30) });
    await page.evaluate(() => document.documentElement.style.setProperty('filter', 'grayscale(1)'));
    await shoot(page, 'wall-grey-1920');
    // What a reader of shapes and words alone has to go by, without any colour.
    const told = await page.evaluate(() =>
      [...document.querySelectorAll('article.tile')].map((tile) => {
        const text = (of: string) => tile.querySelector(of)?.textContent ?? '';
        const paths = (of: string) =>
          [...tile.querySelectorAll(`${of} path`)].map((path) => path.getAttribute('d')).join(' ');
        return {
          people: text('.people') || paths('.people') || text('.across'),
          trust: text('.trust-word'),
          shape: paths('.trust-shape'),
        };
      }),
    );
    expect(told).toHaveLength(30);
    expect(told.filter(({ people }) => people === '')).toEqual([]);
    const shapeOf = new Map(told.filter(({ trust }) => trust).map(({ trust, shape }) => [trust, shape]));
    expect([...shapeOf.keys()].toSorted()).toEqual(['current', 'not known', 're-check']);
    expect(new Set(shapeOf.values()).size).toBe(3);
    expect(told.filter(({ trust, shape }) => trust && shape !== shapeOf.get(trust))).toEqual([]);
    await context.close();
  });

  it('keeps the size of its tiles when it says LAST KNOWN', async () => {
    const own = await playWard();
    own.show({ beds: longestWords(36), panel: PANEL });
    const { page, context } = await openScreen(browser, WALL_SIZE);
    await page.goto(`${own.url}/wards/w1/wall`);
    await page.locator('article.tile').first().waitFor();
    const before = (await measure(page, CAP)).tiles[0]!;
    own.fallSilent();
    await page.getByText(/LAST KNOWN \d\d:\d\d/).waitFor({ timeout: 16_000 });
    const { tiles, words } = await measure(page, CAP);
    expect(tiles[0]).toEqual(before);
    expect(words.filter(({ words: said }) => said === 'current')).toEqual([]);
    // The banner is whole: what it says stands inside it, and it inside the head.
    const banner = await page.evaluate(() => {
      const box = (of: string) => document.querySelector(of)!.getBoundingClientRect();
      const [head, whole] = [box('.head'), box('.banner')];
      return ['.banner .word', '.banner .why-old'].map((of) => {
        const { left, right, top, bottom } = box(of);
        return left >= whole.left && right <= whole.right && top >= head.top && bottom <= head.bottom + 0.5;
      });
    });
    expect(banner).toEqual([true, true]);
    await shoot(page, 'wall-36-last-known-1920');
    await context.close();
    await own.close();
  });
});
