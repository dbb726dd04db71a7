// `npm run test:deep`: the properties over random histories, a hundred times as deep as in `npm test`.
// FOOTBOARD_DEEP says how many times (100), FOOTBOARD_SEED fixes the seed. Names of files narrow it down.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** So many random histories are evaluated at the least, or the run fails. */
const PROMISED = 100_000;
/** So many malformed inputs are sent at the least, once with the limits off and once with them on. */
const PROMISED_INPUTS = 100_000;

const root = new URL('..', import.meta.url).pathname;
const times = process.env.FOOTBOARD_DEEP ?? '100';
const scratch = mkdtempSync(join(tmpdir(), 'footboard-deep-'));
const count = join(scratch, 'count.ndjson');
writeFileSync(count, '');

/** The tests that ask how deep to go. */
const asking = ['shared', 'tests/rules', 'tests/fuzz'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true })
    .map((name) => join(folder, name))
    .filter((name) => name.endsWith('.test.ts') && !name.includes('node_modules'))
    .filter((name) => /runs\.testkit|depth\.ts/.test(readFileSync(join(root, name), 'utf8'))),
);
const wanted = process.argv.slice(2);
const run = spawnSync(
  process.execPath,
  [
    join(root, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--project',
    'shared',
    '--project',
    'pglite',
    ...(wanted.length > 0 ? wanted : asking),
  ],
  { cwd: root, stdio: 'inherit', env: { ...process.env, FOOTBOARD_DEEP: times, FOOTBOARD_COUNT: count } },
);

const done = readFileSync(count, 'utf8')
  .split('\n')
  .filter(Boolean)
  .map((line) => JSON.parse(line));
rmSync(scratch, { recursive: true, force: true });
const sum = (of) => done.filter((d) => d.of === of).reduce((all, d) => all + d.runs, 0);
for (const d of done.toSorted((a, b) => (a.test < b.test ? -1 : 1))) {
  console.log(
    `${String(d.runs).padStart(7)} ${d.of}  seed ${d.seed}${d.failed ? '  FAILED' : ''}  ${d.test}`,
  );
}
const histories = sum('histories');
const inputs = (limits) =>
  done.filter((d) => d.of === 'inputs' && d.test.includes(limits)).reduce((all, d) => all + d.runs, 0);
const sent = { off: inputs('limits off;'), on: inputs('limits on;') };
console.log(`${histories} random histories evaluated; ${sum('cases')} further cases`);
console.log(`${sent.off} malformed inputs sent with the limits off, ${sent.on} with the limits on`);
if (wanted.length === 0 && times === '100' && histories < PROMISED) {
  console.log(`fewer than the ${PROMISED} that are promised`);
  process.exit(1);
}
if (wanted.length === 0 && times === '100' && Math.min(sent.off, sent.on) < PROMISED_INPUTS) {
  console.log(`fewer than the ${PROMISED_INPUTS} malformed inputs that are promised`);
  process.exit(1);
}
process.exit(run.status ?? 1);
