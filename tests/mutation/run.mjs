// `npm run test:mutation -- <room> [<room> ...]`: changes the rules of a room in small ways and counts
// which changes its tests notice. Three passes, each for what survived the one before: the room's own
// tests, those of the board too, the properties over whole histories too (the last takes longest a change:
// FOOTBOARD_PASSES=1,2 leaves it out). Not part of `npm test` or .ci/run.
// `--again` tries what survived the last whole run of a room, and nothing else: minutes, for tests added since.
// `--changed` measures those rules of a room that have changed since they were last measured, each whole.
// `--report` alone writes docs/mutation.md again from what is kept in docs/mutation/.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { survivorsAgain } from './again.mjs';
import { keepResult, keepSince, movedOf, readKept, writeReport } from './report.mjs';

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

const again = process.argv.includes('--again');
const changedOnly = process.argv.includes('--changed');

/** The rules of a room that are not as they were when they were last measured. */
function changedRules(room) {
  const movedBy = movedOf(readKept(room));
  const rules = `shared/capabilities/${room}/rules`;
  return readdirSync(join(root, rules), { recursive: true })
    .map((name) => `${rules}/${name}`)
    .filter((file) => file.endsWith('.ts') && !/\.(test|testkit)\.ts$/.test(file) && movedBy(file) === null)
    .toSorted();
}

let failed = false;
for (const room of asked) {
  const survivors = again ? survivorsAgain(room) : null;
  for (const file of survivors?.changed ?? [])
    console.log(`${room}: ${file} has changed since ${survivors.commit}: left for a whole run`);
  if (survivors && survivors.ranges.length === 0) {
    console.log(`${room}: no survivor in a rule that is as it was at ${survivors.commit}`);
    continue;
  }
  const changed = changedOnly ? changedRules(room) : null;
  if (changed?.length === 0) {
    console.log(`${room}: every rule is as it was when it was measured`);
    continue;
  }
  const mutate = survivors?.ranges ?? changed;
  // What an earlier run found of other lines would be told as if it were of these.
  if (mutate) rmSync(join(root, '.mutation', room), { recursive: true, force: true });
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
          ...(mutate ? { FOOTBOARD_MUTATE: mutate.join(',') } : {}),
          FOOTBOARD_DEEP: process.env.FOOTBOARD_DEEP ?? '0.2',
        },
      },
    );
    whole = run.status === 0;
    if (!whole) break;
  }
  const minutes = Math.round((Date.now() - began) / 60_000);
  if (whole && survivors) survivors.keep(passes.join());
  else if (whole && changed) keepSince(room, changed, SEED, minutes, passes.join());
  else if (whole) keepResult(room, SEED, minutes, passes.join());
  else failed = true;
}
writeReport();
process.exit(failed ? 1 : 0);
