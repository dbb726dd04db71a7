// `--again`: what survived the last whole run of a room, tried once more with the tests of today. Only rules
// that are as they were then, but for what they import, are tried; of the others the old count stands until a whole run.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { commitNow, inOrder, lives, movedOf, mutantsOf, readKept, writeKept } from './report.mjs';

const root = new URL('../..', import.meta.url).pathname;
/** A mutant that spans lines is named by its first one only: so many after it are tried with it, of a long one more. */
const LINES_AFTER = 12;
const LINES_AFTER_LONG = 60;
/** What was there is kept up to so many characters. */
const CUT = 200;

const key = (m) => [m.file, m.line, m.mutator, m.original, m.replacement].join('\u0000');

/** What to try of a room, as Stryker's ranges of lines, and how to keep what comes of it. */
export function survivorsAgain(room) {
  const before = readKept(room);
  const movedBy = movedOf(before);
  const ranges = [];
  for (const s of before.survived.filter((one) => movedBy(one.file) !== null)) {
    const from = s.line + movedBy(s.file);
    const line = readFileSync(join(root, s.file), 'utf8').split('\n')[from - 1] ?? '';
    const whole = line.includes(s.original);
    const after = s.original.length < CUT ? LINES_AFTER : LINES_AFTER_LONG;
    ranges.push({ file: s.file, from, to: whole ? from : from + after });
  }
  const changed = [...new Set(before.survived.map(({ file }) => file))].filter(
    (file) => movedBy(file) === null,
  );
  return {
    commit: before.commit,
    ranges: [...new Set(ranges.map(({ file, from, to }) => `${file}:${from}-${to}`))],
    changed,
    keep: (passes) => keepAgain(before, ranges, movedBy, room, passes),
  };
}

function keepAgain(before, ranges, movedBy, room, passes) {
  const tried = ({ mutant }) =>
    ranges.some(({ file, from, to }) => file === mutant.file && from <= mutant.line && mutant.line <= to);
  // A report may tell of other lines too: of those nothing was tried.
  const found = mutantsOf(room)
    .filter(tried)
    // What is kept of a room counts its lines as they were at the whole run.
    .map(({ status, mutant }) => ({
      status,
      mutant: { ...mutant, line: mutant.line - movedBy(mutant.file) },
    }));
  // Of two alike on one line the one that lives is taken, so that none is counted as noticed by its twin.
  found.sort((a, b) => Number(lives(a.status)) - Number(lives(b.status)));
  const now = new Map(found.map(({ status, mutant }) => [key(mutant), { status, mutant }]));
  const wholeRun = { ...before.counts };
  const since = structuredClone(before.since ?? {});
  const move = (file, from, to) => {
    const counts = since[file]?.counts ?? wholeRun;
    counts[from] = (counts[from] ?? 0) - 1;
    counts[to] = (counts[to] ?? 0) + 1;
  };
  const survived = [];
  const asked = new Set();
  for (const s of before.survived) {
    const again = now.get(key(s));
    asked.add(key(s));
    if (again) move(s.file, s.never ? 'NoCoverage' : 'Survived', again.status);
    if (!again || lives(again.status)) survived.push(again?.mutant ?? s);
  }
  // One that was noticed then and is not today counts as what it is today.
  for (const [of, { status, mutant }] of now) {
    if (!lives(status) || asked.has(of)) continue;
    move(mutant.file, 'Killed', status);
    survived.push(mutant);
  }
  // What an earlier run tried with more of the tests is not taken back by a quick one.
  const both = (earlier = '1,2,3') =>
    [...new Set([...earlier.split(','), ...passes.split(',')])].toSorted().join();
  const again = commitNow();
  for (const one of Object.values(since)) Object.assign(one, { again, passes: both(one.passes) });
  writeKept({
    ...before,
    again,
    passes: both(before.passes),
    counts: wholeRun,
    ...(before.since ? { since } : {}),
    survived: inOrder(survived),
  });
}
