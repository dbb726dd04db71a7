// What Stryker leaves alone: the words of where a number comes from. They are read by the clinician in
// docs/clinical-rules.md, which a test compares whole; a rule never looks at them.

const TOLD = new Set(['source', 'owner', 'reviewBy', 'note']);
const SAYS_WHERE_FROM = new Set(['from', 'practice', 'by', 'readIn']);
const nameOf = (node) => node?.name ?? node?.value;

export const strykerPlugins = [
  {
    kind: 'Ignore',
    name: 'told-not-tested',
    value: {
      shouldIgnore(path) {
        if (!path.isStringLiteral() && !path.isTemplateLiteral()) return undefined;
        const { parent } = path;
        if (parent.type === 'ObjectProperty' && TOLD.has(nameOf(parent.key))) return 'the source of a value';
        if (parent.type === 'CallExpression' && SAYS_WHERE_FROM.has(nameOf(parent.callee))) {
          return 'the source of a value';
        }
        const file = path.hub?.file?.opts?.filename ?? '';
        if (file.endsWith('default-rules.ts') && parent.type === 'VariableDeclarator') {
          return 'the source of a value';
        }
        return undefined;
      },
    },
  },
];
