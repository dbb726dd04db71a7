// How late the server's heartbeat comes to a wall while the day plan of a ward of 36 beds is being made, beside the same
// server with nothing to plan. The plan is asked for over HTTP, so that reading the ward, building what is to be solved
// and checking the answer are in it. Load from its own process. BEATS_SECONDS sets how long each pass listens (40).
import { fork, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fullWard } from './support/full-ward.mjs';
import { post } from './support/tap-load.mjs';
import { median, percentile } from './support/table.mjs';

const root = new URL('..', import.meta.url).pathname;
const PORT = 4_730;
/** Design and issue: never later than this while planning. */
const MOST_LATE_MS = 250;

async function startServer() {
  const folder = mkdtempSync(join(tmpdir(), 'footboard-beats-'));
  const env = {
    ...process.env,
    PORT: String(PORT),
    HOST: '127.0.0.1',
    DATA_DIR: folder,
    FOOTBOARD_LOG: 'warn',
  };
  delete env.DATABASE_URL;
  const child = spawn(process.execPath, ['bench/support/server.mjs'], {
    cwd: root,
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const url = `http://127.0.0.1:${PORT}`;
  for (let tries = 0; ; tries++) {
    if ((await fetch(`${url}/health/live`).catch(() => null))?.ok) break;
    if (tries === 600) throw new Error('the server did not start in 60 s');
    await new Promise((done) => setTimeout(done, 100));
  }
  return {
    url,
    async stop() {
      const gone = new Promise((done) => child.once('exit', done));
      child.kill('SIGTERM');
      await gone;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Milliseconds by which each beat came after it was due, at a wall in a process of its own. */
function listen(task) {
  const child = fork(new URL('./support/beat-load.mjs', import.meta.url));
  return new Promise((resolve, reject) => {
    child.on('message', ({ late, error }) => {
      child.disconnect();
      if (error) reject(new Error(error));
      else resolve(late);
    });
    child.on('exit', (code) => reject(new Error(`the load process ended with ${code}`)));
    child.send(task);
  });
}

const row = (what, late) => ({
  case: what,
  beats: late.length,
  'late p50 ms': median(late),
  'late p99 ms': percentile(late, 0.99),
  'latest ms': Math.max(...late),
});

export async function run({ passes = 3, seconds = Number(process.env.BEATS_SECONDS ?? 40) } = {}) {
  const server = await startServer();
  try {
    const { ward, staff, visits } = await fullWard(server.url, 36);
    const quiet = [];
    const planning = [];
    let plans = 0;
    const plan = async () => {
      await post(server.url, `/api/wards/${ward}/day-plan`, {}, { 'x-footboard-staff': staff });
      plans++;
    };
    // The first plan of a thread pays for compiling the solver.
    await plan();
    plans = 0;
    for (let pass = 0; pass < passes; pass++) {
      const alone = async () => quiet.push(...(await listen({ url: server.url, ward, seconds })));
      const withPlans = async () => {
        const listening = new AbortController();
        const one = (async () => {
          while (!listening.signal.aborted) await plan();
        })();
        planning.push(...(await listen({ url: server.url, ward, seconds })));
        listening.abort();
        await one;
      };
      if (pass % 2) {
        await withPlans();
        await alone();
      } else {
        await alone();
        await withPlans();
      }
    }
    const worst = Math.max(...planning);
    return {
      rows: [
        row('nothing to plan', quiet),
        row(`a plan of 36 beds (${visits} visits) after the other, ${plans} in all`, planning),
      ],
      ratios: [
        {
          ratio: 'the latest beat, planning : not planning',
          value: worst / Math.max(1, ...quiet),
          target: 'no target',
        },
        {
          ratio: 'the latest beat while planning, ms',
          value: worst,
          target: `<= ${MOST_LATE_MS}`,
          holds: worst <= MOST_LATE_MS,
        },
      ],
    };
  } finally {
    await server.stop();
  }
}

if (process.argv[1] === import.meta.filename) {
  const { table } = await import('./support/table.mjs');
  const { rows, ratios } = await run(process.env.QUICK ? { passes: 1, seconds: 20 } : {});
  console.log(`${table(rows)}\n\n${table(ratios)}`);
}
