import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import LongestFirst from './support/longest-first.js'

/** Folders of pure functions whose tests share the modules: to read them anew for each file takes longer than most tests. */
const SHARING =
  'tests/{quantity,numerics,water,air,dielectric,medium,flow,probe,demand,irrigation,record,control,zone,rehearsal,uncertainty,text,schema,scenarios,validity,measured}/**/*.test.ts'
/** These share theirs too, but not with those: they call functions with all that is wrong, after which the engine runs them more slowly. */
const LOOKING_ON = 'tests/{catalogue,house,types}/**/*.test.ts'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  resolve: {
    alias: [
      { find: /^porewater$/, replacement: fileURLToPath(new URL('../src/index.ts', import.meta.url)) },
      { find: /^porewater\/(.*)$/, replacement: fileURLToPath(new URL('../src/$1/index.ts', import.meta.url)) },
    ],
  },
  test: {
    projects: [
      { extends: true, test: { name: 'sharing', include: [SHARING], isolate: false } },
      { extends: true, test: { name: 'looking-on', include: [LOOKING_ON], isolate: false } },
      { extends: true, test: { name: 'apart', include: ['tests/**/*.test.ts'], exclude: [SHARING, LOOKING_ON] } },
    ],
    sequence: { sequencer: LongestFirst },
    setupFiles: ['tests/support/seed.ts'],
    testTimeout: 60_000,
    // The runner leaves one processor free, which halves the speed of a machine with two.
    maxWorkers: availableParallelism(),
    reporters: ['default', fileURLToPath(new URL('support/closing-line.ts', import.meta.url))],
    coverage: {
      enabled: process.env.POREWATER_COVERAGE === '1',
      provider: 'v8',
      include: ['src/**/*.ts'],
      exclude: ['src/**/index.ts', 'src/repl/bin.ts'],
      reporter: ['text-summary', 'json-summary'],
    },
  },
})
