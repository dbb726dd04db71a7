import vue from '@vitejs/plugin-vue';
import { defaultClientConditions } from 'vite';
import { defineProject } from 'vitest/config';

export default defineProject({
  root: import.meta.dirname,
  plugins: [vue()],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  ssr: { resolve: { conditions: ['source'] } },
  test: { name: 'web', environment: 'jsdom', include: ['**/*.test.ts'], exclude: ['dist', 'node_modules'] },
});
