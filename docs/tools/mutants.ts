/**
 * Mutation score of a folder by a sample: `npm run mutants -- water --tests dielectric --count 200 --seed 7`. Draws so many changes of
 * the code, runs the tests of the folder and of those that `--tests` names (folders, or files as `catalogue/domains`) on each, and
 * prints the score with its 95 % interval and every change that no test noticed. The whole report, and what the runner says meanwhile,
 * are kept in `out/mutants/`; `--from 100` goes on with a draw that was begun, with the same seed, and counts both.
 */

import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs'
import { joined, type Report, scoreOf, survivorsOf } from './mutants/score.js'

const options = process.argv.slice(2)
const after = (name: string): string | undefined =>
  options.includes(name) ? options[options.indexOf(name) + 1] : undefined
const [folder] = options
if (folder === undefined || folder.startsWith('--')) throw new Error('name a folder of src: npm run mutants -- water')

const mutate = ['**/*.ts', ...['**/index.ts', '**/*-table*.ts', '**/generated/**']].map(
  (glob, i) => `${i > 0 ? '!' : ''}src/${folder}/${glob}`,
)
const from = Number(after('--from') ?? 0)
const kept = `out/mutants/${folder.replaceAll('/', '-')}`
mkdirSync('out/mutants', { recursive: true })
const run = spawnSync('npx', ['stryker', 'run', '--mutate', mutate.join(',')], {
  stdio: ['ignore', openSync(`${kept}.log`, 'w'), 'inherit'],
  env: {
    ...process.env,
    POREWATER_MUTANTS: `${from}-${from + Number(after('--count') ?? 150)}`,
    POREWATER_SEED: after('--seed') ?? '1',
    POREWATER_TESTS: [folder, ...(after('--tests')?.split(',') ?? [])].join(','),
  },
})
if (run.status !== 0)
  throw new Error(`stryker ended with ${run.status}; ${kept}.log says more, as which tests fail without a change`)

const read = (path: string) => JSON.parse(readFileSync(path, 'utf8')) as Report
const drawn = read('reports/mutation/mutation.json')
const report = from > 0 && existsSync(`${kept}.json`) ? joined(read(`${kept}.json`), drawn) : drawn
writeFileSync(`${kept}.json`, JSON.stringify(report))
process.stdout.write(`${[...survivorsOf(report), scoreOf(report)].join('\n')}\n`)
