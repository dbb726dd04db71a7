// `npm run bench [-- append rebuild ...]`: measures against a baseline in the same run, prints ratios,
// and keeps a table and JSON in docs/bench with machine and commit. Needs PostgreSQL (TEST_DATABASE_URL
// or 127.0.0.1:5432) and a build; the walls need Chromium.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync, existsSync } from 'node:fs';
import { cpus, totalmem, release, platform } from 'node:os';
import { table } from './support/table.mjs';

const root = new URL('..', import.meta.url).pathname;
const suites = [
  'append',
  'command',
  'evaluate',
  'rebuild',
  'tap-to-wall',
  'start',
  'forecast',
  'wall-patch',
  'wall-heap',
  'day-plan',
  'beats',
  're-rank',
];
const asked = process.argv.slice(2).filter((arg) => !arg.startsWith('-'));
const unknown = asked.filter((name) => !suites.includes(name));
if (unknown.length) {
  console.error(`no benchmark is called ${unknown.join(', ')}; there are ${suites.join(', ')}`);
  process.exit(2);
}

const git = (...args) => execFileSync('git', args, { cwd: root, encoding: 'utf8' }).trim();
const machine = {
  cores: cpus().length,
  cpu: cpus()[0]?.model ?? 'unknown',
  memoryGiB: Math.round(totalmem() / 2 ** 30),
  system: `${platform()} ${release()}`,
  node: process.version,
};
const commit = git('rev-parse', '--short', 'HEAD') + (git('status', '--porcelain') ? ' with changes' : '');
const resultsPath = `${root}docs/bench/results.json`;
const results = existsSync(resultsPath) ? JSON.parse(readFileSync(resultsPath, 'utf8')) : {};

let short = false;
for (const name of asked.length ? asked : suites) {
  const started = Date.now();
  console.log(`\n# ${name}`);
  const { run } = await import(`./${name}.mjs`);
  const { rows, ratios } = await run();
  console.log(table(rows));
  console.log(table(ratios));
  short ||= ratios.some((ratio) => ratio.holds === false);
  results[name] = {
    date: new Date().toISOString().slice(0, 10),
    commit,
    machine,
    seconds: Math.round((Date.now() - started) / 1000),
    rows,
    ratios,
  };
}

mkdirSync(`${root}docs/bench`, { recursive: true });
writeFileSync(resultsPath, JSON.stringify(results, null, 2) + '\n');
writeFileSync(
  `${root}docs/bench/README.md`,
  '# Measures\n\nMade by `npm run bench`; medians of interleaved passes, each ratio against a baseline of the same run.\n' +
    suites
      .filter((name) => results[name])
      .map((name) => {
        const r = results[name];
        return `\n## ${name}\n\n${r.date}, commit ${r.commit}, ${r.machine.cores} cores (${r.machine.cpu}), ${r.machine.memoryGiB} GiB, Node ${r.machine.node}; took ${r.seconds} s\n\n${table(r.rows)}\n\n${table(r.ratios)}\n`;
      })
      .join(''),
);
console.log(short ? '\nA target is missed: see the rows marked "no".' : '\nEvery target holds.');
