/**
 * Sentences that stand in the source: what a rule refuses and what to do, what the server answers.
 * Read from the syntax tree; what is filled in stands as a plain word or number.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

const ROOT = join(import.meta.dirname, '../../..');
const FOLDERS = [
  'shared/capabilities',
  'server/capabilities',
  'server/access',
  'server/commanding',
  'server/http',
];
/** Calls and fields whose texts a person reads. */
const CALLS = /^(refuse|problem|no|refusal|answered|notAllowed|unauthorised)$/i;
const FIELDS = new Set(['detail', 'remedy', 'instead', 'title']);

const filesIn = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return entry.name === 'dist' ? [] : filesIn(path);
    return entry.name.endsWith('.ts') && !/\.(test|testkit|d)\.ts$/.test(entry.name) ? [path] : [];
  });

/** What may stand in a hole, so that one of them makes a sentence the book should know. */
const FILLINGS = ['24 Oct 18:00', '3', 'walking', 'abc'] as const;

function textsOf(node: ts.Expression): string[] {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return [node.text];
  if (ts.isParenthesizedExpression(node)) return textsOf(node.expression);
  if (ts.isConditionalExpression(node)) return [...textsOf(node.whenTrue), ...textsOf(node.whenFalse)];
  if (ts.isTemplateExpression(node)) {
    return [node.head.text + node.templateSpans.map((span) => `\u0000${span.literal.text}`).join('')];
  }
  return [];
}

/** Each sentence with the ways its holes may be filled; known when one of them is. */
export function fromSource(): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, readonly string[]>();
  for (const file of FOLDERS.flatMap(filesIn)) {
    const source = ts.createSourceFile(
      file,
      readFileSync(join(ROOT, file), 'utf8'),
      ts.ScriptTarget.Latest,
      true,
    );
    const put = (node: ts.Expression): void => {
      for (const text of textsOf(node)) {
        // Codes and addresses are no sentences.
        if (!/[a-z]{2} /i.test(text) || /^[a-z-]+$/.test(text)) continue;
        found.set(text.replaceAll('\u0000', '…'), filled(text));
      }
    };
    const visit = (node: ts.Node): void => {
      if (ts.isCallExpression(node) && CALLS.test(node.expression.getText(source).split('.').at(-1)!)) {
        for (const argument of node.arguments) put(argument);
      }
      if (ts.isPropertyAssignment(node) && FIELDS.has(node.name.getText(source))) put(node.initializer);
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

function filled(text: string): string[] {
  const parts = text.split('\u0000');
  let ways = [parts[0]!];
  for (const part of parts.slice(1)) ways = ways.flatMap((way) => FILLINGS.map((it) => `${way}${it}${part}`));
  return ways.slice(0, 256);
}
