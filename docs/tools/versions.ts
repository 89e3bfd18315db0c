/**
 * Other versions of Node and of the compiler, which the registry carries as packages: `npm run versions` after `npm run build`.
 * The packed package must compile for a consumer under the oldest, the present and the newest TypeScript with its typings checked, and
 * under each Node it must give, as ESM and as CJS, what it gives here: every equation, a day's plan, a rehearsal, ten thousand
 * decisions and the main job. The tests of results then run under each Node too. Everything is installed into a folder of its own and
 * taken away again. `-- --quick`, a step of the checks before a change lands, leaves those tests out and resolves modules in one way only.
 * `-- ts54`, `-- newest`, `-- node22` or `-- node24 tests/quantity tests/record` does a part of it.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { checkCompiler, MODULES, writeUses } from './versions/compilers.js'
import { installed, nodeOf, packed, run } from './versions/installed.js'
import { differences, resultsUnder, writePrograms } from './versions/results.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
const COMPILERS: Readonly<Record<string, string>> = {
  ts54: 'typescript@5.4',
  ts60: 'typescript@6.0',
  newest: 'typescript@latest',
}
const NODES = ['node22', 'node24']
const TESTS = [
  'tests/engines/same-results.test.ts',
  'tests/quantity',
  'tests/irrigation',
  'tests/record',
  'tests/control',
]

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { quick: { type: 'boolean', default: false } },
})
const { quick } = values
const [part, ...only] = positionals
const PARTS = [...Object.keys(COMPILERS), ...NODES]
if (part !== undefined && !PARTS.includes(part)) throw new Error(`no part is called ${part}: give ${PARTS.join(', ')}`)
const wants = (name: string) => part === undefined || part === name

async function checkCompilers(folder: string): Promise<void> {
  writeUses(folder)
  for (const compiler of Object.keys(COMPILERS).filter(wants)) {
    for (const module of quick ? MODULES.slice(0, 1) : MODULES) await checkCompiler(folder, compiler, module)
    const version = await run('node', [join(folder, 'node_modules', compiler, 'bin/tsc'), '--version'], folder)
    console.log(`the packed types hold under TypeScript ${version.replace(/^Version /, '').trim()}`)
  }
}

async function checkNodes(folder: string): Promise<void> {
  const nodes = NODES.filter(wants)
  if (nodes.length === 0) return
  const equations = await writePrograms(folder)
  const here = await resultsUnder(folder, process.execPath)
  for (const name of nodes) {
    const node = nodeOf(folder, name)
    const version = (await run(node, ['--version'], folder)).trim()
    const apart = differences(equations, here, await resultsUnder(folder, node))
    if (apart.length > 0)
      throw new Error(`Node ${version} gives other results than ${process.version}:\n${apart.join('\n')}`)
    console.log(`ESM and CJS give under Node ${version} what they give under ${process.version}`)
    if (quick) continue
    const tests = only.length > 0 ? only : TESTS
    await run(node, ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', ...tests], root)
    console.log(`the tests of results pass under Node ${version}`)
  }
}

const folder = mkdtempSync(join(tmpdir(), 'porewater-versions-'))
try {
  await installed(folder, NODES.filter(wants), COMPILERS, Object.keys(COMPILERS).filter(wants))
  await packed(root, folder)
  // One of the two processors for each.
  const [compilers, nodes] = await Promise.allSettled([checkCompilers(folder), checkNodes(folder)])
  for (const one of [compilers, nodes]) if (one.status === 'rejected') throw one.reason
} catch (error) {
  console.error((error as Error).message)
  process.exitCode = 1
} finally {
  rmSync(folder, { recursive: true, force: true })
}
