// The way imports may flow. A folder may import from those listed for it, and from itself.
const below = {
  quantity: [],
  numerics: ['quantity'],
  water: ['quantity', 'numerics'],
  air: ['quantity', 'numerics'],
  dielectric: ['quantity', 'numerics', 'water'],
  medium: ['quantity', 'numerics', 'water'],
  flow: ['quantity', 'numerics', 'water', 'medium'],
  probe: ['quantity', 'numerics', 'water', 'dielectric', 'medium'],
  demand: ['quantity', 'numerics', 'water', 'air'],
  irrigation: ['quantity', 'numerics', 'water', 'air', 'medium', 'flow', 'probe', 'demand'],
  record: ['quantity', 'numerics', 'water', 'air', 'medium', 'flow', 'probe', 'demand', 'irrigation'],
  control: ['quantity', 'numerics', 'water', 'air', 'medium', 'flow', 'probe', 'demand', 'irrigation', 'record'],
  zone: [
    'quantity',
    'numerics',
    'water',
    'air',
    'medium',
    'flow',
    'probe',
    'demand',
    'irrigation',
    'record',
    'control',
  ],
  rehearsal: ['quantity', 'numerics', 'medium', 'flow', 'record', 'control'],
  uncertainty: ['quantity', 'numerics'],
}
const core = Object.keys(below)

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
      to: { path: '^src/', pathNot: [folder, ...allowed].map((name) => `^src/${name}/`) },
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
      to: { dependencyTypes: ['npm', 'npm-dev'], pathNot: `node_modules/(@types/)?${library}` },
    })),
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
  },
}
