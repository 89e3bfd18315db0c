/**
 * Mutation score of a folder by a sample: `npm run mutants -- water --tests dielectric --count 200 --seed 7`. Draws so many changes of
 * the code, runs on each the tests that reach it, of those of the topic, of the catalogue and of the folders or files that `--tests`
 * names, the quickest first, and prints the score with its 95 % interval and every change that no test noticed. The folder may be the
 * beginning of any path (`medium/container`); `--count all` takes every change, `--minutes 3` ends after so long, `--within 2` asks no
 * test that takes more seconds than that, and `--each 20` gives up a change after so many of the processor: both can only lower the score.
 * What is known to do the same (`mutants/equal.ts`) counts nowhere. The whole report is kept in `out/mutants/`; `--from 100` goes on with a draw that was begun, with the same seed, and counts both.
 */

import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { root, sourceFiles } from './house/source-files.js'
import { bundled, type Change, instrumented } from './mutants/bundle.js'
import { inDrawnOrder } from './mutants/draw.js'
import { EQUAL_CHANGES } from './mutants/equal.js'
import { type Measurement, measured, type Status, tried } from './mutants/run.js'
import { joined, type Report, scoreOf, survivorsOf, withoutEqual, wronglyEqual } from './mutants/score.js'

const CATALOGUE = ['arguments-stay', 'complete', 'contradictions', 'defaults', 'domains', 'javascript'].map(
  (name) => `catalogue/${name}`,
)

interface Kept extends Measurement {
  readonly key: string
  readonly whole: boolean
}

const options = process.argv.slice(2)
const after = (name: string): string | undefined =>
  options.includes(name) ? options[options.indexOf(name) + 1] : undefined
const [folder] = options
if (folder === undefined || folder.startsWith('--')) throw new Error('name a folder of src: npm run mutants -- water')
const topic = folder.split('/')[0]!
const within = Number(after('--within') ?? 1e6)
const each = Number(after('--each') ?? 1e6)
process.env.POREWATER_PROPERTY_MS ??= '1000'

const out = `${root}out/mutants/${folder.replaceAll('/', '-')}`
mkdirSync(out, { recursive: true })
for (const name of readdirSync(out)) if (name.endsWith('.mjs')) rmSync(`${out}/${name}`)
const paths = sourceFiles('src')
  .map(({ path }) => path)
  .filter((path) => path.startsWith(`src/${folder}`) && !/index\.ts$|-table|\/generated\//.test(path))
const { changes, code } = await instrumented(paths)
await bundled(root, out, code, testFiles([topic, ...CATALOGUE, ...(after('--tests')?.split(',') ?? [])]))
const worker = `${out}/worker.mjs`

const started = Date.now()
const measurement = await measuredOnce()
// What fails anyway would notice everything: a property that was ended by the clock, or a test of what one that was left was to make.
for (const { name, failure } of measurement.tests)
  if (failure !== undefined) process.stderr.write(`not asked, it fails without any change: ${name}: ${failure}\n`)
const atImport = new Set(measurement.atImport)
const reaching = testsReaching(measurement)
// What is reached only while modules are loaded, tables and constants above all, is the business of `npm run digits`.
const later = changes.filter(({ id }) => reaching.has(id) || !atImport.has(id))
process.stderr.write(
  `${changes.length} changes, ${changes.length - later.length} of them only while modules are loaded, ${measurement.tests.length} tests in ${elapsed()} s\n`,
)

const reached = inDrawnOrder(
  later.filter(({ id }) => reaching.has(id)),
  after('--seed') ?? '1',
)
const from = Number(after('--from') ?? 0)
const many = after('--count') ?? '150'
const drawn = reached.slice(from, many === 'all' ? undefined : from + Number(many))
const status = new Map<string, Status>()
await tryAll(drawn)

const report = reportOf(later)
const kept = `${out}.json`
const both = from > 0 && existsSync(kept) ? joined(JSON.parse(readFileSync(kept, 'utf8')) as Report, report) : report
writeFileSync(kept, JSON.stringify(both))
const whole = withoutEqual(both, EQUAL_CHANGES)
for (const { path, line, becomes } of wronglyEqual(both, EQUAL_CHANGES))
  process.stdout.write(`a test notices what is said to do the same: ${path}  ${line}  ->  ${becomes}\n`)
process.stdout.write(`${[...survivorsOf(whole), scoreOf(whole)].join('\n')}\n`)

function testFiles(names: readonly string[]): string[] {
  const named = (path: string) =>
    names.some((name) => path.startsWith(`tests/${name}/`) || path === `tests/${name}.test.ts`)
  return sourceFiles('tests').flatMap(({ path }) => (path.endsWith('.test.ts') && named(path) ? [path] : []))
}

function elapsed(): number {
  return Math.round((Date.now() - started) / 1000)
}

/** For each change the tests that reach it, the quickest first. */
function testsReaching({ tests }: Measurement): Map<string, number[]> {
  const found = new Map<string, number[]>()
  const quick = tests.map((_, i) => i).filter((i) => tests[i]!.seconds <= within && tests[i]!.failure === undefined)
  const order = quick.sort((a, b) => tests[a]!.seconds - tests[b]!.seconds)
  for (const i of order) for (const id of tests[i]!.reached) found.set(id, [...(found.get(id) ?? []), i])
  return found
}

/** What was measured of the very same program stands, also where the run was ended before all was. */
async function measuredOnce(): Promise<Measurement> {
  const files = readdirSync(out).filter((name) => name.endsWith('.mjs'))
  const hash = createHash('sha256').update(String(within))
  for (const name of files.sort()) hash.update(readFileSync(`${out}/${name}`))
  const [file, key] = [`${out}/measured.json`, hash.digest('hex')]
  const read = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Kept) : undefined
  const before = read?.key === key ? read : undefined
  if (before?.whole) return before
  const keep = (whole: boolean) => (sofar: Measurement) =>
    writeFileSync(file, JSON.stringify({ key, whole, ...sofar } satisfies Kept))
  const measurement = await measured(worker, topic, within, before, keep(false))
  keep(true)(measurement)
  return measurement
}

async function tryAll(list: readonly Change[]): Promise<void> {
  const until = Date.now() + 60_000 * Number(after('--minutes') ?? 1e6)
  const note = (id: string, result: Status, by: string | null) => {
    status.set(id, result)
    const { fileName, location } = list.find((change) => change.id === id)!
    const where = `${fileName}:${location.start.line}`
    process.stderr.write(`${status.size}/${list.length} ${elapsed()} s ${where} ${result} ${by ?? ''}\n`)
  }
  const seconds = measurement.tests.map((test) => test.seconds)
  const tries = list.map(({ id }) => ({ id, tests: reaching.get(id)! }))
  // No test is asked that takes longer, and none gets more than ten times its time.
  await tried(worker, { topic, seconds, each, tries }, note, until, Math.min(30, 5 + 10 * within))
}

function reportOf(all: readonly Change[]): Report {
  const files: Record<string, { source: string; mutants: Report['files'][string]['mutants'][number][] }> = {}
  for (const change of all) {
    files[change.fileName] ??= { source: readFileSync(`${root}${change.fileName}`, 'utf8'), mutants: [] }
    const { id, replacement, location } = change
    const result = status.get(id) ?? (reaching.has(id) ? 'NotDrawn' : 'NoCoverage')
    files[change.fileName]!.mutants.push({ id, replacement, location, status: result })
  }
  return { files }
}
