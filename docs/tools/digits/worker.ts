/**
 * Tries slips one after another in a process of its own. Constants are made while modules are loaded, so for each slip the test and all
 * that it needs are run anew from one compiled program. It says what it is about to do, so that a slip without end is known.
 */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { compileFunction, constants } from 'node:vm'
import { build } from 'esbuild'
import * as runner from 'vitest'
import { besideRunner } from '../mutants/bundle.js'
import { isOfTopic, type Test } from '../mutants/collect.js'

interface DigitsWork {
  readonly root: string
  /** Sources with their slips behind a switch. */
  readonly code: Readonly<Record<string, string>>
  /** Files of tests; behind `#` the topic whose rows are asked. */
  readonly files: readonly string[]
  readonly tries: readonly { readonly id: string; readonly tests: readonly number[] }[]
}

type Program = (require: (name: string) => unknown, exports: object, slipOn: number, module: object) => void
/** A test that takes more of the processor is not asked about every slip. */
const WITHIN_SECONDS = 3
/** A test file, and the tests of it that pass without a slip, the quickest first. */
interface Ready {
  readonly program: Program
  readonly passing: readonly number[]
}

const work = JSON.parse(readFileSync(process.argv[2]!, 'utf8')) as DigitsWork
const plain = createRequire(`${work.root}package.json`)
const require = (name: string) => (name === 'vitest' ? { __esModule: true, ...runner } : plain(name))
const ready = new Map<number, Ready>()
for (const { id, tests } of work.tries) await told({ id, noticedBy: await noticedBy(id, tests) })
process.disconnect?.()

async function noticedBy(id: string, files: readonly number[]): Promise<string | null> {
  for (const file of files) {
    const { program, passing } = ready.get(file) ?? (await prepared(id, file))
    try {
      const tests = await collected(program, Number(id))
      for (const at of passing) {
        await told({ begins: id })
        await tests[at]!.run()
      }
    } catch {
      return work.files[file]!
    }
  }
  return null
}

async function prepared(id: string, file: number): Promise<Ready> {
  const [path, topic] = work.files[file]!.split('#')
  const program = await compiled(path!)
  const took = new Map<number, number>()
  for (const [at, test] of (await collected(program, -1)).entries()) {
    if (topic !== undefined && !isOfTopic(test, topic)) continue
    await told({ begins: id })
    const start = process.cpuUsage().user
    try {
      await test.run()
      took.set(at, process.cpuUsage().user - start)
    } catch (error) {
      // What fails anyway would notice everything.
      process.stderr.write(`${work.files[file]} ${test.name} is not asked: it fails without a slip, ${error}\n`)
    }
  }
  const quick = [...took].filter(([, microseconds]) => microseconds < 1e6 * WITHIN_SECONDS)
  const made = { program, passing: quick.sort(([, a], [, b]) => a - b).map(([at]) => at) }
  ready.set(file, made)
  return made
}

async function compiled(test: string): Promise<Program> {
  const { root } = work
  const entry = `import '${root}tests/support/seed.ts'\nexport { tests } from '${root}docs/tools/mutants/collect.ts'\nexport const loaded = import('${root}${test}')`
  const { outputFiles } = await build({
    entryPoints: ['mutants:tests'],
    write: false,
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    loader: { '.json': 'json' },
    logLevel: 'error',
    plugins: [besideRunner(root, new Map(Object.entries(work.code)), entry)],
  })
  const text = outputFiles[0]!.text
  return compileFunction(text, ['require', 'exports', 'slipOn', 'module'], {
    filename: test,
    importModuleDynamically: constants.USE_MAIN_CONTEXT_DEFAULT_LOADER,
  }) as Program
}

async function collected(program: Program, slip: number): Promise<readonly Test[]> {
  const module = { exports: {} as { tests: Test[]; loaded: Promise<unknown> } }
  program(require, module.exports, slip, module)
  await module.exports.loaded
  return module.exports.tests
}

function told(message: object): Promise<void> {
  return new Promise((resolve) => process.send!(message, () => resolve()))
}
