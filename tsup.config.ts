import { existsSync, readdirSync } from 'node:fs'
import { defineConfig } from 'tsup'

/** Every folder with a public index is an entry point of its own. */
const topics = readdirSync('src').filter((folder) => existsSync(`src/${folder}/index.ts`))

export default defineConfig([
  {
    entry: {
      index: 'src/index.ts',
      ...Object.fromEntries(topics.map((topic) => [`${topic}/index`, `src/${topic}/index.ts`])),
      ...(existsSync('src/repl/bin.ts') ? { 'repl/bin': 'src/repl/bin.ts' } : {}),
    },
    format: ['esm', 'cjs'],
    // tsup still passes `baseUrl` to the compiler, which TypeScript 6 calls deprecated.
    dts: { compilerOptions: { ignoreDeprecations: '6.0' } },
    target: 'es2022',
    splitting: true,
    treeshake: true,
    clean: true,
    sourcemap: false,
  },
  {
    // One file for engines without modules (QuickJS, database functions, a script tag).
    entry: { porewater: 'src/index.ts' },
    format: ['iife'],
    globalName: 'porewater',
    outExtension: () => ({ js: '.iife.js' }),
    target: 'es2020',
    minify: true,
    treeshake: true,
  },
])
