/** Ways to break a JSON value: at some place in it, or as text that is no longer quite JSON. */
import * as fc from 'fast-check';

/** Stands for text that JSON.stringify would not write; put in place of the quoted string afterwards. */
const RAW = '\u{1}raw:';
const raw = (name: string): string => `${RAW}${name}`;
const RAW_TEXTS: Readonly<Record<string, string>> = {
  nan: 'NaN',
  infinity: '-Infinity',
  overflow: '1e999',
  'big-integer': '9'.repeat(400),
  'small-number': `0.${'0'.repeat(400)}1`,
  'minus-zero': '-0',
  hexadecimal: '0x10',
  undefined: 'undefined',
  'deep-array': '['.repeat(30_000) + ']'.repeat(30_000),
  'deep-object': '{"a":'.repeat(20_000) + '1' + '}'.repeat(20_000),
  'deep-known': '{"data":'.repeat(3_000) + '{}' + '}'.repeat(3_000),
  'many-keys': `{${Array.from({ length: 4_000 }, (_, i) => `"k${i}":${i}`).join(',')}}`,
  'many-items': `[${'null,'.repeat(9_999)}null]`,
  'same-key-twice': '{"kind":"person","kind":null}',
  'own-prototype': '{"__proto__":{"polluted":true,"admin":true}}',
  'own-constructor': '{"constructor":{"prototype":{"polluted":true}}}',
  'half-escape': '"\\ud800"',
  'wrong-escape': '"\\x41"',
};

const UNREADABLE: ReadonlySet<string> = new Set([
  'nan',
  'infinity',
  'hexadecimal',
  'undefined',
  'wrong-escape',
]);

const HOSTILE_TEXTS: readonly string[] = [
  '',
  ' ',
  '\t\n\r',
  '\0',
  'a\0b',
  '\u{1}\u{7f}\u{85}',
  '\ud800',
  'x\udfff',
  '\u202eoduk',
  '\u200b\u200b\u200b',
  'e\u0301'.repeat(50),
  '\u{1f6b6}'.repeat(60),
  'A'.repeat(5_000),
  'A'.repeat(120_000),
  "'; drop table event; --",
  '$1',
  '%s%n%x',
  '${7*7}{{7*7}}',
  '<script>alert(1)</script>',
  '../../../../etc/hosts',
  '\r\nset-cookie: a=b',
  '__proto__',
  'constructor',
  'toString',
  'null',
  '-1',
  '9'.repeat(30),
  '2026-02-30T25:61:61Z',
  '2026-10-25T01:30:00+01:00',
  '+275760-09-13T00:00:00Z',
  '0000-00-00T00:00:00Z',
];
const HOSTILE: readonly unknown[] = [
  ...HOSTILE_TEXTS,
  null,
  true,
  false,
  0,
  -1,
  0.5,
  1e21,
  1e308,
  -1e308,
  5e-324,
  Number.MAX_SAFE_INTEGER,
  Number.MAX_SAFE_INTEGER + 2,
  2 ** 31,
  2 ** 63,
  [],
  {},
  [[]],
  [null],
  [{}],
  { length: -1 },
  { ref: 'x' },
  { toString: 1 },
  // What no parser reads is tried as a whole body too, so once in a while is enough here.
  ...Object.keys(RAW_TEXTS)
    .filter((name) => !UNREADABLE.has(name))
    .map(raw),
  raw('nan'),
];
const HOSTILE_KEYS: readonly string[] = [
  '__proto__',
  'constructor',
  'prototype',
  'toJSON',
  'hasOwnProperty',
  '',
  ' ',
  '\0',
  '\ud800',
  '0',
  'length',
  'author',
  'role',
  'unconfirmed',
  'ward',
  'staff',
  'K'.repeat(10_000),
];

const HOWS = ['replace', 'replace', 'drop', 'add', 'rename', 'wrap', 'unwrap', 'to-text', 'repeat'] as const;
export interface Break {
  /** Which place: counted through the whole value, round and round. */
  readonly at: number;
  readonly how: (typeof HOWS)[number];
  readonly with: unknown;
  readonly key: string;
}
export const breaks: fc.Arbitrary<readonly Break[]> = fc.array(
  fc.record({
    at: fc.nat(997),
    how: fc.constantFrom(...HOWS),
    with: fc.constantFrom(...HOSTILE),
    key: fc.constantFrom(...HOSTILE_KEYS),
  }),
  { minLength: 1, maxLength: 3 },
);

type Path = readonly (string | number)[];
const isHolder = (value: unknown): value is Record<string, unknown> | unknown[] =>
  typeof value === 'object' && value !== null;

