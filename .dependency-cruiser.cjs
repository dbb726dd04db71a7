// The rules between rooms (DEVELOPERS.md, "Which way things may point"). Checked by `npm run rooms`.
const rule = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });
const notTest = '\\.(test|testkit)\\.ts$';

module.exports = {
  forbidden: [
    rule('no-cycles', 'A cycle means two things are one thing: merge or cut.', {}, { circular: true }),
    rule(
      'shared-stands-alone',
      'shared may import zod and temporal-polyfill, nothing else.',
      { path: '^shared/', pathNot: notTest },
      {
        pathNot: [
          '^shared/',
          'node_modules/(zod|temporal-polyfill|temporal-spec)/',
          '^zod',
          '^temporal-polyfill',
        ],
      },
    ),
    rule(
      'shared-knows-no-floor',
      'shared never imports server or web.',
      { path: '^shared/' },
      { path: '^(server|web|demo|tests)/' },
    ),
    rule(
      'web-knows-no-server',
      'A screen speaks to the server over the wire only.',
      { path: '^web/' },
      { path: '^(server|demo)/' },
    ),
    rule(
      'server-knows-no-web',
      'The server serves built files, it imports none.',
      { path: '^server/' },
      { path: '^(web|demo)/' },
    ),
    rule(
      'deciders-are-pure',
      'decide.ts and its parts import shared, the decider contract and its own room only: no Nest, database or socket.',
      { path: '^server/capabilities/.*/decide[a-z-]*\\.ts$' },
      {
        pathNot: [
          '^shared/',
          '^server/commanding/decider\\.ts$',
          '^server/capabilities/',
          '^server/log/log\\.ts$',
        ],
      },
    ),
    rule(
      'log-knows-no-projection',
      'The log is the lowest floor.',
      { path: '^server/log/' },
      { path: '^server/(projecting|pushing|commanding|capabilities|http)/' },
    ),
    rule(
      'projecting-knows-no-push',
      'Projections do not know who is listening.',
      { path: '^server/projecting/' },
      { path: '^server/(pushing|commanding|http)/' },
    ),
    rule(
      'only-pushing-speaks-socket',
      'Only pushing touches socket.io.',
      { path: '^server/', pathNot: ['^server/(pushing/|app|start)', notTest] },
      { path: 'node_modules/socket\\.io/' },
    ),
    rule(
      'only-some-touch-kysely',
      'SQL stays in platform, log, vault, projecting, access and queries.',
      {
        path: '^server/',
        pathNot: ['^server/(platform|log|vault|projecting|access)/', 'queries\\.ts$', notTest],
      },
      { path: 'node_modules/kysely/' },
    ),
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.base.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: ['(^|/)dist/', '\\.d\\.ts$'] },
    enhancedResolveOptions: {
      conditionNames: ['source', 'import', 'require', 'node', 'default'],
      exportsFields: ['exports'],
      extensions: ['.ts', '.mjs', '.js', '.vue'],
    },
  },
};
