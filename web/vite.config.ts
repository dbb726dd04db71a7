import { fileURLToPath } from 'node:url';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const server = 'http://127.0.0.1:4000';

/**
 * The shared rules are taken from their source, by an alias: the "source" export condition would
 * also pick up the sources of libraries that happen to use the same word.
 */
export const sharedSource = {
  find: /^@footboard\/shared\/(.*)$/,
  replacement: `${fileURLToPath(new URL('../shared', import.meta.url))}/$1.ts`,
};

/** Without its compiler of messages: web/i18n/words.ts makes them functions. */
export const runtimeI18n = {
  find: /^vue-i18n$/,
  replacement: 'vue-i18n/dist/vue-i18n.runtime.esm-bundler.js',
};

/** zod as the server's content policy allows it. */
const quietZod = {
  find: /^zod$/,
  replacement: fileURLToPath(new URL('./zod-without-eval.ts', import.meta.url)),
};

/**
 * zod carries a maker of JSON schemas with every schema. Only the server makes any (its API document):
 * in the browser's bundle those functions are empty, and the wall's download is the smaller for it.
 */
const noJsonSchemas = {
  name: 'no-json-schemas',
  apply: 'build' as const,
  transform(code: string, id: string) {
    if (!/zod\/v4\/core\/(json-schema-processors|to-json-schema)\.js$/.test(id)) return null;
    const names = [...code.matchAll(/^export (?:const|function|class) (\w+)/gm)].map((found) => found[1]!);
    return { code: names.map((name) => `export const ${name} = () => undefined;`).join('\n'), map: null };
  },
};

/**
 * The program on the device: all its files, kept by a service worker, so that a screen comes up
 * without a network. What the ward says is never among them: addresses of the server are left alone.
 */
const onTheDevice = VitePWA({
  // A newer version waits until somebody takes it (offline/newer.ts); the page registers it itself.
  registerType: 'prompt',
  injectRegister: false,
  manifest: {
    id: '/',
    name: 'Footboard',
    short_name: 'Footboard',
    description: 'How to move each person on the ward, and how old that is.',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: '#f5f1e8',
    theme_color: '#f5f1e8',
    icons: [
      { src: '/mark.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: '/mark-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/mark-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/mark-whole-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{js,css,html,svg,png,woff2,wasm}'],
    maximumFileSizeToCacheInBytes: 4_000_000,
    navigateFallback: '/index.html',
    // The server's own addresses, and whatever ends like a file.
    navigateFallbackDenylist: [/^\/(api|health|problems|socket\.io)(\/|$)/, /\.[a-z0-9]+$/i],
    dontCacheBustURLsMatching: /^assets\//,
    cleanupOutdatedCaches: true,
    clientsClaim: true,
    // One file: a worker under Trusted Types may not load a second one.
    inlineWorkboxRuntime: true,
    sourcemap: false,
    mode: 'production',
  },
});

/** `npm run dev -w web` serves the screens with the API and the socket of a server on port 4000. */
export default defineConfig({
  plugins: [vue(), noJsonSchemas, onTheDevice],
  resolve: { alias: [sharedSource, quietZod, runtimeI18n] },
  server: {
    proxy: {
      '/api': server,
      '/health': server,
      '/socket.io': { target: server, ws: true },
    },
  },
  define: {
    // The messages are functions' keys, not components: the parts of vue-i18n that nothing here uses stay out.
    __VUE_OPTIONS_API__: false,
    __VUE_I18N_FULL_INSTALL__: false,
    __VUE_I18N_LEGACY_API__: false,
    __INTLIFY_PROD_DEVTOOLS__: false,
    __INTLIFY_DROP_MESSAGE_COMPILER__: true,
  },
  build: { outDir: 'dist', emptyOutDir: true, target: 'es2022', sourcemap: false },
});
