/**
 * Mutation score of a folder by a sample: `npm run mutants -- water --tests dielectric --count 200 --seed 7`. Draws so many changes of
 * the code, runs the tests of the folder and of those that `--tests` names on each, and prints the score with its 95 % interval and
 * every change that no test noticed. The whole report is kept in `out/mutants/`.
 */

import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { type Report, scoreOf, survivorsOf } from './mutants/score.js'

const options = process.argv.slice(2)
const after = (name: string): string | undefined =>
  options.includes(name) ? options[options.indexOf(name) + 1] : undefined
const [folder] = options
if (folder === undefined || folder.startsWith('--')) throw new Error('name a folder of src: npm run mutants -- water')

const mutate = ['**/*.ts', ...['**/index.ts', '**/*-table*.ts', '**/generated/**']].map(
  (glob, i) => `${i > 0 ? '!' : ''}src/${folder}/${glob}`,
)
const run = spawnSync('npx', ['stryker', 'run', '--mutate', mutate.join(',')], {
  stdio: ['ignore', 'ignore', 'inherit'],
  env: {
    ...process.env,
    POREWATER_MUTANTS: after('--count') ?? '150',
    POREWATER_SEED: after('--seed') ?? '1',
    POREWATER_TESTS: [folder, ...(after('--tests')?.split(',') ?? [])].join(','),
  },
})
if (run.status !== 0) throw new Error(`stryker ended with ${run.status}`)

const text = readFileSync('reports/mutation/mutation.json', 'utf8')
mkdirSync('out/mutants', { recursive: true })
writeFileSync(`out/mutants/${folder.replaceAll('/', '-')}.json`, text)
const report = JSON.parse(text) as Report
process.stdout.write(`${[...survivorsOf(report), scoreOf(report)].join('\n')}\n`)
