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
      }),
    ],
  },
});
