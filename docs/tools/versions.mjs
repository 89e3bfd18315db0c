/**
 * Other versions of Node and of the compiler, which the registry carries as packages: `npm run versions` after `npm run build`.
 * The packed package must compile for a consumer under the oldest, the present and the newest TypeScript with its typings checked, and
 * the tests of results must pass under each Node. Everything is installed into a folder of its own and taken away again.
 * `-- ts54`, `-- newest`, `-- node22` or `-- node24 tests/quantity tests/record` does a part of it.
 */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../../', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'porewater-versions-'))
const run = (program, args, cwd) =>
  execFileSync(program, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] })
const NODES = ['node22', 'node24']
const COMPILERS = { ts54: 'typescript@5.4', ts60: 'typescript@6.0', newest: 'typescript@latest' }
const [part, ...only] = process.argv.slice(2)
const wants = (name) => part === undefined || part === name
const compilers = Object.keys(COMPILERS).filter(wants)
const TESTS =
  only.length > 0
    ? only
    : ['tests/engines/same-results.test.ts', 'tests/quantity', 'tests/irrigation', 'tests/record', 'tests/control']

const USE = `import { litres, millilitres, add, inLitres, sizeShot, percent, waterContentChange, litresPerHour, type Volume } from 'porewater'
import { waterContentTopp1980 } from 'porewater/dielectric'
import { permittivity, metres } from 'porewater/quantity'
import { catalogue } from 'porewater/catalogue'
import { readDocument } from 'porewater/schema'
import { chartRetention } from 'porewater/chart'
import { parseQuantity } from 'porewater/text'
const both: Volume = add(litres(1), millilitres(500))
// @ts-expect-error a length is not a volume
add(litres(1), metres(1))
const shot = sizeShot({ substrateVolume: litres(10), rise: waterContentChange(0.03), drainFraction: percent(15), emitterFlow: litresPerHour(2), emitters: 2 })
console.log(inLitres(both), waterContentTopp1980(permittivity(20)), shot.runTime, catalogue.length)
console.log(readDocument('container', { version: 1, shape: 'box', length: 100, width: 15, height: 7.5 }), parseQuantity('500 mL', 'Volume'), chartRetention)
`

try {
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  const wanted = [
    ...NODES.filter(wants).map((name) => `${name}@npm:node@${name.slice(4)}`),
    ...compilers.map((name) => `${name}@npm:${COMPILERS[name]}`),
  ]
  run('npm', ['install', '--no-audit', '--no-fund', '--no-save', ...wanted], folder)
  const [{ filename }] = JSON.parse(
    run('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], root),
  )
  mkdirSync(join(folder, 'node_modules/porewater'), { recursive: true })
  run('tar', ['xzf', filename, '-C', 'node_modules/porewater', '--strip-components=1'], folder)
  for (const dependency of [
    'acorn',
    'mathjs',
    'zod',
    'd3-scale',
    'd3-shape',
    'd3-path',
    'decimal.js',
    'fraction.js',
    'complex.js',
  ])
    try {
      symlinkSync(join(root, 'node_modules', dependency), join(folder, 'node_modules', dependency))
    } catch {}
  writeFileSync(join(folder, 'use.ts'), USE)
  for (const compiler of compilers) {
    for (const [module, moduleResolution] of [
      ['node16', 'node16'],
      ['nodenext', 'nodenext'],
      ['esnext', 'bundler'],
    ]) {
      const compilerOptions = {
        strict: true,
        skipLibCheck: false,
        noEmit: true,
        module,
        moduleResolution,
        target: 'es2022',
        lib: ['es2022', 'dom'],
        types: [],
      }
      writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: ['use.ts'] }))
      run('node', [join(folder, 'node_modules', compiler, 'bin/tsc'), '-p', '.'], folder)
    }
    console.log(
      `compiles under ${run('node', [join(folder, 'node_modules', compiler, 'bin/tsc'), '--version'], folder).trim()}`,
    )
  }
  for (const name of NODES.filter(wants)) {
    const node = join(folder, 'node_modules', name, 'bin/node')
    run(node, ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', ...TESTS], root)
    console.log(`the tests of results pass under Node ${run(node, ['--version'], root).trim()}`)
  }
} catch (error) {
  console.error(`${error.stdout ?? ''}\n${error.stderr ?? ''}\n${error.message}`)
  process.exitCode = 1
} finally {
  rmSync(folder, { recursive: true, force: true })
}
