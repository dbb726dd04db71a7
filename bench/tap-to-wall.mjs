// From a command's request leaving a client to the changed patch arriving at each wall, beside a
// bare socket.io server that only passes a message of the same size on. Load from its own process.
import { fork, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';
import { median } from './support/table.mjs';
import { command, post } from './support/tap-load.mjs';

const root = new URL('..', import.meta.url).pathname;
const ADDRESS = process.env.TEST_DATABASE_URL ?? 'postgres://root@127.0.0.1:5432/postgres';
const BEDS = 24;
const SHAPES = [
  { name: '8 wards of 25 screens', wards: 8, screensPerWard: 25 },
  { name: '200 screens on one ward', wards: 1, screensPerWard: 200 },
];

const ready = async (url) => {
  for (let tries = 0; tries < 600; tries++) {
    const answer = await fetch(`${url}/health/live`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error('the server did not start in 60 s');
};
const ended = (child) => new Promise((done) => child.once('exit', done));

async function startServer(kind, port) {
  const folder = mkdtempSync(join(tmpdir(), 'footboard-tap-'));
  const name = `footboard_bench_${randomBytes(4).toString('hex')}`;
  const admin = kind === 'postgres' ? new Client(ADDRESS) : null;
  let address = '';
  if (admin) {
    await admin.connect();
    await admin.query(`create database ${name} template template0 encoding 'UTF8'`);
    const url = new URL(ADDRESS);
    url.pathname = `/${name}`;
    address = url.href;
  }
  const env = {
    ...process.env,
    PORT: String(port),
    HOST: '127.0.0.1',
    DATA_DIR: folder,
    FOOTBOARD_LOG: 'warn',
  };
  delete env.DATABASE_URL;
  if (address) env.DATABASE_URL = address;
  const child = spawn(process.execPath, ['bench/support/server.mjs'], {
    cwd: root,
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const url = `http://127.0.0.1:${port}`;
  await ready(url);
  return {
    url,
    async stop() {
      const gone = ended(child);
      child.kill('SIGTERM');
      await gone;
      if (admin) {
        await admin.query(`drop database ${name} with (force)`);
        await admin.end();
      }
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A ward with every bed taken, one nurse, and no history. */
async function newWard(url) {
  const ward = `w-${randomBytes(4).toString('hex')}`;
  const tell = (name, data, staff = {}) =>
    post(url, `/api/wards/${ward}/commands/${name}`, command(data), staff);
  const beds = Array.from({ length: BEDS }, (_, n) => ({
    bed: `b${n}`,
    label: `${n + 1}`,
    bay: `Bay ${(n >> 2) + 1}`,
    ceilingTrack: false,
  }));
  await tell('set-up-ward', { name: `Ward ${ward}`, zone: 'Europe/Lisbon', beds });
  await tell('add-staff-member', { staff: 'nurse-1', name: 'Invented Nurse', role: 'charge-nurse' });
  const stays = beds.map(({ bed }) => `${ward}-${bed}`);
  const nurse = { 'x-footboard-staff': 'nurse-1' };
  for (const [n, stay] of stays.entries()) {
    await tell('begin-stay', { stay, person: `p-${stay}`, bed: `b${n}`, from: 'home' }, nurse);
  }
  return { ward, stays };
}

/** A fresh process for each measurement. */
function load(task) {
  const child = fork(new URL('./support/tap-load.mjs', import.meta.url));
  return new Promise((resolve, reject) => {
    child.on('message', ({ result, error }) => {
      child.disconnect();
      if (error) reject(new Error(error));
      else resolve(result);
    });
    child.on('exit', (code) => reject(new Error(`the load process ended with ${code}`)));
    child.send(task);
  });
}

export async function run({ passes = 5, seconds = 8, perSecond = 50, kinds = ['postgres', 'pglite'] } = {}) {
  const rows = [];
  const ratios = [];
  const bare = fork(new URL('./support/bare-server.mjs', import.meta.url));
  const { url: bareUrl } = await new Promise((resolve) => bare.once('message', resolve));
  try {
    for (const [at, kind] of kinds.entries()) {
      const server = await startServer(kind, 4_710 + at);
      try {
        for (const { name, wards: count, screensPerWard } of SHAPES) {
          const ours = [];
          const theirs = [];
          for (let pass = 0; pass <= passes; pass++) {
            const wards = [];
            for (let n = 0; n < count; n++) wards.push(await newWard(server.url));
            const task = { wards, screensPerWard, perSecond, seconds: pass === 0 ? 2 : seconds };
            const viaOurs = async () => {
              const result = await load({ ...task, kind: 'footboard', url: server.url });
              // The bare server passes on what Footboard last sent.
              if (result.sample) await post(bareUrl, '/sample', JSON.parse(result.sample)[1]);
              return result;
            };
            const viaBare = () => load({ ...task, kind: 'bare', url: bareUrl });
            // The first pass warms both up and is not counted.
            if (pass === 0) {
              await viaOurs();
              await viaBare();
            } else if (pass % 2) {
              ours.push(await viaOurs());
              theirs.push(await viaBare());
            } else {
              theirs.push(await viaBare());
              ours.push(await viaOurs());
            }
          }
          const row = (what, runs) => ({
            case: `${name}, ${what}`,
            'p50 ms': median(runs.map(({ p50 }) => p50)),
            'p99 ms': median(runs.map(({ p99 }) => p99)),
            'answer p99 ms': median(runs.map(({ answered99 }) => answered99)),
            'patches/s': Math.round(median(runs.map(({ patches }) => patches)) / seconds),
            'bytes a patch': median(runs.map(({ bytesAPatch }) => bytesAPatch)),
            lost: runs.reduce((sum, { lost }) => sum + lost, 0),
          });
          rows.push(row(kind, ours), row('bare socket.io', theirs));
          const more = median(ours.map(({ p99 }, pass) => p99 - theirs[pass].p99));
          const lost = ours.reduce((sum, one) => sum + one.lost, 0);
          ratios.push({
            ratio: `${name}, ${kind}: p99 over bare socket.io, ms`,
            value: more,
            target: '<= 40, none lost',
            holds: more <= 40 && lost === 0,
          });
        }
      } finally {
        await server.stop();
      }
    }
  } finally {
    bare.disconnect();
  }
  return { rows, ratios };
}

if (process.argv[1] === import.meta.filename) {
  const { table } = await import('./support/table.mjs');
  const { rows, ratios } = await run(process.env.QUICK ? { passes: 2, seconds: 4 } : {});
  console.log(`${table(rows)}\n\n${table(ratios)}`);
}
