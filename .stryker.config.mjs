/**
 * Mutation testing: which changes of the code no test notices. `npm run mutate -- --mutate 'src/control/*.ts'`: about a hundred
 * mutants a minute at best, so choose files. `POREWATER_TESTS=control,scenarios` runs the tests of these folders only, and
 * `POREWATER_MUTANTS=0-150` draws so many by `POREWATER_SEED`; `npm run mutants` does both and counts.
 */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner', './docs/tools/mutants/draw.mjs'],
  checkers: process.env.POREWATER_MUTANTS ? ['drawn'] : [],
  mutate: [
    'src/{quantity,numerics,water,air,dielectric,medium,flow,probe,demand,irrigation,record,control,uncertainty,schema}/**/*.ts',
    '!src/**/index.ts',
    '!src/**/*-table*.ts',
    '!src/**/generated/**',
  ],
  // Words of hints and descriptions are not behaviour.
  mutator: { excludedMutations: ['StringLiteral'] },
  ignorePatterns: ['dist', 'docs/*', '!docs/tools', 'benchmarks', 'coverage', 'out', '.bundled'],
  reporters: ['clear-text', 'progress-append-only', 'json'],
  clearTextReporter: { reportTests: false, logTests: false },
  vitest: { configFile: 'tests/mutation.vitest.config.ts', related: false },
  coverageAnalysis: 'perTest',
  concurrency: 1,
  // Beside other work a test may take several times as long; that must not count as noticed.
  timeoutMS: 15_000,
  dryRunTimeoutMinutes: 60,
  tempDirName: '.stryker-tmp',
}
