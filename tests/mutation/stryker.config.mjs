import { fileURLToPath } from 'node:url';

// How one room's rules are mutated. Started by `npm run test:mutation -- <room>` (run.mjs), which names the room.
const room = process.env.FOOTBOARD_ROOM;
const work = `.mutation/${room}`;
const bundle = fileURLToPath(new URL('bundle.mjs', import.meta.url));

/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  plugins: ['@stryker-mutator/vitest-runner', './tests/mutation/told-not-tested.mjs'],
  ignorers: ['told-not-tested'],
  testRunner: 'vitest',
  vitest: { configFile: 'vitest.mutation.config.ts', related: false },
  // No shell takes it apart: a space within a path is escaped.
  buildCommand: [process.execPath, bundle].map((path) => path.replaceAll(' ', '\\ ')).join(' '),
  // Rules only: what is pure, without its tests and their kits.
  mutate: process.env.FOOTBOARD_MUTATE?.split(',') ?? [
    `shared/capabilities/${room}/rules/**/*.ts`,
    '!shared/**/*.{test,testkit}.ts',
  ],
  coverageAnalysis: 'perTest',
  // What is worked out once, when a module loads (tables, schemas, lists), needs every test for each
  // change: five times as long as all else. FOOTBOARD_STATIC=1 includes it.
  ignoreStatic: process.env.FOOTBOARD_STATIC !== '1',
  concurrency: 2,
  incremental: true,
  incrementalFile: `${work}/incremental.json`,
  reporters: ['progress-append-only', 'json', 'html'],
  jsonReporter: { fileName: `${work}/mutation.json` },
  htmlReporter: { fileName: `${work}/mutation.html` },
  tempDirName: `${work}/sandbox`,
  // The sandbox needs the shared floor and nothing else; node_modules is linked.
  ignorePatterns: [
    '/server',
    '/web',
    '/demo',
    '/bench',
    '/docs',
    '/migrations',
    '/tests',
    '/.mutation',
    // It names the floors that are left out.
    '/tsconfig.json',
    'dist',
    '*.tsbuildinfo',
  ],
  disableTypeChecks: true,
  checkers: [],
  // A mutant that loops for ever is killed by the clock; the machine may be busy.
  timeoutMS: 40_000,
  timeoutFactor: 3,
  allowEmpty: true,
  thresholds: { high: 95, low: 90, break: null },
};
