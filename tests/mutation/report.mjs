// From the mutation tester's own report of a room to what is committed: docs/mutation/<room>.json (the
// counts of the last whole run, those of each rule measured since because it had changed, and what survived)
// and docs/mutation.md (all rooms, for a reader). Why a survivor may stay is
// written by hand in docs/mutation/explained.json: { file, original, replacement?, why }.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const root = new URL('../..', import.meta.url).pathname;
const kept = join(root, 'docs/mutation');
const EXPLAINED = 'explained.json';
const ALL_PASSES = '1,2,3';
/** What the issue asks for. */
const GOAL = 90;

export const git = (...args) => execFileSync('git', args, { cwd: root, encoding: 'utf8' }).trim();
const json = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** The text that a mutant replaces, on one line. */
function original(source, { start, end }) {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  return lines.join(' ').replace(/\s+/g, ' ');
}

/** Every mutant of the last run of a room: its status, and what is kept of it should it survive. */
export function mutantsOf(room) {
  const report = json(join(root, '.mutation', room, 'mutation.json'));
  return Object.entries(report.files).flatMap(([file, { source, mutants }]) =>
    mutants.map((m) => ({
      status: m.status,
      mutant: {
        file,
        line: m.location.start.line,
        mutator: m.mutatorName,
        original: original(source, m.location).slice(0, 200),
        replacement: (m.replacement ?? '').replace(/\s+/g, ' ').slice(0, 200),
        ...(m.status === 'NoCoverage' ? { never: 'run' } : {}),
      },
    })),
  );
}

export const lives = (status) => status === 'Survived' || status === 'NoCoverage';
export const inOrder = (survived) =>
  survived.toSorted((a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1));

/** The commit that is measured, in words where the rules or tests differ from it. */
export function commitNow() {
  const commit = git('rev-parse', '--short', 'HEAD');
  return git('status', '--porcelain', '--', 'shared') === '' ? commit : `${commit} and changes not committed`;
}

/** A rule's text without what it imports, and how many lines its imports take. */
function withoutImports(source) {
  const rest = source.replace(/^import\b[^;]*;\n/gm, '');
  return { rest, lines: source.split('\n').length - rest.split('\n').length };
}

/**
 * By how many lines a rule stands lower than at the commit of a whole run; null when it has changed in
 * more than what it imports. Asked of git once a file.
 */
export function movedSince(commit) {
  const [at] = commit.split(' ');
  const known = new Map();
  return (file) => {
    if (!known.has(file)) {
      const shown = spawnSync('git', ['show', `${at}:${file}`], { cwd: root, encoding: 'utf8' });
      const path = join(root, file);
      if (shown.status !== 0 || !existsSync(path)) known.set(file, null);
      else {
        const [then, now] = [withoutImports(shown.stdout), withoutImports(readFileSync(path, 'utf8'))];
        known.set(file, then.rest === now.rest ? now.lines - then.lines : null);
      }
    }
    return known.get(file);
  };
}

export const readKept = (room) => json(join(kept, `${room}.json`));
export function writeKept(result) {
  mkdirSync(kept, { recursive: true });
  writeFileSync(join(kept, `${result.room}.json`), `${JSON.stringify(result, null, 1)}\n`);
}

const countsOf = (mutants) => {
  const counts = {};
  for (const { status } of mutants) counts[status] = (counts[status] ?? 0) + 1;
  return counts;
};

/** Of a kept room: at which commit this rule was last measured whole. */
export const measuredAt = (result, file) => result.since?.[file]?.commit ?? result.commit;

/** Asked of git once a commit: by how many lines a kept room's rule stands lower; null when it has changed. */
export function movedOf(result) {
  const asked = new Map();
  return (file) => {
    const commit = measuredAt(result, file);
    if (!asked.has(commit)) asked.set(commit, movedSince(commit));
    return asked.get(commit)(file);
  };
}

/** Keeps what a run over some rules of a room found, beside the last whole run of the room. */
export function keepSince(room, files, seed, minutes, passes) {
  const before = readKept(room);
  const all = mutantsOf(room);
  const commit = commitNow();
  const since = { ...before.since };
  // A rule without a mutant has been measured all the same.
  for (const file of files)
    since[file] = { commit, seed, passes, counts: countsOf(all.filter((m) => m.mutant.file === file)) };
  const survived = all.filter((m) => lives(m.status) && files.includes(m.mutant.file)).map((m) => m.mutant);
  const others = before.survived.filter((s) => !files.includes(s.file));
  writeKept({
    ...before,
    sinceMinutes: (before.sinceMinutes ?? 0) + minutes,
    since,
    survived: inOrder([...others, ...survived]),
  });
}

/** Keeps a room's counts and survivors. A mutant the compiler or nobody could run is not counted. */
export function keepResult(room, seed, minutes, passes) {
  const all = mutantsOf(room);
  const counts = countsOf(all);
  const survived = inOrder(all.filter((m) => lives(m.status)).map((m) => m.mutant));
  writeKept({ room, commit: commitNow(), seed, minutes, passes, counts, survived });
}

