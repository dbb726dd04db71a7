// The one test command. Runs what this machine can prove and names what it could not run.
// REQUIRE_ALL=1 (set by .ci/run) turns a suite that did not run into a failure.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';

const root = new URL('..', import.meta.url).pathname;
const requireAll = process.env.REQUIRE_ALL === '1';
const notRun = [];
const projects = ['shared', 'server', 'web', 'pglite'];
const env = { ...process.env };

const databaseUrl = process.env.TEST_DATABASE_URL ?? 'postgres://root@127.0.0.1:5432/postgres';
const found = await reachable(databaseUrl);
if (found === true) {
  projects.push('postgres');
  env.TEST_DATABASE_URL = databaseUrl;
} else {
  notRun.push(`postgres: no PostgreSQL answered (${found}); set TEST_DATABASE_URL`);
}

const chromium = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
].find((path) => path && existsSync(path));
if (chromium) {
  projects.push('browser');
  env.CHROMIUM_PATH = chromium;
} else {
  notRun.push('browser: no Chromium found; install it or set CHROMIUM_PATH');
}

// The browser suite and the child-process tests run what users run: the built program.
const build = spawnSync('npm', ['run', 'build', '--silent'], { cwd: root, stdio: 'inherit', env });
if (build.status !== 0) {
  console.log('\nthe build failed: nothing was tested');
  process.exit(1);
}

const scratch = mkdtempSync(join(tmpdir(), 'footboard-test-'));
const report = join(scratch, 'report.json');
const wanted = process.argv.slice(2);
const run = spawnSync(
  process.execPath,
  [
    join(root, 'node_modules/vitest/vitest.mjs'),
    'run',
    ...projects.flatMap((name) => ['--project', name]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...wanted,
  ],
  { cwd: root, stdio: 'inherit', env },
);

let passed = 0;
let failed = 0;
let skipped = 0;
let seen = new Set();
try {
  const result = JSON.parse(readFileSync(report, 'utf8'));
  passed = result.numPassedTests;
  failed = result.numFailedTests + (result.numFailedTestSuites > 0 && result.numFailedTests === 0 ? 1 : 0);
  skipped = result.numPendingTests ?? 0;
  seen = new Set(result.testResults.map((file) => file.name));
} catch (error) {
  console.log(`no test report was written: ${error.message}`);
  failed = Math.max(failed, 1);
}
rmSync(scratch, { recursive: true, force: true });
if (run.status !== 0) failed = Math.max(failed, 1);
if (passed === 0 || seen.size === 0) failed = Math.max(failed, 1);

for (const line of notRun) console.log(`NOT RUN  ${line}`);
if (requireAll && notRun.length > 0) {
  console.log('REQUIRE_ALL=1: a suite that did not run is a failure');
  failed += notRun.length;
}
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exit(failed > 0 ? 1 : 0);

async function reachable(url) {
  const client = new Client({ connectionString: url, connectionTimeoutMillis: 2_000 });
  try {
    await client.connect();
    await client.query('select 1');
    return true;
  } catch (error) {
    return error.message || error.code || 'no answer';
  } finally {
    await client.end().catch(() => {});
  }
}
