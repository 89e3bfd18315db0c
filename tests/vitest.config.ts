import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  resolve: {
    alias: [
      { find: /^porewater$/, replacement: fileURLToPath(new URL('../src/index.ts', import.meta.url)) },
      { find: /^porewater\/(.*)$/, replacement: fileURLToPath(new URL('../src/$1/index.ts', import.meta.url)) },
    ],
  },
  test: {
    include: ['tests/**/*.test.ts'],
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
