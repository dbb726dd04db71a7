// `npm run dev [-- --demo]`: compiles on change, restarts the server, and serves the web with hot reload
// on Vite's own port, which hands /api and /socket.io on to the server.
import { spawn, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const bin = (name) => fileURLToPath(new URL(`../node_modules/.bin/${name}`, import.meta.url));
const program = process.argv.includes('--demo') ? 'demo/dist/main.js' : 'server/dist/main.js';

if (spawnSync(bin('tsc'), ['-b'], { cwd: root, stdio: 'inherit' }).status !== 0) process.exit(1);
const children = [
  spawn(bin('tsc'), ['-b', '--watch', '--preserveWatchOutput'], { cwd: root, stdio: 'inherit' }),
  spawn(process.execPath, ['--watch', program], { cwd: root, stdio: 'inherit' }),
  spawn(bin('vite'), [], { cwd: `${root}web`, stdio: 'inherit' }),
];
const stop = () => {
  for (const child of children) child.kill('SIGTERM');
};
process.once('SIGINT', stop);
process.once('SIGTERM', stop);
for (const child of children) child.once('exit', stop);
