/**
 * Answers written out in words and held, section by section, against a file that was read before.
 * `FOOTBOARD_TOLD=write` writes the file again; whoever changes a rule reads what changed in it.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';

type Plain = string | number | boolean | null | undefined;
const isPlain = (v: unknown): v is Plain => typeof v !== 'object' || v === null;

function plainly(v: Plain): string {
  if (v === null) return 'none';
  // An instant, in milliseconds: nothing else here is that large.
  if (typeof v === 'number' && v > 1e11) return new Date(v).toISOString();
  return String(v);
}

function inOneLine(v: unknown): string {
  if (isPlain(v)) return plainly(v);
  if (v instanceof Set) return inOneLine([...v]);
  if (Array.isArray(v)) return v.length === 0 ? 'nothing' : v.map(inOneLine).join(', ');
  const said = Object.entries(v).filter(([, of]) => of !== undefined);
  return `(${said.map(([name, of]) => `${name} ${inOneLine(of)}`).join('; ')})`;
}

const shallow = (v: unknown): boolean =>
  isPlain(v) ||
  Object.values(v).every((of) => isPlain(of) || (Array.isArray(of) && of.every((one) => isPlain(one))));

/** What a value holds, one thing a line; lists of things under their name. */
export function telling(value: unknown, indent = ''): string[] {
  if (shallow(value) && (isPlain(value) || Array.isArray(value))) return [`${indent}${inOneLine(value)}`];
  const entries = value instanceof Map ? [...value] : Object.entries(value as object);
  return entries.flatMap(([name, of]): string[] => {
    if (of === undefined) return [];
    if (isPlain(of) || (shallow(of) && !(Array.isArray(of) && of.some((one) => !isPlain(one))))) {
      return [`${indent}${name}: ${inOneLine(of)}`];
    }
    if (Array.isArray(of)) {
      return [`${indent}${name}:`, ...of.map((one) => `${indent}  - ${inOneLine(one)}`)];
    }
    return [`${indent}${name}:`, ...telling(of, `${indent}  `)];
  });
}

/** A question by its title, and how it is answered; asked only when its test runs. */
export type Asked = readonly (readonly [title: string, answer: () => unknown])[];

/** One test a question, against the file beside the test. */
export function heldAgainst(file: URL, asked: Asked): void {
  const told = (answer: () => unknown) =>
    telling(answer())
      .map((line) => line.trimEnd())
      .join('\n');
  if (process.env.FOOTBOARD_TOLD === 'write') {
    writeFileSync(file, asked.map(([title, answer]) => `# ${title}\n${told(answer)}\n`).join('\n'));
  }
  const kept = new Map(
    (existsSync(file) ? readFileSync(file, 'utf8') : '')
      .split(/^# /m)
      .slice(1)
      .map((section) => {
        const [title, ...lines] = section.trimEnd().split('\n');
        return [title!, lines.join('\n')] as const;
      }),
  );
  it('asks what is kept, each once', () => {
    expect(asked.map(([title]) => title)).toEqual([...kept.keys()]);
  });
  it.each(asked.map(([title]) => title))('%s', (title) => {
    const [, answer] = asked.find(([of]) => of === title)!;
    expect(told(answer)).toBe(kept.get(title));
  });
}
