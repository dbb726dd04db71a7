import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const promised = [
  ...readFileSync(join(root, 'docs/promises.md'), 'utf8').matchAll(/^\| *([A-Z]+-\d+) *\|/gm),
].map((match) => match[1]!);

function testFiles(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(test|testkit|suite)\.ts$|contract.*\.ts$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !/node_modules|[/\\]dist[/\\]/.test(path));
}
const titles = ['shared', 'server', 'web', 'tests']
  .flatMap(testFiles)
  .map((path) => readFileSync(path, 'utf8'))
  .join('\n');
/** The first argument of a call that starts with an id: a title, also after `it.each(...)`. */
const proven = new Set([...titles.matchAll(/\(\s*[`'"]([A-Z]{2,}-\d+)\b/g)].map((match) => match[1]!));

describe('promises', () => {
  it('stand in docs/promises.md, each once', () => {
    expect(promised.length).toBeGreaterThan(10);
    expect(promised.filter((id, index) => promised.indexOf(id) !== index)).toEqual([]);
  });

  it('have a test whose title starts with their id', () => {
    expect(promised.filter((id) => !proven.has(id))).toEqual([]);
  });

  it('are all written down: no test carries an id that is not promised', () => {
    expect([...proven].filter((id) => !promised.includes(id))).toEqual([]);
  });
});
