// @vitest-environment node
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { parse } from 'vue/compiler-sfc';
import { describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
/** Calls that run the function they are given there and then. */
const AT_ONCE = new Set(['map', 'flatMap', 'filter', 'find', 'forEach', 'reduce']);
/** Names under which words are imported: `say`, `saySession`, `told`, `entryWords`. */
const WORDS = /^(say([A-Z]\w*)?|told|words|\w+Words)$/;
const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.vue') && !/(^|\/)(node_modules|dist)\//.test(file))
  .toSorted();

/** Words that a component asks for once, when it is set up: they stay in the language of that moment. */
function askedOnce(script: string): string[] {
  const source = ts.createSourceFile('setup.ts', script, ts.ScriptTarget.Latest, true);
  const words = new Set(
    source.statements.flatMap((one) =>
      ts.isImportDeclaration(one) &&
      one.importClause?.namedBindings &&
      ts.isNamedImports(one.importClause.namedBindings)
        ? one.importClause.namedBindings.elements
            .map(({ name }) => name.text)
            .filter((name) => WORDS.test(name))
        : [],
    ),
  );
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node)) {
      const call = node.parent;
      const now =
        ts.isCallExpression(call) &&
        ts.isPropertyAccessExpression(call.expression) &&
        AT_ONCE.has(call.expression.name.text);
      if (!now) return;
    }
    if (ts.isCallExpression(node) && words.has(node.expression.getText())) found.push(node.getText());
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe('the words of a component', () => {
  it('are asked for whenever they are drawn, so that an open form follows the language', () => {
    const once = files.flatMap((file) => {
      const { descriptor } = parse(readFileSync(join(ROOT, file), 'utf8'));
      return askedOnce(descriptor.scriptSetup?.content ?? '').map((call) => `${file}: ${call}`);
    });
    expect(once).toEqual([]);
  });

  it('and words that are asked for once would be found', () => {
    const imports = `import { say } from '../words.ts';`;
    expect(askedOnce(`${imports} const list = codes.map((code) => ({ says: say(code) }));`)).toEqual([
      'say(code)',
    ]);
    expect(askedOnce(`${imports} const list = computed(() => codes.map(() => say('a')));`)).toEqual([]);
  });
});
