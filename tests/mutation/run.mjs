// `npm run test:mutation -- <room> [<room> ...]`: changes the rules of a room in small ways and counts
// which changes its tests notice. Three passes, each for what survived the one before: the room's own
// tests, those of the board too, the properties over whole histories too (the last takes longest a change:
// FOOTBOARD_PASSES=1,2 leaves it out). Not part of `npm test` or .ci/run.
// `--report` alone writes docs/mutation.md again from what is kept in docs/mutation/.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { keepResult, writeReport } from './report.mjs';

const root = new URL('../..', import.meta.url).pathname;
const passes = (process.env.FOOTBOARD_PASSES ?? '1,2,3').split(',');
const SEED = process.env.FOOTBOARD_SEED ?? '20260501';
const rooms = readdirSync(join(root, 'shared/capabilities'), { withFileTypes: true })
  .filter((d) => d.isDirectory() && existsSync(join(root, 'shared/capabilities', d.name, 'rules')))
  .map((d) => d.name);

const asked = process.argv.slice(2).filter((a) => !a.startsWith('--'));
const unknown = asked.filter((room) => !rooms.includes(room));
if (unknown.length > 0 || (asked.length === 0 && !process.argv.includes('--report'))) {
  console.log(`name one or more rooms: ${rooms.join(', ')}`);
  process.exit(1);
}

let failed = false;
for (const room of asked) {
  mkdirSync(join(root, '.mutation', room), { recursive: true });
  const began = Date.now();
  let whole = true;
  for (const pass of passes) {
    const run = spawnSync(
      process.execPath,
      [
        join(root, 'node_modules/@stryker-mutator/core/bin/stryker.js'),
        'run',
        'tests/mutation/stryker.config.mjs',
      ],
      {
        cwd: root,
        stdio: 'inherit',
        env: {
          ...process.env,
          FOOTBOARD_ROOM: room,
          FOOTBOARD_PASS: pass,
          FOOTBOARD_SEED: SEED,
          FOOTBOARD_DEEP: process.env.FOOTBOARD_DEEP ?? '0.2',
        },
      },
    );
    if (run.status !== 0) whole = false;
  }
  const minutes = Math.round((Date.now() - began) / 60_000);
  if (whole) keepResult(room, SEED, minutes);
  else failed = true;
}
writeReport();
process.exit(failed ? 1 : 0);
