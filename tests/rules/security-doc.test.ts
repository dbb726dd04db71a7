/** docs/security.md and docs/threat-model.md name tests: each must be there, and nothing may be left out. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const rowsOf = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );

const promised = new Set(
  [...read('docs/promises.md').matchAll(/^\| *([A-Z]+-\d+) *\|/gm)].map((match) => match[1]!),
);

/** Texts that stand first in a call or in a row of cases: what a title is. */
const titles = new Map<string, string[]>();
function titlesIn(file: string): string[] {
  let found = titles.get(file);
  if (!found) {
    const text = existsSync(join(root, file)) ? read(file) : '';
    found = [...text.matchAll(/[([]\s*(['"`])((?:(?!\1)[^\\\n]|\\.)+)\1\s*,/g)].map((match) => match[2]!);
    titles.set(file, found);
  }
  return found;
}

/** Files with a title, and promises, that a text names and that are not there. */
function missingIn(text: string): string[] {
  const named = [...text.matchAll(/`((?:shared|server|web|demo|tests)\/[^`]+\.ts)`(?: "([^"]+)")?/g)];
  const files = named.flatMap(([, file, title]) => {
    const found = titlesIn(file!);
    const there = title === undefined ? existsSync(join(root, file!)) : found.some((t) => t.includes(title));
    return there ? [] : [`${file} ${title ?? ''}`.trim()];
  });
  const promises = [...text.matchAll(/\b([A-Z]{2,}-\d+)\b/g)]
    .map((match) => match[1]!)
    .filter((id) => !promised.has(id) && !OTHER.has(id.split('-')[0]!));
  return [...files, ...promises];
}
/** Names with a number that are no promise: standards and algorithms. */
const OTHER: ReadonlySet<string> = new Set(['SHA', 'AES', 'HMAC', 'UTF', 'HKDF', 'NIST']);

/**
 * Numbers of levels 1 and 2 in OWASP ASVS 5.0.0: by section, how many and which of them are level 3.
 * 253 in all, as the standard itself counts (70 and 183).
 */
const UP_TO: Readonly<Record<string, number>> = {
  '1.1': 2,
  '1.2': 9,
  '1.3': 11,
  '1.4': 3,
  '1.5': 2,
  '2.1': 3,
  '2.2': 3,
  '2.3': 4,
  '2.4': 1,
  '3.2': 2,
  '3.3': 4,
  '3.4': 6,
  '3.5': 5,
  '3.7': 2,
  '4.1': 3,
  '4.2': 1,
  '4.3': 2,
  '4.4': 4,
  '5.1': 1,
  '5.2': 3,
  '5.3': 2,
  '5.4': 3,
  '6.1': 3,
  '6.2': 12,
  '6.3': 4,
  '6.4': 4,
  '6.5': 5,
  '6.6': 3,
  '6.8': 4,
  '7.1': 3,
  '7.2': 4,
  '7.3': 2,
  '7.4': 5,
  '7.5': 2,
  '7.6': 2,
  '8.1': 2,
  '8.2': 3,
  '8.3': 1,
  '8.4': 1,
  '9.1': 3,
  '9.2': 4,
  '10.1': 2,
  '10.2': 2,
  '10.3': 4,
  '10.4': 11,
  '10.5': 5,
  '10.6': 2,
  '10.7': 3,
  '11.1': 2,
  '11.2': 3,
  '11.3': 3,
  '11.4': 4,
  '11.5': 1,
  '11.6': 1,
  '12.1': 3,
  '12.2': 2,
  '12.3': 4,
  '13.1': 1,
  '13.2': 5,
  '13.3': 2,
  '13.4': 5,
  '14.1': 2,
  '14.2': 4,
  '14.3': 3,
  '15.1': 3,
  '15.2': 3,
  '15.3': 7,
  '16.1': 1,
  '16.2': 5,
  '16.3': 4,
  '16.4': 3,
  '16.5': 3,
  '17.1': 1,
  '17.2': 4,
  '17.3': 2,
};
const REQUIRED = Object.entries(UP_TO).flatMap(([section, most]) =>
  Array.from({ length: most }, (_, index) => `${section}.${index + 1}`),
);

describe('docs/security.md', () => {
  const text = read('docs/security.md');
  const rows = rowsOf(text).filter(([first = '']) => /^\d/.test(first));

  it('speaks of every requirement of levels 1 and 2, each once', () => {
    expect(REQUIRED).toHaveLength(253);
    const told = rows.flatMap(([first = '']) => first.split(',').map((one) => one.trim()));
    expect(told.toSorted()).toEqual(REQUIRED.toSorted());
  });

  it('names a test for each, or says that it is only documented or why it is not met', () => {
    const bare = rows
      .filter((row) => row.length === 4)
      .filter(
        ([, , how = '', test = '']) => test === '' || (!/`|[A-Z]-\d|documented/.test(test) && how !== ''),
      );
    expect(bare).toEqual([]);
  });

  it('names only tests and promises that are there', () => {
    expect(missingIn(text)).toEqual([]);
  });
});

describe('docs/threat-model.md', () => {
  const text = read('docs/threat-model.md');

  it('answers every hazard of the risk file, 1 to 32, in order', () => {
    const told = rowsOf(text)
      .map(([first = '']) => first)
      .filter((first) => /^\d+$/.test(first));
    expect(told).toEqual(Array.from({ length: 32 }, (_, index) => String(index + 1)));
  });

  it('names a test, a screen or what is not there yet for each row', () => {
    const bare = rowsOf(text)
      .filter(([first = '']) => /^([A-Z]\d+|\d+)$/.test(first))
      .filter(
        (row) =>
          !/`(shared|server|web|tests)\/|[A-Z]{2,}-\d|not yet: (issue \d|no issue)/.test(row.at(-1) ?? ''),
      );
    expect(bare).toEqual([]);
  });

  it('names only tests and promises that are there', () => {
    expect(missingIn(text)).toEqual([]);
  });
});
