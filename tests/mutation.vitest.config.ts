import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { buildSync } from 'esbuild'
import { defineConfig } from 'vitest/config'
import base from './vitest.config'

/** Folders whose tests need neither git nor a build; mutation testing runs in a copy that has neither. */
const BEHAVIOUR =
  'quantity,numerics,water,air,dielectric,medium,flow,probe,demand,irrigation,record,control,uncertainty,scenarios,schema'

const root = fileURLToPath(new URL('..', import.meta.url))
const bundled = `${root}.bundled`
// Every mutant lies in the copy already and is switched on by its number, so the package is joined once: loading some seven hundred files
// anew for each mutant took ten times as long as its tests.
const topics = readdirSync(`${root}src`).filter((topic) => !/\.ts$|^(numerics|repl)$/.test(topic))
buildSync({
  entryPoints: {
    index: `${root}src/index.ts`,
    ...Object.fromEntries(topics.map((topic) => [topic, `${root}src/${topic}/index.ts`])),
  },
  outdir: bundled,
  outExtension: { '.js': '.mjs' },
  bundle: true,
  splitting: true,
  format: 'esm',
  packages: 'external',
  loader: { '.json': 'json' },
})

/** What mutation testing runs: tests of behaviour, in one module graph, so that the package is loaded once and not once a file. */
export default defineConfig({
  ...base,
  resolve: {
    alias: [
      { find: /^porewater$/, replacement: `${bundled}/index.mjs` },
      { find: /^porewater\/(.*)$/, replacement: `${bundled}/$1.mjs` },
    ],
  },
  test: {
    ...base.test,
    include: [`tests/{${process.env.POREWATER_TESTS ?? BEHAVIOUR},}{/*,}.test.ts`],
    isolate: false,
    // What does not end is ended from outside; a test that is only slow, beside other work, must not count as failing.
    testTimeout: 600_000,
    server: { deps: { external: [/\.bundled\//] } },
    env: { POREWATER_PROPERTY_MS: process.env.POREWATER_PROPERTY_MS ?? '300' },
  },
})