function places(value: unknown, at: Path = []): Path[] {
  if (!isHolder(value)) return [at];
  const inner = Array.isArray(value) ? value.entries() : Object.entries(value);
  return [at, ...[...inner].flatMap(([key, child]) => places(child, [...at, key]))];
}

function change(value: unknown, [first, ...rest]: Path, to: (old: unknown) => unknown): unknown {
  if (first === undefined) return to(value);
  if (Array.isArray(value)) {
    return value.map((child, index) => (index === first ? change(child, rest, to) : child));
  }
  const holder = value as Record<string, unknown>;
  return entriesToObject(
    Object.entries(holder).map(([key, child]) => [key, key === first ? change(child, rest, to) : child]),
  );
}

/** Also sets `__proto__` as a plain key, as a JSON parser does. */
function entriesToObject(entries: readonly (readonly [string, unknown])[]): Record<string, unknown> {
  const made: Record<string, unknown> = {};
  for (const [key, value] of entries) {
    Object.defineProperty(made, key, { value, enumerable: true, writable: true, configurable: true });
  }
  return made;
}

export const broken = (value: unknown, all: readonly Break[]): unknown => all.reduce(breakOnce, value);

function breakOnce(value: unknown, { at, how, with: other, key }: Break): unknown {
  const all = places(value);
  const place = all[at % all.length]!;
  const parent = place.slice(0, -1);
  const last = place.at(-1);
  switch (how) {
    case 'drop':
      if (last === undefined) return undefined;
      return change(value, parent, (old) =>
        Array.isArray(old)
          ? old.filter((_, index) => index !== last)
          : entriesToObject(Object.entries(old as object).filter(([name]) => name !== last)),
      );
    case 'rename':
      if (typeof last !== 'string') return change(value, place, () => other);
      return change(value, parent, (old) =>
        entriesToObject(
          Object.entries(old as object).map(([name, child]) => [name === last ? key : name, child]),
        ),
      );
    case 'add':
      return change(value, place, (old) =>
        isHolder(old) && !Array.isArray(old)
          ? entriesToObject([...Object.entries(old), [key, other]])
          : other,
      );
    case 'wrap':
      return change(value, place, (old) => [old]);
    case 'unwrap':
      return change(value, place, (old) =>
        isHolder(old) ? (Object.values(old)[0] ?? null) : { value: old },
      );
    case 'to-text':
      return change(value, place, (old) => JSON.stringify(old) ?? '');
    case 'repeat':
      return change(value, place, (old) => Array.from({ length: 130 }, () => old));
    default:
      return change(value, place, () => other);
  }
}

/** As JSON text, with what JSON.stringify would not write in its place. */
export function textOf(value: unknown): string {
  const text = JSON.stringify(value) ?? '';
  return text.replaceAll(/"\\u0001raw:([a-z-]+)"/g, (_, name: string) => RAW_TEXTS[name] ?? 'null');
}

/** Ways to spoil the text itself. */
export const SPOILED: Readonly<Record<string, (text: string) => string | Buffer>> = {
  'cut short': (text) => text.slice(0, Math.floor(text.length / 2)),
  'something after': (text) => `${text}]`,
  'two bodies': (text) => `${text}${text}`,
  'byte order mark': (text) => `\uFEFF${text}`,
  'NUL inside': (text) => text.replace('"', '"\0'),
  'no UTF-8': (text) =>
    Buffer.concat([Buffer.from(text.slice(0, -1)), Buffer.from([0xc3, 0x28, 0xff, 0xfe])]),
  'overlong UTF-8': (text) =>
    Buffer.concat([Buffer.from('{"a":"'), Buffer.from([0xc0, 0xaf]), Buffer.from(`"}${text}`)]),
  'as UTF-16': (text) => Buffer.from(text, 'utf16le'),
  'single quotes': (text) => text.replaceAll('"', "'"),
  comment: (text) => `/* */${text}`,
  'comma at the end': (text) => text.replace(/\}$/, ',}'),
  empty: () => '',
  blank: () => ' \n\t ',
  'only null': () => 'null',
  'only a text': () => '"text"',
  'only a number': () => '7',
  'only a list': () => '[]',
  'only an object': () => '{}',
  form: () => 'stay=stay-1&session[outcome]=done&__proto__[polluted]=1',
  markup: () => '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/hosts">]><a>&b;</a>',
  'far too large': (text) => `${text.slice(0, -1)},"pad":"${'x'.repeat(300_000)}"}`,
};
export const HOSTILE_WORDS = HOSTILE_TEXTS;
