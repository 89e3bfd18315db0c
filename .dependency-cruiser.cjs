// The way imports may flow: a folder may import from those that the map lists for it, and from itself. The map is exact: a test
// compares it with the imports and with the table in DEVELOPERS.md.
const below = require('./.dependency-map.json')
const borders = ['text', 'schema', 'chart', 'catalogue', 'repl']
const core = Object.keys(below).filter((folder) => !borders.includes(folder))

module.exports = {
  forbidden: [
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-orphan', severity: 'error', from: { orphan: true, pathNot: ['/index\\.ts$', '\\.json$'] }, to: {} },
    {
      name: 'no-index-inside',
      comment: 'Indexes are for users; inside, import the file that holds the name.',
      severity: 'error',
      from: { path: '^src/[^/]+/', pathNot: '^src/repl/' },
      to: { path: '^src/[^/]+/index\\.ts$' },
    },
    ...Object.entries(below).map(([folder, allowed]) => ({
      name: `${folder}-imports-downwards`,
      severity: 'error',
      from: { path: `^src/${folder}/` },
      to: {
        path: '^src/',
        pathNot: [folder, ...allowed].map((name) => (name === 'index' ? '^src/index' : `^src/${name}/`)),
      },
    })),
    {
      name: 'core-has-no-dependency',
      comment: 'mathjs, zod, d3 and Node stay behind their own entry points.',
      severity: 'error',
      from: { path: `^src/(${core.join('|')}|text)/` },
      to: { dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'core', 'unknown'] },
    },
    ...[
      ['schema', 'zod'],
      ['chart', 'd3-'],
    ].map(([folder, library]) => ({
      name: `${folder}-uses-one-library`,
      severity: 'error',
      from: { path: `^src/${folder}/` },
      to: { dependencyTypes: ['npm', 'npm-dev', 'npm-optional'], pathNot: `node_modules/(@types/)?${library}` },
    })),
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
  },
}