const killed = ({ Killed = 0, Timeout = 0 }) => Killed + Timeout;
const counted = (c) => killed(c) + (c.Survived ?? 0) + (c.NoCoverage ?? 0);
const sum = (many) => {
  const total = {};
  for (const counts of many)
    for (const [status, n] of Object.entries(counts)) total[status] = (total[status] ?? 0) + n;
  return total;
};
const percent = (c) => (counted(c) === 0 ? '-' : `${((100 * killed(c)) / counted(c)).toFixed(1)} %`);
const cell = (text) => `\`${String(text).replaceAll('|', '¦').replaceAll('`', "'").slice(0, 90)}\``;

const explains = (e, s) =>
  e.file === s.file &&
  (e.original === undefined || e.original === s.original) &&
  (e.mutator === undefined || e.mutator === s.mutator) &&
  (e.replacement === undefined || e.replacement === s.replacement);

/** Writes docs/mutation.md from what is kept. */
export function writeReport() {
  mkdirSync(kept, { recursive: true });
  const explainedAt = join(kept, EXPLAINED);
  const explained = existsSync(explainedAt) ? json(explainedAt) : [];
  const results = readdirSync(kept)
    .filter((name) => name.endsWith('.json') && name !== EXPLAINED)
    .toSorted()
    .map((name) => json(join(kept, name)));
  const total = sum(results.map(({ counts }) => counts));
  const rows = results.flatMap((result) => {
    const measured = Object.values(result.since ?? {});
    if (measured.length === 0) return [result];
    const passes = [...new Set(measured.map((one) => one.passes))].join(' or ');
    return [
      result,
      {
        room: `${result.room}: ${measured.length} rules changed since`,
        counts: sum(measured.map(({ counts }) => counts)),
        minutes: result.sinceMinutes,
        commit: [...new Set(measured.map((one) => one.commit))].join(', '),
        again: measured.find((one) => one.again)?.again,
        seed: [...new Set(measured.map((one) => one.seed))].join(', '),
        passes,
      },
    ];
  });
  const totalSince = sum(
    results.flatMap((result) => Object.values(result.since ?? {}).map(({ counts }) => counts)),
  );
  const why = (s, moved) =>
    explained.find((e) => explains(e, s))?.why ??
    (moved !== null ? 'not explained yet' : 'the rule has changed since: the next whole run tells');
  const lines = [
    '# What the tests of the pure rules notice',
    '',
    'Made by `npm run test:mutation -- <room>`: each rule is changed in small ways, one at a time, and the tests are run.',
    `A change that no test notices has survived. The aim is ${GOAL} % noticed. The words of where a number comes from`,
    '(source, owner, review date) are left alone: no rule reads them, and docs/clinical-rules.md is compared whole.',
    'The random seed is fixed; properties go to a fifth of their depth. What is worked out once when a module loads (tables,',
    'schemas, lists of words) is left out ("static") unless FOOTBOARD_STATIC=1: each such change needs every test. The',
    'published tables are held against their sources row by row in tests/ and beside the tables.',
    '"Survivors again at": what had survived was tried once more with the tests of that commit; all else is of the whole run.',
    '"Rules changed since": rules that have changed since the whole run of their room, measured by themselves afterwards.',
    '"Passes 1 only": tried with the quick tests of the room itself; the slower ones, which notice more, were not run.',
    '',
    '| room | noticed | killed | by the clock | survived | never run | static | minutes | commit | seed |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...[
      ...rows,
      { room: 'all, each at its whole run', counts: total, minutes: '', commit: '', seed: '' },
      { room: 'all rules changed since', counts: totalSince, minutes: '', commit: '', seed: '' },
    ].map(
      ({ room, counts: c, minutes, commit, again, seed, passes = ALL_PASSES }) =>
        `| ${room}${passes === ALL_PASSES ? '' : ` (passes ${passes} only)`} | ${percent(c)} | ${c.Killed ?? 0} | ${c.Timeout ?? 0} | ${c.Survived ?? 0} | ${c.NoCoverage ?? 0} | ${c.Ignored ?? 0} | ${minutes} | ${commit}${again ? `, survivors again at ${again}` : ''} | ${seed} |`,
    ),
    '',
  ];
  for (const result of results) {
    const { room, survived } = result;
    if (survived.length === 0) continue;
    const movedBy = movedOf(result);
    lines.push(
      `## ${room}: what survived`,
      '',
      '| where | was | became | why it may stay |',
      '| --- | --- | --- | --- |',
    );
    for (const s of survived) {
      const moved = movedBy(s.file);
      const where = `${s.file.replace(/^shared\/(capabilities\/)?/, '')}:${s.line + (moved ?? 0)}${s.never ? ' (never run)' : ''}`;
      lines.push(
        `| ${where} | ${cell(s.original)} | ${cell(s.replacement || '(nothing)')} | ${why(s, moved)} |`,
      );
    }
    lines.push('');
  }
  writeFileSync(join(root, 'docs/mutation.md'), lines.join('\n'));
}
