// Scripting of a patch on a painted wall of 36 beds, from its message's arrival to the frame it is drawn in, as the
// browser's own trace has it: one bed, and the whole ward at once. Against the plainest way to the same picture, in the
// same page and run: the same message read as JSON, and a copy of the same tiles with every word and style written anew.
import { packRows } from '@footboard/shared/wire/pack';
import { dressed, openChromium, openWall, pause, wallKit } from './support/wall.mjs';
import { median, percentile } from './support/table.mjs';

const BEDS = 36;
const CATEGORIES = ['-*', 'devtools.timeline', 'v8', 'blink.user_timing'];
/** What the browser's own tools count as scripting. */
const SCRIPT = new Set([
  'EvaluateScript', 'EventDispatch', 'FireAnimationFrame', 'FunctionCall', 'MajorGC', 'MinorGC', 'RunMicrotasks',
  'TimerFire', 'v8.callFunction',
]); // prettier-ignore
const DRAWING = new Set(['Layerize', 'Layout', 'Paint', 'PrePaint', 'UpdateLayoutTree']);

/**
 * Milliseconds that events of these names took on their thread; what runs inside another counts once.
 * The thread's own time: on a busy machine the rest is other programs' work.
 */
function taken(events, names) {
  let sum = 0;
  let until = 0;
  for (const { name, ph, ts, dur, tdur } of events) {
    if (ph !== 'X' || !names.has(name) || ts < until) continue;
    sum += tdur ?? dur;
    until = ts + dur;
  }
  return sum / 1_000;
}

/** By mark, what each of its messages set off on the page's main thread: from the longest script after it until the next mark. */
function passes(trace, names) {
  const marks = trace
    .filter(({ name }) => names.includes(name) || name === 'end')
    .toSorted((a, b) => a.ts - b.ts);
  const own = trace
    .filter(({ pid, tid }) => pid === marks[0].pid && tid === marks[0].tid)
    .toSorted((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  const found = new Map(names.map((name) => [name, []]));
  for (const [i, begin] of marks.slice(0, -1).entries()) {
    const within = own.filter(({ ts }) => ts > begin.ts && ts < marks[i + 1].ts);
    const scripts = within.filter(({ ph, name }) => ph === 'X' && SCRIPT.has(name));
    const longest = scripts.reduce((a, b) => ((b.tdur ?? b.dur) > (a.tdur ?? a.dur) ? b : a));
    const all = within.filter(({ ts }) => ts >= longest.ts);
    found.get(begin.name).push({ script: taken(all, SCRIPT), drawing: taken(all, DRAWING) });
  }
  return found;
}

/** Runs in the page: keeps a copy of the tiles aside, and makes it anew from a message. */
function plain() {
  const grid = document.querySelector('.grid');
  const aside = grid.cloneNode(true);
  aside.style.cssText = 'position: fixed; inset: 0; z-index: -1';
  document.body.append(aside);
  window.plainly = (text) =>
    setTimeout(() => {
      const { beds } = JSON.parse(text);
      for (const [i] of beds.entries()) {
        const tile = grid.children[i].cloneNode(true);
        for (const fit of tile.querySelectorAll('.fit')) {
          fit.textContent = `${fit.textContent} `;
          fit.style.fontSize = `${(parseFloat(fit.style.fontSize) + 0.01).toFixed(2)}px`;
        }
        aside.children[i].replaceWith(tile);
      }
    });
}

/** Runs in the page: `drawn` is kept when a frame with a change of the tiles has been drawn. */
function watchFor(mark) {
  performance.mark(mark);
  window.drawn = new Promise((done) => {
    const seen = () => requestAnimationFrame(() => requestAnimationFrame(done));
    const watch = new MutationObserver(() => {
      watch.disconnect();
      seen();
    });
    for (const grid of document.querySelectorAll('.grid'))
      watch.observe(grid, { subtree: true, childList: true, attributes: true, characterData: true });
  });
}

export async function run({ rounds = 40, warm = 10 } = {}) {
  const { playWard, longestWords } = await wallKit();
  const [browser, ward] = [await openChromium(), await playWard()];
  try {
    const beds = longestWords(BEDS);
    const { page } = await openWall(browser, ward, beds);
    await page.evaluate(plain);
    let n = 0;
    const rowsOf = (which) => which.map((i) => dressed(beds[i], beds[(i + n) % BEDS], 5 + n));
    const pass = async (mark, which, ours) => {
      n += 1;
      const rows = rowsOf(which);
      await page.evaluate(watchFor, mark);
      if (ours) ward.change(...rows);
      else {
        const text = JSON.stringify(packRows({ beds: rows }));
        await page.evaluate((message) => window.plainly(message), text);
      }
      await page.evaluate(() => window.drawn);
      await pause(20);
    };
    const all = [...beds.keys()];
    for (let round = 0; round < rounds + warm; round++) {
      if (round === warm) await browser.startTracing(page, { categories: CATEGORIES });
      const one = [(round * 7) % BEDS];
      await pass('one bed', one, true);
      await pass('one bed, plainly', one, false);
      await pass('whole ward', all, true);
      await pass('whole ward, plainly', all, false);
    }
    await page.evaluate(() => void performance.mark('end'));
    const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
    return summary(passes(traceEvents, ['one bed', 'one bed, plainly', 'whole ward', 'whole ward, plainly']));
  } finally {
    await browser.close();
    await ward.close();
  }
}

function summary(found) {
  const script = (name) => found.get(name).map((one) => one.script);
  const rows = [...found].map(([name, all]) => ({
    case: name,
    'scripting p50 ms': median(all.map((one) => one.script)),
    'scripting p90 ms': percentile(script(name), 0.9),
    'style, layout, paint p50 ms': median(all.map((one) => one.drawing)),
    messages: all.length,
  }));
  const aim = (name, most) => {
    const value = median(script(name));
    return { ratio: `${name}: scripting, ms`, value, target: `< ${most}`, holds: value < most };
  };
  const over = (name) => ({
    ratio: `${name} : plainly`,
    value: median(script(name)) / median(script(`${name}, plainly`)),
    target: 'no target',
  });
  return { rows, ratios: [aim('one bed', 16), aim('whole ward', 50), over('one bed'), over('whole ward')] };
}
