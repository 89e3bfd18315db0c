/**
 * Changes the last digit and the sign of published constants and table cells, one at a time, and wants a failing test for each:
 * `npm run digits -- dielectric --sample 40 --seed 7`. A word chooses the files whose path holds it; without `--sample` all are taken,
 * `--from 100` without the first hundred. What no test can notice (`digits/unnoticeable.ts`) is not tried.
 * Only tables, factors of units, and files that cite a work or are named after one are read, for numbers of other files are
 * judgement; `--judged` takes those too. `--within 1` asks no test that takes more seconds than that, `--each 20` no further file after so
 * many: both can only find more. What it did is told on the error output. Exits with 1 and a list when a change goes unnoticed.
 */

import { mkdirSync, rmSync } from 'node:fs'
import { build } from 'esbuild'
import { WORKS } from '../../src/catalogue/works.table.js'
import { randomNumbers } from '../../src/numerics/random.js'
import { literalsIn, slipsOf, withSlips } from './digits/literals.js'
import { Tree } from './digits/tests-of.js'
import { isUnnoticeable } from './digits/unnoticeable.js'
import { root as folder, folderOf, sourceFiles } from './house/source-files.js'
import { type Status, tried } from './mutants/run.js'

const ROOMS =
  'quantity numerics water air dielectric medium flow probe demand irrigation record control uncertainty schema'.split(
    ' ',
  )
/** Tests that need a build, a browser, files or minutes are not asked, nor those that call every public function and know none of their numbers. */
const ASKED = [...ROOMS, 'scenarios', 'validity']
/** No test needs so much of the processor; a slip that makes it does not end. */
const TEST_SECONDS = 12
process.env.POREWATER_PROPERTY_MS ??= '200'

const options = process.argv.slice(2)
const numberAfter = (name: string): number | undefined =>
  options.includes(name) ? Number(options[options.indexOf(name) + 1]) : undefined
const sample = numberAfter('--sample')
const seed = numberAfter('--seed') ?? 1
const from = numberAfter('--from') ?? 0
const within = numberAfter('--within') ?? 3
const each = numberAfter('--each') ?? 1e6
const words = options.filter(
  (word, i) => !word.startsWith('--') && !/^--(sample|seed|from|within|each)$/.test(options[i - 1] ?? ''),
)

const files = [
  ...sourceFiles('src').filter(({ path }) => ROOMS.includes(folderOf(path))),
  ...sourceFiles('tests').filter(({ path }) => path.endsWith('.test.ts') && ASKED.includes(folderOf(path))),
]
const tree = new Tree(files)
/** By the key of a work, by its year or number, or by a name that needs none. */
const cites = new RegExp(
  `-table\\.ts\\n|^src/quantity/generated/|\\b(?:${Object.keys(WORKS).join('|')}|(?:ISO|RFC) \\d|Gregorian|Kronrod|Abramowitz)|[a-z] \\((?:18|19|20)\\d\\d[a-z]?\\)`,
)
const slips = drawn(
  files
    .map(({ path }) => path)
    .filter((path) => path.startsWith('src/') && !/index\.ts$|domains\.ts$/.test(path))
    .filter((path) => words.length === 0 || words.some((word) => path.includes(word)))
    .filter((path) => options.includes('--judged') || cites.test(`${path}\n${tree.code(path)}`))
    .sort()
    .flatMap((path) => literalsIn(path, tree.code(path)))
    .flatMap((literal) =>
      slipsOf(literal.text)
        .filter((slip) => !isUnnoticeable(tree.code(literal.path), literal, slip))
        .map(({ text }) => ({ literal, text })),
    ),
)
  .slice(from)
  .map((slip, id) => ({ id, ...slip }))

const unnoticed: string[] = []
await tryAll()
process.stdout.write(`\n${slips.length} changes, ${unnoticed.length} unnoticed\n${unnoticed.join('\n')}\n`)
process.exit(unnoticed.length > 0 ? 1 : 0)

/** Files of tests are named by number, sources come with all their slips in them. */
async function tryAll(): Promise<void> {
  const out = `${folder}out/digits`
  mkdirSync(out, { recursive: true })
  const times = `${out}/times.json`
  rmSync(times, { force: true })
  await build({
    entryPoints: [`${folder}docs/tools/digits/worker.ts`],
    outfile: `${out}/worker.mjs`,
    bundle: true,
    format: 'esm',
    platform: 'node',
    packages: 'external',
  })
  const paths = [...new Set(slips.map(({ literal }) => literal.path))]
  const code = Object.fromEntries(
    paths.map((path) => [
      path,
      withSlips(
        tree.code(path),
        slips.filter(({ literal }) => literal.path === path),
      ),
    ]),
  )
  const asked = new Map(paths.map((path) => [path, tree.testsOf(path)]))
  const tests = [...new Set([...asked.values()].flat())]
  const tries = slips.map(({ id, literal }) => ({
    id: String(id),
    tests: asked.get(literal.path)!.map((test) => tests.indexOf(test)),
  }))
  let done = 0
  const note = (id: string, status: Status, by: string | null) => {
    const { literal, text } = slips[Number(id)]!
    const where = `${literal.path}:${literal.line}  ${literal.text} -> ${text}`
    if (status === 'Survived') unnoticed.push(where)
    process.stderr.write(`${++done}/${slips.length} ${status} ${where}  ${by ?? ''}\n`)
  }
  await tried(
    `${out}/worker.mjs`,
    { root: folder, code, files: tests, tries, within, each, times },
    note,
    Number.POSITIVE_INFINITY,
    TEST_SECONDS,
  )
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
