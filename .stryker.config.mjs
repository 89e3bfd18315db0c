/** Mutation testing: which changes of the code no test notices. `npm run mutate`, or with `--mutate src/irrigation/shot-volume.ts`. */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  mutate: ['src/{quantity,dielectric,water,irrigation,flow,record}/**/*.ts', '!src/**/index.ts', '!src/**/*-table.ts'],
  // Words of hints and descriptions are not behaviour.
  mutator: { excludedMutations: ['StringLiteral'] },
  reporters: ['clear-text', 'progress'],
  vitest: { configFile: 'tests/vitest.config.ts' },
  coverageAnalysis: 'perTest',
  concurrency: 2,
  tempDirName: '.stryker-tmp',
}
