import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { defineConfig, type Options } from 'tsup'
import packageJson from './package.json' with { type: 'json' }

/** Every folder with a public index is an entry point of its own; `docs/tools/entries.ts` writes what it is built from. */
const topics = readdirSync('src').filter((folder) => existsSync(`src/${folder}/index.ts`))

/** Data as text for `JSON.parse`, which reads a large piece several times as fast as the engine reads an object in code. */
const parsedData: NonNullable<Options['esbuildPlugins']>[number] = {
  name: 'parsed-data',
  setup(build) {
    build.onLoad({ filter: /\.json$/ }, ({ path }) => ({
      contents: `export default JSON.parse(${JSON.stringify(JSON.stringify(JSON.parse(readFileSync(path, 'utf8'))))})`,
      loader: 'js',
    }))
  },
}

export default defineConfig([
  {
    entry: {
      index: 'src/index.ts',
      ...Object.fromEntries(topics.map((topic) => [`${topic}/index`, `entries/${topic}.ts`])),
    },
    format: ['esm', 'cjs'],
    // tsup still passes `baseUrl` to the compiler, which TypeScript 6 calls deprecated.
    dts: { compilerOptions: { ignoreDeprecations: '6.0' } },
    target: 'es2022',
    splitting: true,
    // Nothing runs when a file of the package is imported, so a file of which nothing is used is not imported either.
    treeshake: { moduleSideEffects: 'no-external' },
    clean: true,
    sourcemap: false,
    // Optional dependencies stay outside the bundle as others do: tsup knows only the others.
    external: Object.keys(packageJson.optionalDependencies),
  },
  {
    // The command in one file with what it needs: sixty files and zod's languages took longer to open than anything it does.
    entry: { 'repl/bin': 'src/repl/bin.ts' },
    format: ['esm'],
    target: 'node20',
    minify: true,
    splitting: false,
    external: ['mathjs'],
    noExternal: [/^acorn$/, /^zod$/, /^d3-/],
    esbuildPlugins: [parsedData],
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
