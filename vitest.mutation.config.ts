import { defineConfig } from 'vitest/config';

/**
 * What the mutation tester runs: first the tests of the room that FOOTBOARD_ROOM names, then those of
 * the board too, which puts the rooms together, then the properties over whole histories, which take
 * seconds each. Each pass runs only what survived the one before. The random seed is fixed, so that a
 * mutant that dies once dies again.
 */
const room = process.env.FOOTBOARD_ROOM ?? '*';
const pass = process.env.FOOTBOARD_PASS ?? '3';
const PROPERTIES = ['**/*.properties.test.ts'];
const SLOW = [
  ...PROPERTIES,
  '**/never-less.test.ts',
  '**/kept.test.ts',
  '**/board.test.ts',
  '**/for-wall.test.ts',
  '**/told-stays.test.ts',
];

export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    name: 'mutation',
    environment: 'node',
    // One change is active for a whole run, and each run has modules of its own: between files they may be shared.
    isolate: false,
    include: [
      `shared/capabilities/${room}/**/*.test.ts`,
      ...(pass === '1' ? [] : ['shared/capabilities/board/**/*.test.ts']),
    ],
    // What takes seconds for each change it is asked about waits for what the quick tests leave.
    exclude: { 1: SLOW, 2: PROPERTIES }[pass] ?? [],
    setupFiles: ['shared/kernel/fixed-seed.testkit.ts'],
  },
});
