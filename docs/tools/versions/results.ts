import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { catalogue } from '../../../src/catalogue/index.js'
import type { Equation } from '../../explorer/equation.js'
import { JOBS } from '../engine-jobs.js'
import { equationOf } from '../explorer.js'
import { apart, programOf } from '../same-numbers.js'
import { run } from './installed.js'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))
const FORMS = ['mjs', 'cjs'] as const

/** What the package gives under one engine, by the form in which it was loaded. */
type Results = Readonly<Record<(typeof FORMS)[number], Given>>
interface Given {
  readonly numbers: readonly number[]
  readonly texts: Readonly<Record<string, string>>
}

/** Writes what every version of Node is to run, as ESM and as CJS, and gives the equations of which the numbers are. */
export async function writePrograms(folder: string): Promise<Equation[]> {
  const equations = (await Promise.all(catalogue.map(equationOf))).filter((one) => one !== undefined)
  const jobs = Object.entries(JOBS).map(([name, code]) => `${name}: ${code}`)
  const print = `console.log(JSON.stringify({ numbers: ${programOf(equations)}, jobs: { ${jobs.join(', ')} } }))`
  writeFileSync(join(folder, 'results.mjs'), `import * as porewater from 'porewater'\n${print}`)
  writeFileSync(join(folder, 'results.cjs'), `const porewater = require('porewater')\n${print}`)
  for (const form of FORMS)
    await build({
      entryPoints: [here('../../examples/one-day.ts')],
      outfile: join(folder, `one-day.${form}`),
      bundle: true,
      packages: 'external',
      platform: 'node',
      format: form === 'mjs' ? 'esm' : 'cjs',
      ...(form === 'cjs' && {
        define: { 'import.meta.url': 'ownAddress' },
        banner: { js: "const ownAddress = require('node:url').pathToFileURL(__filename).href" },
      }),
    })
  return equations
}

/** The numbers, the jobs and the main job with its picture, in one version of Node. */
export async function resultsUnder(folder: string, node: string): Promise<Results> {
  const given = async (form: string): Promise<Given> => {
    const { numbers, jobs } = JSON.parse(await run(node, [`results.${form}`], folder))
    const record = 'node_modules/porewater/docs/examples/invented-bench/readings.csv'
    const report = await run(node, [`one-day.${form}`, record, '--picture', 'day.svg'], folder)
    const picture = readFileSync(join(folder, 'day.svg'), 'utf8')
    const texts: Record<string, string> = { ...jobs, report, picture }
    for (const [name, text] of Object.entries(texts))
      if (text.length < 100) throw new Error(`${node} results.${form}: "${name}" is all but empty: ${text}`)
    return { numbers: JSON.parse(numbers).map(Number), texts }
  }
  return { mjs: await given('mjs'), cjs: await given('cjs') }
}

/** What another engine gives that it may not: other bits where the language promises them, numbers far apart, another text. */
export function differences(equations: readonly Equation[], { mjs: wanted }: Results, there: Results): string[] {
  return FORMS.flatMap((form) => {
    const { notExact, far } = apart(equations, wanted.numbers, there[form].numbers)
    const texts = Object.keys(wanted.texts).filter((name) => there[form].texts[name] !== wanted.texts[name])
    return [
      ...[...notExact, ...far].map(({ name, ulps }) => `${form} ${name}: ${ulps} units in the last place`),
      ...texts.map((name) => `${form} ${name}: another text`),
    ]
  })
}
