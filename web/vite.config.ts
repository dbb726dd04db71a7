import vue from '@vitejs/plugin-vue';
import { defaultClientConditions, defineConfig } from 'vite';

const server = 'http://127.0.0.1:4000';

/** `npm run dev -w web` serves the screens with the API and the socket of a server on port 4000. */
export default defineConfig({
  plugins: [vue()],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  server: {
    proxy: {
      '/api': server,
      '/health': server,
      '/socket.io': { target: server, ws: true },
    },
  },
  build: { outDir: 'dist', emptyOutDir: true, target: 'es2022', sourcemap: false },
});
