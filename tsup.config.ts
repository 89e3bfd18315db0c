import { existsSync, readdirSync } from 'node:fs'
import { defineConfig, type Options } from 'tsup'
import packageJson from './package.json' with { type: 'json' }

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
    // Optional dependencies stay outside the bundle as others do: tsup knows only the others.
    external: Object.keys(packageJson.optionalDependencies),
  },
  ...[
    // One file for engines without modules (QuickJS, database functions, a script tag), and one more with text and charts for pages.
    { entry: { porewater: 'src/index.ts' }, globalName: 'porewater' },
    { entry: { 'porewater-text-chart': 'docs/tools/text-chart-bundle.ts' }, globalName: 'porewaterTextChart' },
  ].map(
    (bundle): Options => ({
      ...bundle,
      format: ['iife'],
      outExtension: () => ({ js: '.iife.js' }),
      target: 'es2020',
      minify: true,
      treeshake: true,
      noExternal: [/^d3-/],
    }),
  ),
])
