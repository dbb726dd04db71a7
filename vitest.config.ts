import { availableParallelism } from 'node:os';

import { defineConfig } from 'vitest/config';

const resolve = { conditions: ['source'] };
const ssr = { resolve: { conditions: ['source'] } };
const node = (name: string, include: string[], extra: object = {}) => ({
  resolve,
  ssr,
  test: { name, include, environment: 'node' as const, ...extra },
});

/** One project a kind of test: what a test needs (nothing, PGlite, PostgreSQL, a browser) is its project. */
export default defineConfig({
  test: {
    // Vitest leaves one core free by default: on the two cores CI has, that would be one file after another.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      node('shared', ['shared/**/*.test.ts'], { testTimeout: 60_000 }),
      node('server', ['server/**/*.test.ts', 'demo/**/*.test.ts'], { testTimeout: 60_000 }),
      'web/vitest.config.ts',
      node('pglite', ['tests/{rules,contracts,journeys,fuzz}/**/*.test.ts'], {
        testTimeout: 60_000,
        hookTimeout: 60_000,
      }),
      node('postgres', ['tests/postgres/**/*.test.ts'], { testTimeout: 120_000, hookTimeout: 60_000 }),
      node('browser', ['tests/browser/**/*.test.ts'], {
        testTimeout: 180_000,
        hookTimeout: 120_000,
        fileParallelism: false,
        // After all others: a page that competes with property tests for a core is late, not wrong.
        sequence: { groupOrder: 1 },
      }),
    ],
  },
});
