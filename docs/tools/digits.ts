/**
 * Changes the last digit and the sign of published constants and table cells, one at a time, and wants a failing test for each:
 * `npm run digits -- dielectric --sample 40 --seed 7`. A word chooses the files whose path holds it; without `--sample` all are taken.
 * Exits with 1 and a list when a change goes unnoticed.
 */

import { createVitest, type Vitest } from 'vitest/node'
import { randomNumbers } from '../../src/numerics/random.js'
import { type Literal, literalsIn, slipsOf } from './digits/literals.js'
import { Tree } from './digits/tests-of.js'
import { root as folder, folderOf, sourceFiles } from './house/source-files.js'

const ROOMS = 'quantity water air dielectric medium flow probe demand irrigation record control uncertainty'.split(' ')
/** Tests that need a build, a browser or minutes are not asked. */
const ASKED = [...ROOMS, 'scenarios', 'catalogue', 'main-job', 'validity']
const root = folder.replace(/\/$/, '')

const options = process.argv.slice(2)
const numberAfter = (name: string): number | undefined =>
  options.includes(name) ? Number(options[options.indexOf(name) + 1]) : undefined
const sample = numberAfter('--sample')
const seed = numberAfter('--seed') ?? 1
const words = options.filter((word, i) => !word.startsWith('--') && !options[i - 1]?.startsWith('--'))

const passing = new Set<string>()
const slip = { path: '', code: '' }
const files = [
  ...sourceFiles('src').filter(({ path }) => ROOMS.includes(folderOf(path))),
  ...sourceFiles('tests').filter(({ path }) => path.endsWith('.test.ts') && ASKED.includes(folderOf(path))),
]
const tree = new Tree(files)
const chosen = drawn(
  files
    .map(({ path }) => path)
    .filter((path) => path.startsWith('src/') && !/index\.ts$|domains\.ts$|generated/.test(path))
    .filter((path) => words.length === 0 || words.some((word) => path.includes(word)))
    .sort()
    .flatMap((path) => literalsIn(path, tree.code(path)))
    .flatMap((literal) => slipsOf(literal.text).map((change) => ({ literal, change }))),
)

const vitest = await startedRunner()
const unnoticed: string[] = []
for (const [i, { literal, change }] of chosen.entries()) {
  const noticed = await isNoticed(literal, change.text)
  const where = `${literal.path}:${literal.line}  ${literal.text} -> ${change.text}`
  process.stdout.write(`${i + 1}/${chosen.length} ${noticed ? 'noticed  ' : 'UNNOTICED'} ${where}\n`)
  if (!noticed) unnoticed.push(where)
}
await vitest.close()
process.stdout.write(`\n${chosen.length} changes, ${unnoticed.length} unnoticed\n${unnoticed.join('\n')}\n`)
process.exit(unnoticed.length > 0 ? 1 : 0)

/** The tests run in workers as ever; only the one changed file reaches them with its slip. */
async function startedRunner(): Promise<Vitest> {
  const runner = await createVitest(
    'test',
    {
      root,
      config: `${root}/tests/vitest.config.ts`,
      watch: false,
      reporters: [{}],
      maxWorkers: 1,
      testTimeout: 120_000,
    },
    {
      plugins: [{ name: 'slip', enforce: 'pre', load: (id: string) => (id === slip.path ? slip.code : undefined) }],
    },
  )
  await runner.globTestSpecifications()
  return runner
}

async function isNoticed(literal: Literal, text: string): Promise<boolean> {
  const code = tree.code(literal.path)
  for (const test of tree.testsOf(literal.path)) {
    await requirePassing(test)
    setSlip(literal.path, code.slice(0, literal.start) + text + code.slice(literal.end))
    const noticed = !(await passes(test))
    setSlip(literal.path, code)
    if (noticed) return true
  }
  return false
}

function setSlip(path: string, code: string): void {
  slip.path = `${root}/${path}`
  slip.code = code
  vitest.invalidateFile(slip.path)
}

/** A test that fails anyway would notice everything. */
async function requirePassing(test: string): Promise<void> {
  if (passing.has(test)) return
  if (!(await passes(test))) throw new Error(`${test} fails without any change`)
  passing.add(test)
}

async function passes(test: string): Promise<boolean> {
  const specification = vitest.getRootProject().createSpecification(`${root}/${test}`)
  const { testModules } = await vitest.runTestSpecifications([specification])
  // The runner also remembers what failed in earlier runs.
  const [own, ...others] = testModules.filter(({ moduleId }) => moduleId === specification.moduleId)
  if (own === undefined || others.length > 0) throw new Error(`${test} did not run once`)
  return own.ok()
}

/** So many of the list by a seed, or all of it. */
function drawn<T>(all: readonly T[]): T[] {
  if (sample === undefined || sample >= all.length) return [...all]
  const { uniform } = randomNumbers(seed)
  return all
    .map((item) => ({ item, at: uniform() }))
    .sort((a, b) => a.at - b.at)
    .slice(0, sample)
    .map(({ item }) => item)
}
