// Building a board again from every event of its ward, against merely reading those rows in pages.
import { fork } from 'node:child_process';
import { openLog } from '@footboard/server/log/open-log';
import { openBoards } from '@footboard/server/projecting/open-boards';
import { PAGE, noTimes } from '@footboard/server/projecting/replay';
import { systemClock } from '@footboard/server/platform/clock';
import { benchDatabase } from './append.mjs';
import { median } from './support/table.mjs';
import { fillWard } from './support/ward-of-events.mjs';

const WARD = 'bench';
const READ = `select ward, position, stream, version, id, type, schema_version, payload, occurred, precision,
    entered, entered_offset, recorded, author_staff, author_role, source
  from event where ward = $1 and position > $2 order by position limit $3`;

/** The rows as the driver gives them: no event is made of them, no payload parsed. */
async function merelyRead(database) {
  let position = 0;
  for (;;) {
    const rows = await database.query(READ, [WARD, position, PAGE]);
    if (rows.length > 0) position = rows.at(-1).position;
    if (rows.length < PAGE) return position;
  }
}

/** In a process of its own: what is still held after a collection, page after page, at its most. */
const memoryAt = (url, upTo) =>
  new Promise((resolve, reject) => {
    const child = fork(new URL('./support/replay-memory.mjs', import.meta.url), [url, WARD, String(upTo)], {
      execArgv: ['--expose-gc'],
    });
    let answer = null;
    child.on('message', (message) => (answer = message));
    child.on('exit', (code) =>
      answer ? resolve(answer) : reject(new Error(`the replay ended with ${code}`)),
    );
  });

const timed = async (work) => {
  const started = performance.now();
  await work();
  return performance.now() - started;
};
const partsOf = (times) =>
  [
    ['waiting for rows, making events', 'read'],
    ['fold', 'fold'],
    ['rules', 'rules'],
    ['write', 'write'],
  ].map(([what, key]) => ({ case: `- ${what}`, seconds: median(times.map((one) => one[key])) / 1000 }));

export async function run({ count = 1_000_000, passes = 5 } = {}) {
  const bench = await benchDatabase();
  const { database } = bench;
  try {
    const head = await fillWard(database, WARD, count);
    const boards = openBoards({ log: openLog(database), database, clock: systemClock });
    await boards.start();
    await merelyRead(database);
    const read = [];
    const board = [];
    const all = [];
    const boardParts = [];
    const allParts = [];
    for (let pass = 0; pass < passes; pass++) {
      const cases = [
        async () => read.push(await timed(() => merelyRead(database))),
        async () => {
          const times = noTimes();
          board.push(await timed(() => boards.rebuild(WARD, { totals: 'keep', times })));
          boardParts.push(times);
        },
        async () => {
          const times = noTimes();
          all.push(await timed(() => boards.rebuild(WARD, { totals: 'build', times })));
          allParts.push(times);
        },
      ];
      for (let n = 0; n < cases.length; n++) await cases[(n + pass) % cases.length]();
    }
    await boards.stop();
    const few = await memoryAt(bench.url, Math.round(head / 5));
    const whole = await memoryAt(bench.url, head);

    const perSecond = (ms) => Math.round((head * 1000) / ms);
    const rateOf = (what, runs) => ({
      case: what,
      'events/s': perSecond(median(runs)),
      min: perSecond(Math.max(...runs)),
      max: perSecond(Math.min(...runs)),
      seconds: median(runs) / 1000,
    });
    const ratioOf = (runs) => median(runs.map((ms, pass) => read[pass] / ms));
    const heap = whole.heapMiB / few.heapMiB;
    return {
      rows: [
        rateOf(`reading ${head} rows in pages of ${PAGE}`, read),
        rateOf('rebuild of the board', board),
        ...partsOf(boardParts),
        rateOf('rebuild of the board and every ward day total', all),
        ...partsOf(allParts),
        {
          case: `held in memory at ${Math.round(head / 5)} events`,
          MiB: few.heapMiB,
          'resident MiB': few.rssMiB,
        },
        { case: `held in memory at ${head} events`, MiB: whole.heapMiB, 'resident MiB': whole.rssMiB },
      ],
      ratios: [
        {
          ratio: 'rebuild of the board : merely reading',
          value: ratioOf(board),
          target: '>= 0.6',
          holds: ratioOf(board) >= 0.6,
        },
        { ratio: 'with every ward day total : merely reading', value: ratioOf(all), target: 'no target' },
        { ratio: 'memory held, all events : a fifth', value: heap, target: '<= 1.15', holds: heap <= 1.15 },
      ],
    };
  } finally {
    await bench.drop();
  }
}

if (process.argv[1] === import.meta.filename) {
  const { table } = await import('./support/table.mjs');
  const { rows, ratios } = await run(process.env.QUICK ? { count: 200_000, passes: 3 } : {});
  console.log(`${table(rows)}\n\n${table(ratios)}`);
}
