/**
 * Tries slips one after another in a process of its own. Constants are made while modules are loaded, so for each slip the test and all
 * that it needs are run anew from one compiled program. It says what it is about to do, so that a slip without end is known.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
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
  /** A test that takes more seconds of the processor is not asked about every slip. */
  readonly within: number
  /** Seconds of the processor after which no further file is asked about a slip. */
  readonly each: number
  /** Where it stands how long tests took, for a process that goes on. */
  readonly times: string
}

type Program = (require: (name: string) => unknown, exports: object, slipOn: number, module: object) => void
/** In the place of a file that this collector does not know to run. */
const nothing: Program = (_, exports) => Object.assign(exports, { tests: [], loaded: Promise.resolve() })
/** A test file, and the tests of it that pass without a slip, the quickest first. */
interface Ready {
  readonly program: Program
  readonly passing: readonly number[]
}

const work = JSON.parse(readFileSync(process.argv[2]!, 'utf8')) as DigitsWork
const plain = createRequire(`${work.root}package.json`)
const require = (name: string) => (name === 'vitest' ? { __esModule: true, ...runner } : plain(name))
const ready = new Map<number, Ready>()
/** For each file how many microseconds its tests took that pass without a slip. */
const times: Record<string, [number, number][]> = existsSync(work.times)
  ? JSON.parse(readFileSync(work.times, 'utf8'))
  : {}
/** What noticed the last slip, which is likely to notice the next one of the same table. */
const latest = { file: -1, at: -1 }

// Properties end by this clock: on a busy machine they are asked as often as on an idle one.
performance.now = () => process.cpuUsage().user / 1000

for (const { id, tests } of work.tries) await told({ id, noticedBy: await noticedBy(id, tests) })
process.disconnect?.()

async function noticedBy(id: string, files: readonly number[]): Promise<string | null> {
  const end = process.cpuUsage().user + 1e6 * work.each
  for (const file of latestFirst(files, latest.file)) {
    if (process.cpuUsage().user > end) return null
    const { program, passing } = ready.get(file) ?? (await prepared(id, file))
    let asked = -1
    try {
      const tests = await collected(program, Number(id))
      for (const at of latestFirst(passing, file === latest.file ? latest.at : -1)) {
        asked = at
        await told({ begins: id })
        await tests[at]!.run()
      }
    } catch {
      Object.assign(latest, { file, at: asked })
      return work.files[file]!
    }
  }
  return null
}

function latestFirst(all: readonly number[], one: number): readonly number[] {
  return all.includes(one) ? [one, ...all.filter((other) => other !== one)] : all
}

async function prepared(id: string, file: number): Promise<Ready> {
  const name = work.files[file]!
  const program = await compiled(name.split('#')[0]!).catch((error) => {
    process.stderr.write(`${name} is not asked: ${error}\n`)
    return nothing
  })
  times[name] ??= await timesOf(id, name, program)
  writeFileSync(work.times, JSON.stringify(times))
  const quick = times[name].filter(([, microseconds]) => microseconds < 1e6 * work.within)
  const made = { program, passing: quick.sort(([, a], [, b]) => a - b).map(([at]) => at) }
  ready.set(file, made)
  return made
}

async function timesOf(id: string, name: string, program: Program): Promise<[number, number][]> {
  const topic = name.split('#')[1]
  const took: [number, number][] = []
  for (const [at, test] of (await collected(program, -1)).entries()) {
    if (topic !== undefined && !isOfTopic(test, topic)) continue
    await told({ begins: id })
    const start = process.cpuUsage().user
    try {
      await test.run()
      took.push([at, process.cpuUsage().user - start])
    } catch (error) {
      // What fails anyway would notice everything.
      process.stderr.write(`${name} ${test.name} is not asked: it fails without a slip, ${error}\n`)
    }
  }
  return took
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
