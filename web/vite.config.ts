import { fileURLToPath } from 'node:url';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vite';

const server = 'http://127.0.0.1:4000';

/**
 * The shared rules are taken from their source, by an alias: the "source" export condition would
 * also pick up the sources of libraries that happen to use the same word.
 */
export const sharedSource = {
  find: /^@footboard\/shared\/(.*)$/,
  replacement: `${fileURLToPath(new URL('../shared', import.meta.url))}/$1.ts`,
};

/** zod as the server's content policy allows it. */
const quietZod = {
  find: /^zod$/,
  replacement: fileURLToPath(new URL('./zod-without-eval.ts', import.meta.url)),
};

/** `npm run dev -w web` serves the screens with the API and the socket of a server on port 4000. */
export default defineConfig({
  plugins: [vue()],
  resolve: { alias: [sharedSource, quietZod] },
  server: {
    proxy: {
      '/api': server,
      '/health': server,
      '/socket.io': { target: server, ws: true },
    },
  },
  define: {
    // The messages are functions' keys, not components: the parts of vue-i18n that nothing here uses stay out.
    __VUE_I18N_FULL_INSTALL__: false,
    __VUE_I18N_LEGACY_API__: false,
    __INTLIFY_PROD_DEVTOOLS__: false,
    __INTLIFY_DROP_MESSAGE_COMPILER__: false,
  },
  build: { outDir: 'dist', emptyOutDir: true, target: 'es2022', sourcemap: false },
});
