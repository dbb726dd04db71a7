import { defineConfig } from 'vitest/config';

/**
 * What the mutation tester runs: the tests of the room that FOOTBOARD_ROOM names, those of the board,
 * which puts the rooms together, and no others. The random seed is fixed, so that a mutant that dies
 * once dies again.
 */
const room = process.env.FOOTBOARD_ROOM ?? '*';

export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    name: 'mutation',
    environment: 'node',
    include: [`shared/capabilities/{${room},board}/**/*.test.ts`],
    // The properties over whole histories take seconds each: only what survives the rest meets them.
    exclude: process.env.FOOTBOARD_PASS === '2' ? [] : ['**/*.properties.test.ts'],
    setupFiles: ['shared/kernel/fixed-seed.testkit.ts'],
  },
});
