import { defineConfig } from 'vitest/config';

/**
 * What the mutation tester runs: the tests that tests/mutation/bundle.mjs put together for the pass. The
 * random seed is fixed, so that a mutant that dies once dies again.
 */
export default defineConfig({
  test: {
    name: 'mutation',
    environment: 'node',
    // One change is active for a whole run, and each run has modules of its own: between files they may be shared.
    isolate: false,
    include: ['bundled/**/*.test.mjs'],
    // Read by the thread itself, not asked for piece by piece.
    server: { deps: { external: [/\/bundled\/rules\.mjs$/] } },
    setupFiles: ['shared/kernel/fixed-seed.testkit.ts'],
  },
});
