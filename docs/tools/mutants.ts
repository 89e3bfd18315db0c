/**
 * Mutation score of a folder by a sample: `npm run mutants -- water --tests dielectric --count 200 --seed 7`. Draws so many changes of
 * the code, runs on each the tests that reach it, those of the topic, of the catalogue and of the folders or files that `--tests`
 * names, the quickest first, and prints the score with its 95 % interval and every change that no test noticed. The folder may be a part of one (`medium/container`);
 * `--count all` takes every change. The whole report is kept in `out/mutants/`; `--from 100` goes on with a draw that was begun, with
 * the same seed, and counts both.
 */

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { root, sourceFiles } from './house/source-files.js'
import { bundled, type Change, instrumented } from './mutants/bundle.js'
import { inDrawnOrder } from './mutants/draw.js'
import { type Measurement, measured, type Status, tried } from './mutants/run.js'
import { joined, type Report, scoreOf, survivorsOf } from './mutants/score.js'

const CATALOGUE = ['complete', 'contradictions', 'defaults', 'domains', 'javascript'].map((name) => `catalogue/${name}`)

const options = process.argv.slice(2)
const after = (name: string): string | undefined =>
  options.includes(name) ? options[options.indexOf(name) + 1] : undefined
const [folder] = options
if (folder === undefined || folder.startsWith('--')) throw new Error('name a folder of src: npm run mutants -- water')
const topic = folder.split('/')[0]!
process.env.POREWATER_PROPERTY_MS ??= '1000'

const out = `${root}out/mutants/${folder.replaceAll('/', '-')}`
mkdirSync(out, { recursive: true })
const paths = sourceFiles('src')
  .map(({ path }) => path)
  .filter((path) => path.startsWith(`src/${folder}`) && !/index\.ts$|-table|\/generated\//.test(path))
const { changes, code } = await instrumented(paths)
await bundled(root, out, code, testFiles([topic, ...CATALOGUE, ...(after('--tests')?.split(',') ?? [])]))
const worker = `${out}/worker.mjs`

const started = Date.now()
const measurement = await measured(worker, topic)
const failing = measurement.tests.filter(({ failure }) => failure !== undefined)
if (failing.length > 0)
  throw new Error(
    `tests fail without any change:\n${failing.map(({ name, failure }) => `${name}: ${failure}`).join('\n')}`,
  )
process.stderr.write(`${changes.length} changes, ${measurement.tests.length} tests in ${elapsed()} s\n`)

const reaching = testsReaching(measurement)
const reached = inDrawnOrder(
  changes.filter(({ id }) => reaching.has(id) || measurement.atImport.has(id)),
  after('--seed') ?? '1',
)
const from = Number(after('--from') ?? 0)
const many = after('--count') ?? '150'
const drawn = reached.slice(from, many === 'all' ? undefined : from + Number(many))
const status = new Map<string, Status>()
await tryAll(drawn)

const report = reportOf(changes)
const kept = `${out}.json`
const whole = from > 0 && existsSync(kept) ? joined(JSON.parse(readFileSync(kept, 'utf8')) as Report, report) : report
writeFileSync(kept, JSON.stringify(whole))
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
  const order = tests.map((_, i) => i).sort((a, b) => tests[a]!.seconds - tests[b]!.seconds)
  for (const i of order) for (const id of tests[i]!.reached) found.set(id, [...(found.get(id) ?? []), i])
  return found
}

async function tryAll(list: readonly Change[]): Promise<void> {
  const note = (id: string, result: Status, by: string | null) => {
    status.set(id, result)
    process.stderr.write(`${status.size}/${list.length} ${elapsed()} s ${result} ${by ?? ''}\n`)
  }
  const seconds = measurement.tests.map((test) => test.seconds)
  const later = list.filter(({ id }) => !measurement.atImport.has(id))
  await tried(worker, { topic, seconds, tries: later.map(({ id }) => ({ id, tests: reaching.get(id)! })) }, note)
  for (const { id, fileName } of list.filter((change) => measurement.atImport.has(change.id)))
    await tried(worker, { topic, seconds, atImport: id, tries: [{ id, tests: testsOfFile(fileName) }] }, note)
}

/** A change of what is made while modules are loaded shows in every test that reaches its file; where nothing in it is called, in any. */
function testsOfFile(fileName: string): number[] {
  const ids = new Set(changes.filter((change) => change.fileName === fileName).map(({ id }) => id))
  const order = measurement.tests
    .map((_, i) => i)
    .sort((a, b) => measurement.tests[a]!.seconds - measurement.tests[b]!.seconds)
  const own = order.filter((i) => measurement.tests[i]!.reached.some((id) => ids.has(id)))
  return own.length > 0 ? own : order
}

function reportOf(all: readonly Change[]): Report {
  const files: Record<string, { source: string; mutants: Report['files'][string]['mutants'][number][] }> = {}
  for (const change of all) {
    files[change.fileName] ??= { source: readFileSync(`${root}${change.fileName}`, 'utf8'), mutants: [] }
    const isReached = reaching.has(change.id) || measurement.atImport.has(change.id)
    const { id, replacement, location } = change
    const result = status.get(id) ?? (isReached ? 'NotDrawn' : 'NoCoverage')
    files[change.fileName]!.mutants.push({ id, replacement, location, status: result })
  }
  return { files }
}
