// Run by the mutation tester in its sandbox, once a pass: puts the tests of the pass, each a file of its own,
// beside one file with all that they import. Each change is tried in a fresh thread, which would otherwise ask
// for some 150 modules one by one: most of the time of most changes.
//
// The passes: first the tests of the room that FOOTBOARD_ROOM names, then those of the board too, which puts
// the rooms together, then the properties over whole histories, which take seconds each. Each pass tries only
// what survived the one before.
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { rolldown } from 'rolldown';

const { FOOTBOARD_ROOM: room, FOOTBOARD_PASS: pass } = process.env;
const isProperty = (file) => file.endsWith('.properties.test.ts');
const SLOW = new Set(['never-less', 'kept', 'board', 'for-wall', 'told-stays'].map((of) => `${of}.test.ts`));
const isSlow = (file) => isProperty(file) || SLOW.has(basename(file));
const waits = { 1: isSlow, 2: isProperty }[pass] ?? (() => false);

const capabilities = join(process.cwd(), 'shared/capabilities');
const tests = [...new Set(pass === '1' ? [room] : [room, 'board'])].flatMap((of) =>
  readdirSync(join(capabilities, of), { recursive: true })
    .filter((file) => file.endsWith('.test.ts') && !waits(file))
    .map((file) => join(of, file)),
);

/** A test reads the file of answers that stands beside it, wherever it is run. */
const whereItStood = {
  name: 'where-it-stood',
  transform: {
    filter: { code: 'import.meta.url' },
    handler: (code, id) => code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id).href)),
  },
};

const bundle = await rolldown({
  input: Object.fromEntries(tests.map((file) => [file.replace(/\.ts$/, ''), join(capabilities, file)])),
  external: [/^node:/, 'vitest', 'fast-check'],
  platform: 'node',
  resolve: { conditionNames: ['source', 'node', 'import'] },
  plugins: [whereItStood],
  logLevel: 'warn',
});
await bundle.write({
  dir: 'bundled',
  entryFileNames: '[name].mjs',
  chunkFileNames: '[name].mjs',
  minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
  codeSplitting: { groups: [{ name: 'rules', test: (id) => !id.endsWith('.test.ts') }] },
});
