// Does a wall grow as it hangs? A paired wall of 36 beds is fed 24 hours of patches by a clock that runs
// fast: one bed each minute, the whole ward each quarter of an hour. What its heap holds after a forced
// collection is looked at every other hour. Against itself: hour 24 over hour 2.
import { dressed, moved, openChromium, openWall, pause, wallKit } from './support/wall.mjs';

const BEDS = 36;
const MINUTE = 60_000;

/**
 * The least of several collections over some seconds without news: a message that is just being worked on, or a
 * board on its way to the device's own store, is no growth.
 */
async function held(cdp) {
  let heap = Infinity;
  for (let look = 0; look < 9; look++) {
    await pause(400);
    await cdp.send('HeapProfiler.collectGarbage');
    heap = Math.min(heap, (await cdp.send('Runtime.getHeapUsage')).usedSize);
  }
  const { metrics } = await cdp.send('Performance.getMetrics');
  const of = (name) => metrics.find((one) => one.name === name)?.value;
  return { heap, nodes: of('Nodes'), listeners: of('JSEventListeners') };
}

export async function run({ rate = 600, hours = 24 } = {}) {
  const { playWard, longestWords } = await wallKit();
  const [browser, ward] = [await openChromium(), await playWard({ rate, paired: true })];
  try {
    const beds = longestWords(BEDS);
    const { page } = await openWall(browser, ward, beds);
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('HeapProfiler.enable');
    await cdp.send('Performance.enable');
    const from = ward.clock();
    const rows = [];
    let sent = 0;
    let changes = 0;
    for (let minute = 0; minute <= hours * 60; minute++) {
      while (ward.clock() < from + minute * MINUTE) await pause(5);
      const by = ward.clock() - from;
      const change = (i) => moved(dressed(beds[i], beds[(i + minute) % BEDS], 5 + minute), by);
      const which = minute % 15 === 0 ? [...beds.keys()] : [minute % BEDS];
      ward.change(...which.map(change));
      sent += 1;
      changes += which.length;
      if (minute > 0 && minute % 120 === 0) {
        const { heap, nodes, listeners } = await held(cdp);
        rows.push({
          'hour of the ward': minute / 60,
          'patches so far': sent,
          'rows changed': changes,
          'heap MiB': heap / 2 ** 20,
          'nodes of the page': nodes,
          listeners,
        });
      }
    }
    const live = await page.evaluate(() => document.querySelector('.wall.old') === null);
    const [first, last] = [rows[0], rows.at(-1)];
    const grown = last['heap MiB'] / first['heap MiB'];
    const nodes = last['nodes of the page'] / first['nodes of the page'];
    return {
      rows,
      ratios: [
        {
          ratio: 'heap at hour 24 : at hour 2',
          value: grown,
          target: '0.9 to 1.1, and live',
          holds: live && Math.abs(grown - 1) <= 0.1,
        },
        {
          ratio: 'nodes at hour 24 : at hour 2',
          value: nodes,
          target: '0.9 to 1.1',
          holds: Math.abs(nodes - 1) <= 0.1,
        },
      ],
    };
  } finally {
    await browser.close();
    await ward.close();
  }
}
