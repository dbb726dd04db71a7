// @vitest-environment node
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'vue/compiler-sfc';
import { describe, expect, it } from 'vitest';
import { BARE } from './bare-text.allowed.ts';

const ROOT = join(import.meta.dirname, '..');
/** Attributes and properties whose value a person reads or has read aloud. */
const READ =
  /^(aria-label|aria-description|title|placeholder|alt|label|legend|hint|about|says|words|detail|sends|empty|of|what|unit|hide)$/;
/** One small word is a code for the component (`of="stay"`). */
const CODE = /^[a-z-]+$/;
/** Names of things that are the same in each language, units, signs and examples of labels. */
const SAME = new Set(['Footboard', 'kg', 'lb', 'cm', 'mmHg', 'min', 'JSON', 'NEWS2', 'SpO2']);

interface Node {
  readonly type: number;
  readonly tag?: string;
  readonly content?: string | Node;
  readonly children?: readonly Node[];
  readonly branches?: readonly Node[];
  readonly props?: readonly {
    readonly type: number;
    readonly name: string;
    readonly value?: { readonly content: string };
    readonly arg?: { readonly content?: string };
    readonly exp?: { readonly content?: string };
  }[];
}
const ELEMENT = 1;
const TEXT = 2;
const INTERPOLATION = 5;
const ATTRIBUTE = 6;

const isWords = (text: string): boolean =>
  text
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => /\p{L}{2}/u.test(word))
    .some((word) => !SAME.has(word));
/** Texts in quotes within an expression that read as words: a capital or a space in them. Keys of words are neither. */
const quoted = (expression: string): string[] =>
  [
    ...expression
      .replaceAll(/\b(say\w*|told|may)\([^()]*(\([^()]*\)[^()]*)*\)/g, '')
      .matchAll(/(['"`])((?:(?!\1).)+)\1/g),
  ]
    .map(([, , text]) => text!.replaceAll(/\$\{[^}]*\}/g, ' ').trim())
    .filter((text) => isWords(text) && /^[A-Z][a-z]+( |$)|[a-z]+ [a-z]+|^[A-Z]{4,}/.test(text));

function textsOf(node: Node, found: string[]): void {
  if (node.type === TEXT && typeof node.content === 'string' && isWords(node.content))
    found.push(node.content.replaceAll(/\s+/g, ' ').trim());
  if (node.type === INTERPOLATION && typeof node.content === 'object')
    found.push(...quoted(String(node.content.content ?? '')));
  if (node.type === ELEMENT)
    for (const prop of node.props ?? []) {
      if (
        prop.type === ATTRIBUTE &&
        READ.test(prop.name) &&
        !CODE.test(prop.value?.content ?? '') &&
        isWords(prop.value?.content ?? '')
      )
        found.push(`${prop.name}="${prop.value!.content}"`);
      if (prop.type !== ATTRIBUTE && READ.test(prop.arg?.content ?? ''))
        found.push(...quoted(prop.exp?.content ?? ''));
    }
  for (const child of node.children ?? []) textsOf(child, found);
}

const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.vue') && !/(^|\/)(node_modules|dist)\//.test(file))
  .toSorted();

const bareIn = (file: string): string[] => {
  const { descriptor } = parse(readFileSync(join(ROOT, file), 'utf8'));
  const found: string[] = [];
  const ast = descriptor.template?.ast as unknown as Node | undefined;
  if (ast) textsOf(ast, found);
  return found;
};

describe('the templates of the screens', () => {
  it('are there to be read', () => expect(files.length).toBeGreaterThan(100));

  it('have no words of one language in them: each goes through say() or told(), and the list of the others only shrinks', () => {
    const more = files.flatMap((file) => {
      const allowed = new Set(BARE[file]);
      return bareIn(file)
        .filter((text) => !allowed.has(text))
        .map((text) => `${file}: ${text}`);
    });
    expect(more).toEqual([]);
  });
});
