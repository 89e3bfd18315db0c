import { mkdirSync, readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { Instrumenter } from '@stryker-mutator/instrumenter'
import { build, type Plugin } from 'esbuild'

/** One change of the code that a test should notice. */
export interface Change {
  readonly id: string
  readonly fileName: string
  readonly replacement: string
  readonly location: { readonly start: Position; readonly end: Position }
}

interface Position {
  readonly line: number
  readonly column: number
}

/** Sources with every change in them, each behind a switch. */
export async function instrumented(
  paths: readonly string[],
): Promise<{ changes: Change[]; code: ReadonlyMap<string, string> }> {
  const quiet = { debug() {}, info() {}, warn() {}, isDebugEnabled: () => false }
  const files = paths.map((name) => ({ name, mutate: true, content: readFileSync(name, 'utf8') }))
  // Words of hints and descriptions are not behaviour.
  const options = { plugins: null, ignorers: [], excludedMutations: ['StringLiteral'], noHeader: false }
  const made = await new Instrumenter(quiet as never).instrument(files, options)
  const meant = made.mutants.filter(({ status }) => status !== 'Ignored')
  const changes = meant.map(({ id, fileName, replacement, location: { start, end } }) => {
    const at = ({ line, column }: Position) => ({ line: line + 1, column: column + 1 })
    return { id, fileName, replacement, location: { start: at(start), end: at(end) } }
  })
  return { changes, code: new Map(made.files.map(({ name, content }) => [name, withSwitch(content)])) }
}

/**
 * The switch of the instrumenter counts how often each change is passed; knowing that it is passed takes a tenth of the time, and asking
 * first whether that is known already a fraction of it.
 */
function withSwitch(content: string): string {
  const end = 'return isActive(id);\n}'
  const at = content.indexOf(end)
  if (at < 0) return content
  const asking = content
    .slice(at + end.length)
    .replaceAll(/stryCov_9fa48\("(\d+)"[^)]*\)/g, '(told_9fa48[$1] === round_9fa48 ? passed_9fa48() : $&)')
  const names = 'isOn as stryMutAct_9fa48, tell as stryCov_9fa48, told as told_9fa48, round as round_9fa48'
  return `import { ${names}, passed as passed_9fa48 } from 'mutants:switch'\n${asking}`
}

/** Joins the package with the changes in it, the tests, and the worker that runs them into one program. */
export async function bundled(root: string, out: string, code: ReadonlyMap<string, string>, tests: readonly string[]) {
  mkdirSync(out, { recursive: true })
  await build({
    entryPoints: { worker: `${root}docs/tools/mutants/worker.ts`, tests: 'mutants:tests' },
    outdir: out,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    loader: { '.json': 'json' },
    logLevel: 'error',
    plugins: [besideRunner(root, code, everyTest(root, tests))],
  })
}

const everyTest = (root: string, tests: readonly string[]): string =>
  `import '${root}tests/support/seed.ts'\nexport const files = {${tests
    .map((path) => `'${path}': () => import('${root}${path}')`)
    .join(',\n')}}`

/** Gives the bundler sources from `code` where it has them, and a collector in the place of the runner; `entry` is what to start from. */
export function besideRunner(root: string, code: ReadonlyMap<string, string>, entry: string): Plugin {
  return {
    name: 'mutants',
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^porewater(\/|$)/ }, ({ path }) => ({ path: `${root}src${path.slice(9)}/index.ts` }))
      // The package says that importing it does nothing; these settings are nothing else.
      onResolve({ filter: /tests\/support\/seed\.ts$/ }, ({ path }) => ({ path, sideEffects: true }))
      onResolve({ filter: /^mutants:switch$/ }, () => ({ path: `${root}docs/tools/mutants/switch.ts` }))
      onResolve({ filter: /^mutants:tests$/ }, ({ path }) => ({ path, namespace: 'mutants' }))
      // The collected tests use the assertions of the runner itself.
      onResolve({ filter: /^vitest$/ }, ({ path, namespace }) =>
        namespace === 'mutants' ? { path, external: true } : { path, namespace: 'mutants' },
      )
      onLoad({ filter: /^vitest$/, namespace: 'mutants' }, () => ({
        contents: `export { describe, it } from '${root}docs/tools/mutants/collect.ts'\nexport { expect } from 'vitest'`,
        resolveDir: root,
      }))
      onLoad({ filter: /tests$/, namespace: 'mutants' }, () => ({ contents: entry, resolveDir: root }))
      onLoad({ filter: /\/(src|tests|docs)\/.*\.ts$/ }, ({ path }) => {
        const text = forEachUse(code.get(path.slice(root.length)) ?? readFileSync(path, 'utf8'))
        return { contents: text.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href)), loader: 'ts' }
      })
    },
  }
}

/** What is built once and kept would show its changes to the first test alone, before any is on. */
const forEachUse = (code: string): string => code.replaceAll('BUILT[key] ??= ', 'BUILT[key] = ')
