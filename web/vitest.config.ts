import vue from '@vitejs/plugin-vue';
import { defineProject } from 'vitest/config';
import { sharedSource } from './vite.config.ts';

export default defineProject({
  root: import.meta.dirname,
  plugins: [vue()],
  resolve: { alias: [sharedSource] },
  test: {
    name: 'web',
    environment: 'jsdom',
    include: ['**/*.test.ts'],
    exclude: ['dist', 'node_modules'],
    testTimeout: 60_000,
    setupFiles: ['./browser.testkit.ts'],
    // The contrast test reads this one; every other style is left out of the tests.
    css: { include: [/tokens\.css/] },
  },
});
